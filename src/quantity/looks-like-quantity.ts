import { knownUnits } from './known-units.ts';
import { lex, longestText, type Token } from './lex.ts';
import { isShare } from './read-change.ts';
import { keywords } from './read-unit.ts';

/**
 * Whether a text is meant as a quantity; anything else is an expression. Decided generously, so that a slip in a quantity
 * gets a quantity's message: it begins with a number (or `mean`, or holds ±) and no operator follows. A sign of multiplication
 * or division belongs to a unit only without spaces: `10 K/W` is a quantity, `10 K / W` divides by the symbol W.
 * @example looksLikeQuantity('4 / 5 / 6 uA') // true
 * @example looksLikeQuantity('1 / 2') // false
 */
export function looksLikeQuantity(text: string): boolean {
  if (text.length > longestText) return false;
  const tokens = lex(text);
  if (tokens.some(({ text }) => text === '±')) return startsWithNumber(tokens) || text.includes('±');
  return startsWithNumber(tokens) && !hasOperator(tokens);
}

function startsWithNumber(tokens: readonly Token[]): boolean {
  const at = ['mean', '-', '+', '±'].includes(tokens[0]?.text ?? '') ? 1 : 0;
  const first = tokens[at];
  return first?.kind === 'number' || (first?.kind === 'odd' && /[\uff10-\uff19]/.test(first.text));
}

/** Whether an operator stands before anything that settles it for a quantity. Tokens begin with a number. */
function hasOperator(tokens: readonly Token[]): boolean {
  let slashes = 0;
  for (let i = 1; i < tokens.length; i++) {
    const token = tokens[i]!;
    if (keywords.has(token.text) || token.text === ',' || isSide(tokens, i)) return false;
    if (token.text === '/' && betweenNumbers(tokens, i)) slashes += 1;
    else if (isOperator(tokens, i)) return true;
  }
  return slashes === 1;
}

function isOperator(tokens: readonly Token[], i: number): boolean {
  const [before, token, after] = [tokens[i - 1]!, tokens[i]!, tokens[i + 1]];
  const tight = !token.spaced && after !== undefined && !after.spaced;
  switch (token.text) {
    case '/':
      return !(tight && (endsUnit(tokens, i - 1) || isReciprocal(tokens, i)));
    case '*':
    case '·':
    case '^':
    case '×':
      return !(tight && endsUnit(tokens, i - 1));
    case '+':
    case '-':
      return before.text !== '^' && before.text !== '/' && !isLooseSide(tokens, i);
    case '(':
      return before.text !== '/' && before.text !== 'sqrt';
    default:
      return /^[<>=?:!&|;[\]{}"]$/.test(token.text) || (token.kind === 'word' && token.text.includes('_'));
  }
}

/** The +80 of `100 uF +80 % -20 %`: apart from the value, its sign set close. */
function isSide(tokens: readonly Token[], i: number): boolean {
  const [before, token, after] = [tokens[i - 1]!, tokens[i]!, tokens[i + 1]];
  const sign = token.text === '+' || token.text === '-';
  return sign && token.spaced && before.text !== '/' && after?.kind === 'number' && !after.spaced;
}

/** The + 80 % of `100 uF + 80 % - 20 %`: a share added to what is not one could only be a tolerance. */
function isLooseSide(tokens: readonly Token[], i: number): boolean {
  const [unit, number, share] = [tokens[1]!, tokens[i + 1], tokens[i + 2]];
  return number?.kind === 'number' && isShare(share) && knownUnits.has(unit.text) && !isShare(unit);
}

/** The slash of `4 / 5 / 6 uA`, `3 V / 4 V / 5 V` and `-3 / -2 / -1 mV`. */
function betweenNumbers(tokens: readonly Token[], i: number): boolean {
  const after = tokens[i + 1];
  const signed = after?.text === '-' || after?.text === '+';
  return (signed ? tokens[i + 2] : after)?.kind === 'number';
}

/** The 1/K of `0.0039 1/K`. */
const isReciprocal = (tokens: readonly Token[], i: number): boolean =>
  i > 1 && tokens[i - 1]!.text === '1' && tokens[i - 2]!.kind === 'number';

/** Whether this token ends a unit: its name, a power (`mm²`, `mm2`, `mm^2`) or a bracket. */
function endsUnit(tokens: readonly Token[], i: number): boolean {
  const [before, token] = [tokens[i - 1], tokens[i]!];
  if (token.kind === 'number') return before?.text === '^' || (before?.kind === 'word' && !token.spaced);
  return token.kind === 'power' || token.text === ')' || (token.kind === 'word' && knownUnits.has(token.text));
}
