import { Parser } from 'htmlparser2';

/** Printed page of each anchor of a packet, counted from 1. */
export type AnchorPages = Readonly<Record<string, number>>;

/** What stands where a page number is not known: the packet was not printed, or does not hold the anchor. */
export const unknownPage = '–';

/**
 * The text of `data-page-of="anchor"`, or of `data-page-range="first last"` (two anchors): `31`, `12–14`, `–`.
 * @example pageText({ of: 'loads' }, { loads: 31 }) // '31'
 */
export function pageText(wanted: { of: string } | { range: string }, pages: AnchorPages): string {
  const names = 'of' in wanted ? [wanted.of] : wanted.range.split(/\s+/).filter((name) => name !== '');
  const found = names.map((name) => (Object.hasOwn(pages, name) ? pages[name]! : undefined));
  if (found.length === 0 || found.includes(undefined)) return unknownPage;
  const first = found[0]!;
  const last = found.at(-1)!;
  return first === last ? String(first) : `${first}–${last}`;
}

interface Filling {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

/**
 * Fills the page-number spans of a page's HTML. Whatever such an element held is replaced, so filling twice does no harm;
 * everything else keeps its bytes.
 * @example fillPages('page <span data-page-of="loads"></span>', { loads: 31 })
 * // 'page <span data-page-of="loads">31</span>'
 */
export function fillPages(html: string, pages: AnchorPages): string {
  if (!html.includes('data-page-')) return html;
  let result = '';
  let done = 0;
  for (const { from, to, text } of fillings(html, pages)) {
    result += html.slice(done, from) + text;
    done = to;
  }
  return result + html.slice(done);
}

function fillings(html: string, pages: AnchorPages): Filling[] {
  const found: Filling[] = [];
  let depth = 0;
  let open: { depth: number; from: number; text: string } | undefined;
  const parser = new Parser({
    onopentag(_name, attributes) {
      depth += 1;
      const wanted = request(attributes);
      if (wanted !== undefined && open === undefined) {
        open = { depth, from: parser.endIndex + 1, text: pageText(wanted, pages) };
      }
    },
    onclosetag() {
      if (open?.depth === depth) {
        found.push({ from: open.from, to: parser.startIndex, text: open.text });
        open = undefined;
      }
      depth -= 1;
    },
  });
  parser.end(html);
  return found;
}

function request(attributes: Readonly<Record<string, string>>): { of: string } | { range: string } | undefined {
  const of = attributes['data-page-of'];
  if (of !== undefined) return { of };
  const range = attributes['data-page-range'];
  return range === undefined ? undefined : { range };
}
