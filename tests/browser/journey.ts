import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, test } from 'vitest';
import { addressOf, type OnSite, onEach } from './on-site.ts';

/** A reader's ways through the site, opened from its folder with scripts off. */
export function journeyTests(site: OnSite): void {
  describe('ways through the site', () => {
    test('from the list of boards to a chapter, an equation, its method, its source, and back', async () => {
      const context = await site.browser().newContext({ javaScriptEnabled: false });
      const page = await context.newPage();
      const at = async (path: RegExp, heading: RegExp) => {
        expect(page.url()).toMatch(path);
        expect(await page.textContent('h1')).toMatch(heading);
      };
      await page.goto(addressOf(site, 'index.html'));
      await page.click('a[href*="orchard-cart/rev-b/index"]');
      await at(/rev-b\/index\.html$/, /Orchard cart/);
      await page.click('nav a[href*="calculations.html"]');
      await at(/calculations\.html$/, /Calculations/);
      await page.click('nav a[href*="calculations/bus_sense"]');
      await at(/bus_sense\.html/, /Bus voltage/);
      await page.click('.equation-remarks a[href*="#"]');
      expect(await page.locator(':target').count()).toBe(1);
      await page.click('.section-aside a[href*="handbook/voltage-divider"]');
      await at(/handbook\/voltage-divider\.html$/, /Voltage divider/);
      await page.click('#table-sources a[href="#V_out"]');
      expect(await page.locator('.equation:target').count()).toBe(1);
      await page.click('main a[href*="orchard-cart/rev-b/calculations/bus_sense"]');
      await at(/bus_sense\.html$/, /Bus voltage/);
      for (let step = 0; step < 6; step++) await page.goBack();
      await at(/rev-b\/index\.html$/, /Orchard cart/);
      await page.goBack();
      await at(/index\.html$/, /Boards/);
      await context.close();
    }, 60_000);

    test('from a symbol to the methods that use it, and from the guide to the handbook', async () => {
      const context = await site.browser().newContext({ javaScriptEnabled: false });
      const page = await context.newPage();
      await page.goto(addressOf(site, 'guide/index.html'));
      await page.click('main a[href*="handbook/index"]');
      await page.click('main a[href*="symbols"]');
      await page.click('a[href="voltage-divider.html#R_top"]');
      expect(await page.locator('tr:target').textContent()).toContain('Upper resistor');
      await context.close();
    }, 60_000);

    test.each(['handbook/voltage-divider.html', 'guide/worst-case.html'])(
      '%s prints light on A4 sheets, whatever the screen',
      async (path) => {
        await onEach(site, [path], { colorScheme: 'dark', javaScriptEnabled: false }, async (page) => {
          const title = (await page.textContent('h1'))!;
          await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
          // The sheet without its margins.
          await page.setViewportSize({ width: Math.floor((177 / 25.4) * 96), height: 900 });
          const print = await page.evaluate(() => {
            const { color } = getComputedStyle(document.body);
            return {
              color,
              ground: getComputedStyle(document.body).backgroundColor,
              over: document.documentElement.scrollWidth - innerWidth,
            };
          });
          expect(print).toEqual({ color: 'rgb(27, 24, 21)', ground: 'rgba(0, 0, 0, 0)', over: 0 });
          const data = new Uint8Array(await page.pdf({ preferCSSPageSize: true }));
          const document_ = await getDocument({ data, useSystemFonts: false, verbosity: 0 }).promise;
          const first = await document_.getPage(1);
          expect(first.view.map(Math.round)).toEqual([0, 0, 595, 842]);
          const { items } = await first.getTextContent();
          expect(items.map((item) => ('str' in item ? item.str : '')).join(' ')).toContain(title);
        });
      },
      60_000,
    );
  });
}
