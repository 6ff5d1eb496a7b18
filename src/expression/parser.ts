import { nearest } from '../quantity/nearest.ts';
import { functionNames, operationNamed } from './operations/index.ts';
import { refuse } from './refuse.ts';
import { type Token, tokensOf } from './tokens.ts';
import type { Tree } from './tree.ts';

/** Bounds that no expression typed by a person reaches; past them a text is refused rather than exhausting the stack. */
const LONGEST = 10_000;
const DEEPEST = 100;
const MOST_CALLS = 1000;

interface Infix {
  readonly operation: string;
  /** How tightly it holds its left side, and its right. */
  readonly left: number;
  readonly right: number;
}

const PREFIX = 35;
const INFIX: Readonly<Record<string, Infix>> = {
  '<': { operation: 'less', left: 10, right: 11 },
  '<=': { operation: 'lessEqual', left: 10, right: 11 },
  '>': { operation: 'greater', left: 10, right: 11 },
  '>=': { operation: 'greaterEqual', left: 10, right: 11 },
  '+': { operation: 'add', left: 20, right: 21 },
  '-': { operation: 'subtract', left: 20, right: 21 },
  '*': { operation: 'multiply', left: 30, right: 31 },
  '/': { operation: 'divide', left: 30, right: 31 },
  // Its right side may be a signed power: 2^-x^2.
  '^': { operation: 'power', left: 40, right: PREFIX },
};

/**
 * Precedence climbing over the tokens of one text (V. R. Pratt, Top down operator precedence, POPL 1973).
 * `whole` may be called once.
 */
export class Parser {
  readonly #text: string;
  readonly #tokens: readonly Token[];
  #at = 0;
  #depth = 0;
  #calls = 0;

  constructor(text: string) {
    if (text.length > LONGEST)
      refuse('too-long', { start: LONGEST, end: text.length }, `${text.length} characters`, `at most ${LONGEST}`);
    this.#text = text;
    this.#tokens = tokensOf(text);
  }

  whole(): Tree {
    const tree = this.#expression(0);
    const rest = this.#next;
    if (rest.kind === 'end') return tree;
    if (rest.text === ')') refuse('unmatched-bracket', rest.at, 'a closing bracket', 'an opening one before it');
    if (rest.text === ',')
      refuse(
        'unexpected-sign',
        rest.at,
        'a comma',
        'an operator; commas part the arguments of a function',
        'Decimals are written with a point.',
      );
    return missingOperator(tree, rest);
  }

  get #next(): Token {
    return this.#tokens[this.#at]!;
  }

  #take(): Token {
    const token = this.#next;
    if (token.kind !== 'end') this.#at++;
    return token;
  }

  /** An expression whose operators hold their left side more tightly than `least`. */
  #expression(least: number): Tree {
    if (++this.#depth > DEEPEST)
      refuse(
        'too-deep',
        this.#next.at,
        `more than ${DEEPEST} levels of brackets`,
        'a simpler expression',
        'Give a part of it a name of its own.',
      );
    let left = this.#operand();
    for (;;) {
      const token = this.#next;
      if (token.kind === 'superscript') {
        if (least > INFIX['^']!.left) break;
        left = this.#call('power', [left, superscriptNumber(this.#take())], left.at.start);
        continue;
      }
      const infix = token.kind === 'sign' ? INFIX[token.text] : undefined;
      if (!infix || infix.left < least) break;
      this.#take();
      const right = this.#expression(infix.right);
      if (infix.left === 10 && isComparison(this.#next)) {
        refuse(
          'chained-comparison',
          this.#next.at,
          'a second comparison',
          'one',
          'Write two checks, or `and(a <= b, b <= c)`.',
        );
      }
      left = this.#call(infix.operation, [left, right], left.at.start);
    }
    this.#depth--;
    return left;
  }

  #operand(): Tree {
    const token = this.#take();
    switch (token.kind) {
      case 'number':
        return {
          kind: 'number',
          value: token.value,
          text: token.text,
          at: token.at,
          ...(token.unit ? { unit: token.unit } : {}),
        };
      case 'name':
        return this.#named(token);
      case 'end':
        return refuse(
          'nothing-here',
          token.at,
          this.#tokens.length === 1 ? 'nothing' : 'the end of the expression',
          'a number, a symbol or a bracket',
        );
      default:
        return this.#signed(token);
    }
  }

  #signed(token: Token): Tree {
    if (token.text === '-') {
      const operand = this.#expression(PREFIX);
      return this.#call('negate', [operand], token.at.start);
    }
    if (token.text === '+') return this.#expression(PREFIX);
    if (token.text !== '(')
      return refuse('unexpected-sign', token.at, `\`${token.text}\``, 'a number, a symbol or a bracket');
    const inside = this.#expression(0);
    this.#close(token);
    return { ...inside, at: { start: token.at.start, end: this.#tokens[this.#at - 1]!.at.end } };
  }

  #named(token: Token): Tree {
    if (this.#next.text === '(' && this.#next.kind === 'sign') return this.#function(token);
    if (token.text === 'pi') return { kind: 'number', value: Math.PI, text: 'pi', at: token.at };
    return { kind: 'symbol', name: token.text, at: token.at };
  }

  #function(name: Token): Tree {
    if (!functionNames.includes(name.text)) {
      const meant = nearest(name.text, functionNames)
        .map((near) => `Did you mean ${near}? `)
        .join('');
      refuse(
        'unknown-function',
        name.at,
        `\`${name.text}\` before a bracket`,
        'a function such as sqrt',
        `${meant}To multiply, write \`${name.text} * (…)\`.`,
      );
    }
    const open = this.#take();
    const args: Tree[] = [];
    if (this.#next.text !== ')') {
      do args.push(this.#expression(0));
      while (this.#next.text === ',' && this.#take());
    }
    this.#close(open);
    const { arity, usage } = operationNamed(name.text);
    const at = { start: name.at.start, end: this.#tokens[this.#at - 1]!.at.end };
    if (args.length < arity[0] || args.length > arity[1]) {
      refuse('wrong-arguments', at, `${args.length} argument${args.length === 1 ? '' : 's'}`, `\`${usage}\``);
    }
    return this.#call(name.text, args, at.start);
  }

  #close(open: Token): void {
    const token = this.#next;
    if (token.text === ')') this.#take();
    else if (token.kind === 'end' || token.text === ',')
      refuse('unmatched-bracket', open.at, 'an opening bracket', 'a closing one after it');
    else missingOperator(undefined, token);
  }

  #call(operation: string, args: readonly Tree[], start: number): Tree {
    if (++this.#calls > MOST_CALLS)
      refuse(
        'too-deep',
        { start, end: this.#text.length },
        `more than ${MOST_CALLS} operations`,
        'a simpler expression',
        'Give a part of it a name of its own.',
      );
    return { kind: 'call', operation, args, at: { start, end: this.#tokens[this.#at - 1]!.at.end } };
  }
}

const isComparison = (token: Token): boolean => token.kind === 'sign' && INFIX[token.text]?.left === 10;

const DIGITS = '⁰¹²³⁴⁵⁶⁷⁸⁹';

function superscriptNumber(token: Token): Tree {
  if (token.text.length > 4) refuse('number-too-large', token.at, 'a long exponent', 'one of at most three digits');
  const plain = [...token.text].map((c) => (c === '⁻' ? '-' : c === '⁺' ? '' : String(DIGITS.indexOf(c)))).join('');
  return { kind: 'number', value: Number(plain), text: plain, at: token.at };
}

function missingOperator(left: Tree | undefined, token: Token): never {
  const hint =
    token.text === 'and' || token.text === 'or'
      ? `Write \`${token.text}(p, q)\`.`
      : `To multiply, write \`*\` before it.`;
  return refuse(
    'missing-operator',
    token.at,
    `\`${token.text}\`${left ? ' behind a complete expression' : ''}`,
    left ? 'an operator such as *' : 'an operator, a comma or a closing bracket',
    hint,
  );
}
