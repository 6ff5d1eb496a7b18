import { fileURLToPath } from 'node:url';
import katex from 'katex';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openBrowser } from '../../src/archive/browser.ts';
import { findBrowser } from '../../src/archive/find-browser.ts';
import { type PrintOptions, printPacket } from '../../src/archive/print.ts';
import { onDisk, printDocument } from './fixtures/print-document.ts';
import { readPdf } from './fixtures/read-pdf.ts';
import { unsettled } from './fixtures/unsettled.ts';

const cache = fileURLToPath(new URL('../../.cache/browser', import.meta.url));
const options: PrintOptions = {
  paper: 'A4',
  title: 'OC-210 revision B: Orchard cart hub drive',
  author: 'Drives team',
  subject: 'Drives the hub motor',
  keywords: ['design review', 'OC-210'],
  language: 'en-GB',
  issued: '2026-03-18',
  digest: '0123456789abcdef'.repeat(2) + 'fedcba9876543210'.repeat(2),
  creator: 'Copperplate 1.0.0',
};

let browser: Browser;
beforeAll(async () => {
  const found = await findBrowser({ platform: process.platform, arch: process.arch, env: process.env, cache });
  if ('missing' in found) throw new Error(found.missing);
  ({ browser } = await openBrowser(found, cache));
}, 60_000);
afterAll(() => browser?.close());

const print = async (html: string, changes: Partial<PrintOptions> = {}) =>
  printPacket(browser, await onDisk(html), { ...options, ...changes });

describe('a printed packet', { timeout: 30_000 }, () => {
  test('has the same bytes from another folder, and other bytes from another issue date', async () => {
    const [first, again, later] = [
      await print(printDocument()),
      await print(printDocument()),
      await print(printDocument(), { issued: '2026-03-19' }),
    ];
    expect(Buffer.compare(first.pdf, again.pdf)).toBe(0);
    expect(Buffer.compare(first.pdf, later.pdf)).not.toBe(0);
    expect(Buffer.from(first.pdf).toString('latin1')).not.toMatch(/copperplate-test-|file:/);
  });

  test('says on which page each anchor stands, in print and to the caller', async () => {
    const { pdf, pages, anchors, warnings } = await print(printDocument());
    expect(pages).toBe(4);
    expect(anchors).toEqual({ contents: 1, bus_sense: 2, 'stage.T_j': 3, margins: 4 });
    const { texts } = await readPdf(pdf);
    expect(texts[0]).toContain('Result on page 3, table on page 4, chapter on pages 2–4; nowhere –.');
    expect(texts.map((text) => /\d of \d/.exec(text)?.[0])).toEqual(['1 of 4', '2 of 4', '3 of 4', '4 of 4']);
    expect(warnings).toEqual(['A page number is asked for "lost", which does not stand in print; "–" stands there.']);
  });

  test('carries metadata, identifier, bookmarks, and links that stay inside', async () => {
    const { facts, id, outline, links } = await readPdf((await print(printDocument())).pdf);
    expect(facts).toMatchObject({
      Title: options.title,
      Author: options.author,
      Subject: options.subject,
      Keywords: 'design review OC-210',
      Creator: options.creator,
      CreationDate: 'D:20260318000000Z',
      ModDate: 'D:20260318000000Z',
      Language: 'en-GB',
    });
    expect(id).toEqual([options.digest.slice(0, 32), options.digest.slice(32)]);
    expect(outline).toEqual(['Contents', 'Bus voltage', 'Junction temperature', 'Margins']);
    expect(links).toEqual(['bus_sense', 'stage.T_j']);
  });

  test('says formulas and pictures in words to readers who cannot see them', async () => {
    const { alternatives } = await readPdf((await print(printDocument())).pdf);
    expect(alternatives).toEqual([
      ['Formula', 'V_out = (V_in R_b)/(R_t + R_b) ≤ 3.3 V'],
      ['Figure', 'Output over input'],
    ]);
  });

  test('says a line that is set in pieces as one formula', async () => {
    const piece = (tex: string) => katex.renderToString(tex);
    const line = `<p><span data-formula>${['I', '=', '\\frac{U}{R}', '+ I_0'].map(piece).join('<wbr>')}</span> = 2 A</p>`;
    const { alternatives, texts } = await readPdf((await print(printDocument(line))).pdf);
    expect(alternatives.map(([, alt]) => alt)).toContain('I = U/R + I_0');
    expect(alternatives).toHaveLength(3);
    expect(texts[2]).toContain('= 2 A');
  });

  test('carries its metadata once more in the form of catalogues, and claims no standard', async () => {
    const owner = 'Drives & <motors>';
    const { pdf } = await print(printDocument(), { author: owner });
    const text = Buffer.from(pdf).toString('utf8');
    const xmp = text.slice(text.indexOf('<x:xmpmeta'), text.indexOf('</x:xmpmeta>'));
    expect(xmp).toContain('<rdf:li xml:lang="x-default">OC-210 revision B: Orchard cart hub drive</rdf:li>');
    expect(xmp).toContain('<rdf:li>Drives &amp; &lt;motors&gt;</rdf:li>');
    expect(xmp).toContain('<xmp:CreateDate>2026-03-18T00:00:00Z</xmp:CreateDate>');
    expect(xmp).toContain(`urn:sha256:${options.digest}`);
    expect(xmp).not.toMatch(/pdfaid|pdfuaid/);
    const loading = getDocument({ data: pdf.slice(), verbosity: 0 });
    const { metadata } = await (await loading.promise).getMetadata();
    expect(metadata?.get('dc:creator')).toEqual([owner]);
    await loading.destroy();
  });

  test('is Letter when asked, with the style sheet told so', async () => {
    const letter = '<style data-paper="letter" media="not all">@page { size: letter } p { color: #123 }</style>';
    const { sizes, texts } = await readPdf((await print(printDocument(letter), { paper: 'Letter' })).pdf);
    expect(sizes[0]).toEqual([612, 792]);
    expect(texts[0]).toContain('on letter');
    const a4 = await readPdf((await print(printDocument(letter))).pdf);
    expect(a4.sizes[0]!.map(Math.round)).toEqual([595, 842]);
  });

  test('keeps to its own page rules when a linked style sheet comes after them', async () => {
    const linked = '<link rel="stylesheet" href="data:text/css,@page{size:A4}">';
    const { sizes } = await readPdf((await print(printDocument('', linked))).pdf);
    expect(sizes.map(([width, height]) => width! > height!)).toEqual([false, false, false, true]);
  });

  test.each([
    [
      '<div style="width: 100px; overflow: auto"><p style="width: 140px">long</p></div>',
      'section > div ("long") is cut off: 40 px do not show in print.',
    ],
    [
      '<p style="margin-left: -30px">left</p>',
      'section > p ("left") reaches 30 px over the left edge of the page area.',
    ],
    [
      '<div class="form" style="height: 50px"><p style="margin: 0; height: 70px">tall</p></div>',
      'section > div.form ("tall") holds 20 px more than its height; they are printed over what follows.',
    ],
    [
      '<p>text</p><div style="break-before: page; height: 5px"></div>',
      'Page 4 is empty: something without ink does not fit before it.',
    ],
  ])('warns of %s', async (extra, warning) => {
    expect((await print(printDocument(extra))).warnings).toContain(warning);
  });
});

describe('nothing is printed', { timeout: 30_000 }, () => {
  test.each([
    [
      'when something is wider than its page, which shrinks all',
      '<pre style="width: 900px">wide</pre>',
      [
        /^Something is wider than the page, so the browser made everything 28\.\d % smaller\.$/,
        /^section > pre \("wide"\) reaches 257 px over the right edge of the page area\.$/,
      ],
    ],
    [
      'in a face that is not shipped',
      '<p style="font-family: Foo">text</p>',
      [
        /^The face .+ got in, for "x" \(U\+0078\), "t" \(U\+0074\), "e" \(U\+0065\), which the face asked for lacks\. Set in a face that the document does not declare: section > p \("text"\)\.$/,
      ],
    ],
    [
      'with a sign that no face has',
      '<p id="notes">snow ☃</p>',
      [/^No face has "☃" \(U\+2603\), on page 3\. In #notes \("snow ☃"\)\.$/],
    ],
    ['when a file is missing', '<img src="gone.png">', [/^It needs file:.*\/packet\/gone\.png, which is not there\.$/]],
    [
      'from the network',
      '<img src="https://example.com/x.png">',
      [/^It asks the network for https:\/\/example\.com\/x\.png\.$/],
    ],
    ['when page numbers do not settle', unsettled, [/^Its page numbers do not settle in 5 prints: /]],
  ])('%s', async (_, extra, problems) => {
    const error = await print(printDocument(extra)).then(
      () => undefined,
      (reason: unknown) => reason,
    );
    expect(error).toMatchObject({
      name: 'PrintError',
      problems: problems.map((problem) => expect.stringMatching(problem)),
    });
  });

  test('when the document is not there', async () => {
    await expect(printPacket(browser, '/no/such/print.html', options)).rejects.toThrow(
      /^print\.html was not printed:\n {2}It could not be opened: .*ERR_FILE_NOT_FOUND/,
    );
  });
  test.each([
    [{ issued: '18 March 2026' }, '"18 March 2026" is not an ISO date.'],
    [{ digest: 'ABC' }, '"ABC" is not a SHA-256 in lower-case hexadecimal.'],
  ])('with %j', async (changes, message) => {
    await expect(print(printDocument(), changes)).rejects.toThrow(message);
  });
});
