import type { JSHandle } from 'playwright-core';

/** An element of the print document, in words. */
export interface Place {
  /** `#loads > table.margin > td` */
  readonly selector: string;
  /** How its text begins. */
  readonly text: string;
}

/** Puts elements that were found in the page into words, in their order. */
export const placesOf = (elements: JSHandle<Element[]>): Promise<Place[]> => elements.evaluate(describeElements);

/** @example placeInWords({ selector: '#loads > p', text: 'The load' }) // '#loads > p ("The load")' */
export const placeInWords = ({ selector, text }: Place): string => (text === '' ? selector : `${selector} ("${text}")`);

/** Runs inside the page: uses nothing from outside itself. */
function describeElements(elements: Element[]): Place[] {
  return elements.map((element) => ({ selector: selector(element), text: beginning(element) }));

  function selector(element: Element): string {
    const steps: string[] = [];
    for (let at: Element | null = element; at !== null && at !== document.body; at = at.parentElement) {
      const named = at.id !== '' && !at.id.startsWith('print-');
      steps.unshift(named ? `#${at.id}` : [at.localName, ...[...at.classList].slice(0, 2)].join('.'));
      if (named) break;
    }
    return (steps.length > 4 ? [steps[0], '…', ...steps.slice(-2)] : steps).join(' > ');
  }

  function beginning(element: Element): string {
    const text = (element.textContent ?? '').replaceAll(/\s+/g, ' ').trim();
    return text.length > 40 ? `${text.slice(0, 39)}…` : text;
  }
}
