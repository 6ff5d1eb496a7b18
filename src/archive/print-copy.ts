/**
 * What is done to the print document in the browser before it is printed. These functions run inside the page: each is
 * sent there as text, so it may use nothing from outside itself. The file on disk is not changed.
 */

/** Begins the label of a formula in the print copy, by which the PDF's tags know it from a picture (private use area). */
export const formulaMark = '\ue000';

/**
 * Loads every declared face. One that is used only in a page margin would otherwise not be there in time.
 * @returns a line for each face that could not be loaded
 */
export async function loadFonts(): Promise<string[]> {
  const faces = [...document.fonts];
  const loaded = await Promise.allSettled(faces.map((face) => face.load()));
  return faces
    .filter((_, index) => loaded[index]?.status === 'rejected')
    .map((face) => `${face.family} ${face.weight} ${face.style}`);
}

/**
 * Chooses the paper. `data-paper` on the root element tells the style sheet (`:root[data-paper="letter"]`), and a `<style>` or
 * `<link>` that itself carries `data-paper` counts for that paper only: @page rules cannot look at attributes.
 */
export function choosePaper(paper: string): void {
  document.documentElement.dataset.paper = paper;
  for (const sheet of document.querySelectorAll<HTMLStyleElement | HTMLLinkElement>(
    'style[data-paper], link[data-paper]',
  )) {
    sheet.media = sheet.dataset.paper === paper ? 'all' : 'not all';
  }
  if (paper === 'letter' && document.querySelector('[data-paper="letter"]:is(style, link)') === null) {
    const style = document.createElement('style');
    style.textContent = '@page { size: letter }';
    document.head.append(style);
  }
}

/**
 * Puts the document's own page rules behind the linked style sheets: the browser lets the `@page` rule of the last sheet win,
 * even a plain one over one with a page's name.
 */
export function ownPageRulesLast(): void {
  for (const style of document.querySelectorAll('style')) {
    if (style.textContent.includes('@page')) document.head.append(style);
  }
}

/**
 * Makes links lead somewhere from paper: a link to another page of the site becomes a link inside the document where
 * the anchor is in it, and plain text where not (a file address would print the name of a folder on this machine).
 */
export function keepLinksInside(): void {
  for (const link of document.querySelectorAll<HTMLAnchorElement>('a[href]')) {
    if (/^(#|https:|mailto:)/.test(link.getAttribute('href')!)) continue;
    const anchor = new URL(link.href).hash;
    if (anchor !== '' && document.getElementById(decodeURIComponent(anchor.slice(1))) !== null)
      link.setAttribute('href', anchor);
    else link.removeAttribute('href');
  }
}

/**
 * Makes the browser write a named destination for every anchor: it does so for ids that something links to. Ids inside
 * drawings are theirs alone.
 */
export function linkEveryAnchor(): void {
  const links = document.createElement('div');
  links.hidden = true;
  for (const { id } of document.querySelectorAll('[id]:not(svg *)')) {
    const link = document.createElement('a');
    link.href = `#${encodeURIComponent(id)}`;
    links.append(link);
  }
  // After the body, so that no rule for a last child is disturbed.
  document.documentElement.append(links);
}

/** Address of the yardstick: a link of known width, whose rectangle in the PDF shows by how much the browser shrank. */
export const yardstick = { address: 'https://yardstick.invalid/', px: 96, points: 72 };

export function layYardstick({ address, px }: { address: string; px: number }): void {
  const link = document.createElement('a');
  link.href = address;
  link.id = 'print-yardstick';
  link.style.cssText = `position: absolute; left: 0; top: 0; width: ${px}px; height: 9px`;
  document.documentElement.append(link);
}

export function liftYardstick(): void {
  document.getElementById('print-yardstick')?.remove();
}

/** What the page-number spans ask for, in document order. */
export function pageRequests(): ({ of: string } | { range: string })[] {
  return [...document.querySelectorAll<HTMLElement>('[data-page-of], [data-page-range]')].map((span) =>
    span.dataset.pageOf === undefined ? { range: span.dataset.pageRange! } : { of: span.dataset.pageOf },
  );
}

/** Writes the texts into the page-number spans, in document order. */
export function writePages(texts: string[]): void {
  for (const [index, span] of [...document.querySelectorAll('[data-page-of], [data-page-range]')].entries()) {
    span.textContent = texts[index]!;
  }
}

/**
 * Lays the document out from nothing. What the browser has laid out before, and whether it drew a frame between two changes, leaves
 * traces in where it joins pieces of text: the same page would get one link more or less on a busy machine.
 */
export function layOutAfresh(): void {
  const { style } = document.documentElement;
  style.display = 'none';
  document.documentElement.getBoundingClientRect();
  style.removeProperty('display');
  if (style.length === 0) document.documentElement.removeAttribute('style');
}
