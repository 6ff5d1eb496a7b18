/**
 * Gives every formula of the print copy an alternative text, and takes its second, hidden copy out of the way: of the two
 * that KaTeX writes, the visible one is hidden from tags and the MathML one would be printed badly. An `aria-label` that the
 * page gives a formula, or the element with role `img` or `math` round it, is kept; else the MathML is put into a line of text,
 * such as `V_out = (V_in R_bot)/(R_top + R_bot)`. A line that is set in several pieces, so that it can break, is one formula: the
 * page marks it with `data-formula`.
 *
 * Runs inside the page: uses nothing from outside itself.
 * @param mark  put before each label
 */
export function describeMaths(mark: string): void {
  for (const line of document.querySelectorAll('[data-formula]')) {
    const pieces = [...line.querySelectorAll('.katex math')].map(inWords);
    line.setAttribute('role', 'img');
    line.setAttribute('aria-label', mark + pieces.join(' '));
  }
  for (const formula of document.querySelectorAll('.katex')) {
    formula.querySelector('.katex-html')?.removeAttribute('aria-hidden');
    if (formula.closest('[data-formula]') === null) label(formula);
    formula.querySelector('.katex-mathml')?.remove();
  }

  function label(formula: Element): void {
    const outer = formula.closest('[role="img"][aria-label], [role="math"][aria-label]');
    const labelled = outer ?? formula;
    const words = labelled.getAttribute('aria-label') ?? inWords(formula.querySelector('math'));
    labelled.setAttribute('role', 'img');
    if (!words.startsWith(mark)) labelled.setAttribute('aria-label', mark + words);
  }

  function inWords(maths: Element | null): string {
    if (maths === null) return 'formula';
    const spaced = line(maths).replaceAll(/\s+/g, ' ');
    return spaced.replaceAll('( ', '(').replaceAll(' )', ')').replaceAll('° C', '°C').trim();
  }

  function line(node: Element): string {
    const parts = [...node.children];
    const part = (index: number): string => (parts[index] === undefined ? '' : line(parts[index]));
    const group = (index: number): string => {
      const text = part(index).replaceAll(/\s+/g, ' ').trim();
      return /^[\p{L}\p{N}.,_]*$/u.test(text) ? text : `(${text})`;
    };
    switch (node.localName) {
      case 'annotation':
        return '';
      case 'mi':
      case 'mn':
      case 'mtext':
      case 'ms':
        return (node.textContent ?? '').replaceAll(/[\u200b\u2061-\u2064]/g, '');
      case 'mo': {
        const sign = (node.textContent ?? '').replaceAll(/[\u200b\u2061-\u2064]/g, '');
        return /^[()[\]{}|,.]?$/.test(sign) ? sign : ` ${sign} `;
      }
      case 'mspace':
        return ' ';
      case 'mfrac':
        return ` ${group(0)}/${group(1)} `;
      case 'msqrt':
        return ` √(${parts.map(line).join('').trim()}) `;
      case 'mroot':
        return ` root ${group(1)} of ${group(0)} `;
      case 'msub':
      case 'munder':
        return ` ${part(0).trim()}_${group(1)} `;
      case 'msup':
        return part(1).trim() === '∘' ? ` ${part(0).trim()}°` : ` ${part(0).trim()}^${group(1)} `;
      case 'mover':
        return ` ${part(0).trim()} `;
      case 'msubsup':
      case 'munderover':
        return ` ${part(0).trim()}_${group(1)}^${group(2)} `;
      case 'mtr':
        return `${parts.map(line).join(' ')}; `;
      case 'mtd':
        return ` ${parts.map(line).join('')} `;
      default:
        return parts.map(line).join('');
    }
  }
}
