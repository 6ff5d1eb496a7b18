import type { Page } from 'playwright-core';
import type { AnchorPages } from './fill-pages.ts';
import { type Place, placesOf } from './places.ts';

/**
 * Something that does not fit: over the right or left edge of the page's area, cut off in a box that would scroll on screen, or
 * out at the bottom of a box of fixed height, so that it is printed over what follows.
 */
export interface Misfit extends Place {
  readonly how: 'right' | 'left' | 'cut' | 'bottom';
  readonly px: number;
}

/**
 * Lays the document out as for paper and lists what does not fit; of nested elements the outermost.
 * @param groups  ids of the parts that each stand on one kind of page
 * @param anchors  page of each of them
 * @param areas  width inside the margins of each page, in CSS pixels; parts on a page without one are not looked at
 */
export async function findMisfits(
  page: Page,
  groups: readonly string[],
  anchors: AnchorPages,
  areas: readonly (number | undefined)[],
): Promise<Misfit[]> {
  const found: Misfit[] = [];
  await page.emulateMedia({ media: 'print' });
  for (const [width, ids] of byWidth(groups, anchors, areas)) {
    await page.setViewportSize({ width: Math.round(width), height: 1000 });
    const elements = await page.evaluateHandle(listMisfits, { width, ids });
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
function listMisfits({
  width,
  ids,
}: {
  width: number;
  ids: string[];
}): { element: Element; how: Misfit['how']; px: number }[] {
  const found: { element: Element; how: Misfit['how']; px: number }[] = [];
  const slack = 1; // a pixel, for widths that are not whole
  const line = 4; // well below a line of text; letters and formulas reach some pixels out of their lines
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
    } else {
      const more = shows && spillsBelow(element, box.bottom) ? heightMissing(element) : 0;
      if (more > line) add(element, 'bottom', more);
      for (const child of element.children) look(child);
    }
  }

  function isCut(element: Element): boolean {
    const wider = element.clientWidth > 0 && element.scrollWidth > element.clientWidth + slack;
    return wider && getComputedStyle(element).overflowX !== 'visible';
  }

  /** Whether a block in the flow of an element reaches below it. */
  function spillsBelow(element: Element, bottom: number): boolean {
    return [...element.children].some((child) => {
      if (child.getBoundingClientRect().bottom - bottom <= line) return false;
      const { display, float, position } = getComputedStyle(child);
      return float === 'none' && /static|relative/.test(position) && !display.startsWith('inline');
    });
  }

  /** By how much an element would grow if its height were left to its content; negative margins make nothing grow. */
  function heightMissing(element: Element): number {
    const styled = element.getAttribute('style');
    const before = element.clientHeight;
    element.setAttribute('style', `${styled ?? ''}; height: auto !important; max-height: none !important`);
    const more = element.clientHeight - before;
    if (styled === null) element.removeAttribute('style');
    else element.setAttribute('style', styled);
    return more;
  }

  function add(element: Element, how: Misfit['how'], px: number): void {
    if (getComputedStyle(element).visibility !== 'hidden') found.push({ element, how, px: Math.round(px) });
  }
}
