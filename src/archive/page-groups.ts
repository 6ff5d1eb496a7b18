/**
 * Splits the document into the largest elements that each stand on one kind of page (`page: wide` in the style sheet), and
 * gives those without an id one. Runs inside the page: uses nothing from outside itself.
 * @returns their ids, in document order
 */
export function namePageGroups(): string[] {
  const named = [...document.body.querySelectorAll('*')].filter((element) => getComputedStyle(element).page !== 'auto');
  const mixed = new Set<Element>();
  for (const element of named) {
    for (let at = element.parentElement; at !== null && !mixed.has(at); at = at.parentElement) mixed.add(at);
  }
  const ids: string[] = [];
  split(document.body);
  return ids;

  function split(element: Element): void {
    if (mixed.has(element) && getComputedStyle(element).page === 'auto') {
      for (const child of element.children) split(child);
      return;
    }
    element.id ||= `print-group-${ids.length + 1}`;
    ids.push(element.id);
  }
}

/** Takes back the ids that `namePageGroups` gave. Runs inside the page. */
export function unnamePageGroups(): void {
  for (const element of document.querySelectorAll('[id^="print-group-"]')) element.removeAttribute('id');
}
