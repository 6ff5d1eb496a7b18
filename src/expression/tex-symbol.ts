const GREEK: readonly string[] = [
  ...['alpha', 'beta', 'gamma', 'delta', 'epsilon', 'zeta', 'eta', 'theta', 'iota', 'kappa', 'lambda', 'mu', 'nu'],
  ...['xi', 'pi', 'rho', 'sigma', 'tau', 'upsilon', 'phi', 'chi', 'psi', 'omega'],
  ...['Gamma', 'Delta', 'Theta', 'Lambda', 'Xi', 'Pi', 'Sigma', 'Upsilon', 'Phi', 'Psi', 'Omega'],
];

/** Letters as they may be typed, micro and ohm signs among them. */
const LETTERS: Readonly<Record<string, string>> = {
  ...{ α: 'alpha', β: 'beta', γ: 'gamma', δ: 'delta', ε: 'epsilon', ζ: 'zeta', η: 'eta', θ: 'theta', ι: 'iota' },
  ...{ κ: 'kappa', λ: 'lambda', μ: 'mu', '\u00b5': 'mu', ν: 'nu', ξ: 'xi', π: 'pi', ρ: 'rho', σ: 'sigma', τ: 'tau' },
  ...{ υ: 'upsilon', φ: 'phi', χ: 'chi', ψ: 'psi', ω: 'omega', Γ: 'Gamma', Δ: 'Delta', Θ: 'Theta', Λ: 'Lambda' },
  ...{ Ξ: 'Xi', Π: 'Pi', Σ: 'Sigma', Φ: 'Phi', Ψ: 'Psi', Ω: 'Omega', '\u2126': 'Omega' },
};

/** Whose TeX command is not the letter's own name: the forms of the trade, ε and φ as in ε₀ and φ. */
const FORMS: Readonly<Record<string, string>> = { epsilon: '\\varepsilon', phi: '\\varphi' };

/**
 * TeX of a symbol. The letter is in italics, upright where it is a word of several; what follows the first `_` is its
 * index, upright where it has more than one letter, and further `_` part it with commas. Greek letters go by name or
 * letter; `Delta_I` is a difference, Δ before its symbol. Of `circuit.symbol` the symbol is shown.
 * @example texSymbol('pack.R_DS_on') // 'R_{\\mathrm{DS,on}}'
 */
export function texSymbol(name: string): string {
  const [head = '', ...rest] = name.slice(name.lastIndexOf('.') + 1).split('_');
  const index = rest.filter((part) => part !== '');
  if ((head === 'Delta' || head === 'Δ') && index.length) return `\\Delta ${withIndex(index[0]!, index.slice(1))}`;
  return withIndex(head, index);
}

function withIndex(head: string, index: readonly string[]): string {
  return index.length ? `${letter(head)}_{${indexTex(index)}}` : letter(head);
}

/** One letter, a Greek name, a letter with a number (`R1` is R with the index 1), or a word. */
function letter(head: string): string {
  const greek = greekOf(head);
  if (greek) return greek;
  if ([...head].length === 1) return head;
  const numbered = /^(\D+?)(\d+)$/.exec(head);
  if (numbered) return `${letter(numbered[1]!)}_{${numbered[2]}}`;
  return head === '' ? '\\_' : `\\mathrm{${escaped(head)}}`;
}

/** Parts of an index; a run of upright ones is set as one. */
function indexTex(parts: readonly string[]): string {
  if (parts.every((part) => isUpright(part))) return `\\mathrm{${parts.map(escaped).join(',')}}`;
  return parts.map((part) => greekOf(part) ?? (isUpright(part) ? `\\mathrm{${escaped(part)}}` : part)).join(',');
}

const isUpright = (part: string): boolean => part.length > 1 && !greekOf(part) && !/^\d+$/.test(part);

function greekOf(word: string): string | undefined {
  const name = Object.hasOwn(LETTERS, word) ? LETTERS[word] : GREEK.find((letter) => letter === word);
  if (!name) return undefined;
  return FORMS[name] ?? `\\${name}`;
}

/** Greek letters within a word; nothing else of a name needs escaping, for names hold letters, digits and `_` only. */
const escaped = (word: string): string =>
  [...word].map((character) => (LETTERS[character] ? `\\${LETTERS[character]} ` : character)).join('');
