import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { fewPaths, kindPaths, type OnSite, onEach, screenPaths } from './on-site.ts';

const axe = readFileSync(fileURLToPath(import.meta.resolve('axe-core/axe.min.js')), 'utf8');
/** Each method has formulas of its own length. */
const handbook = (site: OnSite): string[] => screenPaths(site).filter((path) => path.startsWith('handbook/'));
const sideways = () => document.documentElement.scrollWidth - document.documentElement.clientWidth;

/** What axe finds on a page, as lines; axe is a script, so its context lifts the policy that forbids them. */
async function faults(page: Page, rules?: readonly string[]): Promise<string[]> {
  await page.evaluate(axe);
  return page.evaluate(async (only) => {
    interface Axe {
      run(options: object): Promise<{ violations: { id: string; nodes: { target: unknown[] }[] }[] }>;
    }
    const { violations } = await (globalThis as unknown as { axe: Axe }).axe.run(only ? { runOnly: only } : {});
    return violations.map(
      ({ id, nodes }) =>
        `${id}: ${nodes
          .slice(0, 3)
          .map(({ target }) => target.join(' '))
          .join(' | ')}`,
    );
  }, rules);
}

/** A page serves whoever comes: by keyboard, with a screen reader, enlarged, on a telephone, in colours of one's own. */
export function accessTests(site: OnSite): void {
  describe('access, with scripts off', () => {
    // 640 px is what a window of 1280 px shows at 200 %, and 320 px at 400 %.
    test.each([1280, 768, 640, 390, 320])(
      'no page scrolls sideways at %d px',
      async (width) => {
        const wide: string[] = [];
        await onEach(
          site,
          width === 320 ? [...new Set([...kindPaths(site), ...handbook(site)])] : kindPaths(site),
          { javaScriptEnabled: false, viewport: { width, height: 900 } },
          async (page, path) => {
            const over = await page.evaluate(sideways);
            if (over > 0) wide.push(`${path} by ${over} px`);
          },
        );
        expect(wide).toEqual([]);
      },
      120_000,
    );

    test('axe finds no fault on any kind of page, light', async () => {
      const found: string[] = [];
      await onEach(site, kindPaths(site), { bypassCSP: true, colorScheme: 'light' }, async (page, path) => {
        found.push(...(await faults(page)).map((fault) => `${path} ${fault}`));
      });
      expect(found).toEqual([]);
    }, 240_000);

    test('axe finds no fault of contrast, dark, nor of narrow layouts', async () => {
      const found: string[] = [];
      const options = { bypassCSP: true, colorScheme: 'dark', viewport: { width: 320, height: 900 } } as const;
      await onEach(site, fewPaths, options, async (page, path) => {
        found.push(
          ...(await faults(page, ['color-contrast', 'scrollable-region-focusable', 'target-size'])).map(
            (fault) => `${path} ${fault}`,
          ),
        );
      });
      expect(found).toEqual([]);
    }, 240_000);

    test('the keyboard reaches every link, the skip link first, and sees where it is', async () => {
      await onEach(
        site,
        ['index.html', 'handbook/voltage-divider.html', 'guide/index.html'],
        { javaScriptEnabled: false },
        async (page, path) => {
          const wanted = await page.locator('a[href], [tabindex="0"]').count();
          const seen = new Set<string>();
          for (let i = 0; i < wanted; i++) {
            await page.keyboard.press('Tab');
            const focus = await page.evaluate(() => {
              const at = document.activeElement as HTMLElement;
              const { outlineStyle, outlineWidth } = getComputedStyle(at);
              const place = [...document.querySelectorAll('a[href], [tabindex="0"]')].indexOf(at);
              return {
                place: String(place),
                text: at.textContent ?? '',
                visible: outlineStyle !== 'none' && outlineWidth !== '0px',
              };
            });
            if (i === 0) expect(focus.text, path).toBe('to the text');
            expect(focus.visible, `${path}: ${focus.text}`).toBe(true);
            seen.add(focus.place);
          }
          expect(seen.size, path).toBe(wanted);
        },
      );
    }, 60_000);

    test('formulas are there for screen readers, each page has a language and one heading of the first order', async () => {
      await onEach(site, kindPaths(site), { javaScriptEnabled: false }, async (page, path) => {
        const found = await page.evaluate(() => ({
          set: document.querySelectorAll('.katex').length,
          spoken: document.querySelectorAll('.katex > .katex-mathml > math').length,
          shown: document.querySelectorAll('.katex > .katex-html[aria-hidden="true"]').length,
          silent: document.querySelectorAll('svg:not([aria-label], [aria-hidden], svg svg, .katex svg)').length,
          language: document.documentElement.lang,
          titles: document.querySelectorAll('h1').length,
        }));
        expect(found, path).toMatchObject({
          spoken: found.set,
          shown: found.set,
          silent: 0,
          language: 'en',
          titles: 1,
        });
      });
    }, 60_000);

    test('nothing moves, for those who asked for stillness and for all others', async () => {
      await onEach(site, kindPaths(site), { reducedMotion: 'reduce' }, async (page, path) => {
        const moving = await page.evaluate(
          () =>
            [...document.querySelectorAll('body *')].filter((one) => {
              const { animationName, transitionDuration, scrollBehavior } = getComputedStyle(one);
              return animationName !== 'none' || transitionDuration !== '0s' || scrollBehavior !== 'auto';
            }).length,
        );
        expect(moving, path).toBe(0);
      });
    }, 60_000);

    test("with colours of one's own, marks, strips and plots are drawn in them", async () => {
      const options = { forcedColors: 'active', colorScheme: 'dark' } as const;
      await onEach(
        site,
        ['index.html', 'orchard-cart/rev-b/tolerances.html', 'guide/tolerance.html'],
        options,
        async (page, path) => {
          const found = await page.evaluate(() => {
            const { color, backgroundColor } = getComputedStyle(document.body);
            const ground = getComputedStyle(document.documentElement).backgroundColor;
            const drawn = [...document.querySelectorAll('svg :is(line, path, rect, circle)')].map((one) =>
              getComputedStyle(one),
            );
            const lost = drawn.filter(({ stroke, fill }) =>
              [stroke, fill].every((paint) => paint === 'none' || paint === ground),
            );
            return { color, backgroundColor, ground, drawn: drawn.length, lost: lost.length };
          });
          expect(found.color, path).not.toBe(found.ground);
          expect(found.drawn, path).toBeGreaterThan(3);
          // Frames and grounds of plots are drawn in the colour of the paper on purpose.
          expect(found.lost / found.drawn, path).toBeLessThan(0.3);
        },
      );
    }, 60_000);
  });
}
