/** Pieces of a printed unit that are no letters. */
const PIECES: Readonly<Record<string, string>> = {
  '·': '{\\cdot}',
  '/': '/',
  '(': '(',
  ')': ')',
  '%': '\\%',
  '°C': '{}^{\\circ}\\mathrm{C}',
  '°': '{}^{\\circ}',
  Ω: '\\Omega',
  µ: '\\mu',
};

const TOKEN = /°C|[·/()%°]|√|[⁺⁻]?[⁰¹²³⁴-⁹]+|\^-?[\d.]+|\d+|[A-Za-zµΩ]+/gu;
const RAISED = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/**
 * TeX of a unit as it is printed, upright: `kΩ`, `µF`, `°C`, `K/W`, `mm²`, `A²·s`, `nV/√Hz`, `%`.
 * @example texUnit('kΩ') // '\\mathrm{k\\Omega}'
 */
export function texUnit(unit: string): string {
  const tokens = unit.match(TOKEN) ?? [];
  let tex = '';
  for (let i = 0; i < tokens.length; i++) {
    const token = tokens[i]!;
    if (token === '√') tex += `\\sqrt{${wordTex(tokens[++i] ?? '')}}`;
    else if (token.startsWith('^')) tex += `^{${token.slice(1)}}`;
    else if (/^[⁺⁻⁰¹²³⁴-⁹]/.test(token)) tex += `^{${plain(token)}}`;
    else tex += PIECES[token] ?? wordTex(token);
  }
  return tex;
}

/** Letters of one unit. The prefix µ and the letter Ω are upright only in a roman font's own glyphs. */
function wordTex(word: string): string {
  if (/^\d+$/.test(word)) return word;
  return `\\mathrm{${[...word].map((letter) => (letter === 'µ' ? '\\text{µ}' : (PIECES[letter] ?? letter))).join('')}}`;
}

const plain = (raised: string): string =>
  [...raised].map((c) => (c === '⁻' ? '-' : c === '⁺' ? '' : String(RAISED.indexOf(c)))).join('');
