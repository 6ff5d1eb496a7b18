/** Pieces of a printed unit that are no letters. */
const PIECES: ReadonlyMap<string, string> = new Map(
  Object.entries({
    '·': '{\\cdot}',
    '/': '/',
    '(': '(',
    ')': ')',
    '%': '\\%',
    '°C': '{}^{\\circ}\\mathrm{C}',
    '°': '{}^{\\circ}',
    Ω: '\\Omega',
  }),
);

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
    else tex += PIECES.get(token) ?? wordTex(token);
  }
  return tex;
}

/** Letters of one unit. KaTeX has no upright µ: it is passed on as text, and the page's text face lends it. */
function wordTex(word: string): string {
  if (/^\d+$/.test(word)) return word;
  return `\\mathrm{${[...word].map((letter) => (letter === 'µ' ? '\\text{µ}' : (PIECES.get(letter) ?? letter))).join('')}}`;
}

const plain = (raised: string): string =>
  [...raised].map((c) => (c === '⁻' ? '-' : c === '⁺' ? '' : String(RAISED.indexOf(c)))).join('');
