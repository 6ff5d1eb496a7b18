import type { Page } from 'playwright-core';
import type { AnchorPages } from './fill-pages.ts';
import { type Place, placesOf } from './places.ts';

/** Something that does not fit its page: over the right or left edge, or cut off in a box that would scroll on screen. */
export interface TooWide extends Place {
  readonly how: 'right' | 'left' | 'cut';
  readonly px: number;
}

/**
 * Lays the document out as for paper and lists what does not fit; of nested elements the outermost.
 * @param groups  ids of the parts that each stand on one kind of page
 * @param anchors  page of each of them
 * @param areas  width inside the margins of each page, in CSS pixels; parts on a page without one are not looked at
 */
export async function findTooWide(
  page: Page,
  groups: readonly string[],
  anchors: AnchorPages,
  areas: readonly (number | undefined)[],
): Promise<TooWide[]> {
  const found: TooWide[] = [];
  await page.emulateMedia({ media: 'print' });
  for (const [width, ids] of byWidth(groups, anchors, areas)) {
    await page.setViewportSize({ width: Math.round(width), height: 1000 });
    const elements = await page.evaluateHandle(listTooWide, { width, ids });
    const places = await placesOf(await elements.evaluateHandle((all) => all.map(({ element }) => element)));
    const sizes = await elements.evaluate((all) => all.map(({ how, px }) => ({ how, px })));
    found.push(...places.map((place, index) => ({ ...place, ...sizes[index]! })));
  }
  await page.emulateMedia({ media: null });
  return found;
}

function byWidth(
  groups: readonly string[],
  anchors: AnchorPages,
  areas: readonly (number | undefined)[],
): Map<number, string[]> {
  const jobs = new Map<number, string[]>();
  for (const id of groups) {
    const width = areas[(anchors[id] ?? 0) - 1];
    if (width !== undefined) jobs.set(width, [...(jobs.get(width) ?? []), id]);
  }
  return jobs;
}

/** Runs inside the page: uses nothing from outside itself. */
function listTooWide({
  width,
  ids,
}: {
  width: number;
  ids: string[];
}): { element: Element; how: TooWide['how']; px: number }[] {
  const found: { element: Element; how: TooWide['how']; px: number }[] = [];
  const slack = 1; // a pixel, for widths that are not whole
  for (const id of ids) look(document.getElementById(id)!);
  return found;

  function look(element: Element): void {
    const box = element.getBoundingClientRect();
    const shows = box.width > 1 && box.height > 1;
    if (shows && box.right > width + slack) add(element, 'right', box.right - width);
    else if (shows && box.left < -slack) add(element, 'left', -box.left);
    // Drawings and formulas clip parts of themselves on purpose.
    else if (element instanceof SVGElement || element.classList.contains('katex')) return;
    else if (isCut(element)) {
      if (shows) add(element, 'cut', element.scrollWidth - element.clientWidth);
    } else for (const child of element.children) look(child);
  }

  function isCut(element: Element): boolean {
    const wider = element.clientWidth > 0 && element.scrollWidth > element.clientWidth + slack;
    return wider && getComputedStyle(element).overflowX !== 'visible';
  }

  function add(element: Element, how: TooWide['how'], px: number): void {
    if (getComputedStyle(element).visibility !== 'hidden') found.push({ element, how, px: Math.round(px) });
  }
}
