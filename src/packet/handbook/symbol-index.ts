import { parseUnit } from '../../quantity/units.ts';
import type { Method } from '../../spec/method-schema.ts';
import type { Row } from '../block.ts';
import { sans, serif, unit, wide } from '../chapters/columns.ts';
import { joined, link, math } from '../inline.ts';
import type { Section } from '../packet.ts';
import { idTex } from '../symbols.ts';
import type { Text } from '../text.ts';
import { tallied } from '../words.ts';
import type { HandbookPage } from './page.ts';

interface Meaning {
  readonly symbol: string;
  readonly says: string;
  readonly unit: string;
  readonly methods: readonly string[];
}

const columns = [
  wide(serif('Symbol'), 0.12),
  wide(serif('What it stands for'), 0.43),
  wide(unit('unit'), 0.1),
  wide(sans('Method'), 0.35),
];

/** Every symbol of every method, by its letter, with the methods that use it in that meaning. */
export function symbolIndex(methods: readonly Method[]): HandbookPage {
  const meanings = meaningsOf(methods);
  const letters = [...new Set(meanings.map(({ symbol }) => letterOf(symbol)))];
  return {
    id: 'symbols',
    title: 'Index of symbols',
    question: 'What does this letter stand for, and who uses it?',
    lead: [
      `${tallied(new Set(meanings.map(({ symbol }) => symbol)).size, 'symbol')} in ${tallied(meanings.length, 'meaning')}, capital letters first. A link leads to the line of the method in which the symbol is given or found.`,
    ],
    aside: [letters.flatMap((letter, i): Text => [...(i ? [' '] : []), link(letter, anchorOf(letter))])],
    sections: letters.map((letter, i): Section => {
      const rows = meanings.filter(({ symbol }) => letterOf(symbol) === letter).map(row);
      return {
        id: anchorOf(letter),
        number: String(i + 1),
        title: letter,
        aside: [],
        blocks: [
          {
            kind: 'table',
            id: `table-${i + 1}`,
            number: String(i + 1),
            caption: [`Symbols with ${letter}.`],
            columns,
            groups: [{ rows }],
            wide: true,
          },
        ],
      };
    }),
  };
}

/** Small and capital letters must differ where a file system or a reader of anchors does not tell them apart. */
const anchorOf = (letter: string): string =>
  `letter-${letter === letter.toLowerCase() && letter !== letter.toUpperCase() ? 'small-' : ''}${letter}`;

function row({ symbol, says, unit: text, methods }: Meaning): Row {
  const by = joined(
    methods.map((id): Text => [link(id, `/handbook/${id}#${symbol}`)]),
    ', ',
  );
  return { cells: [[math(idTex(symbol))], [says], [parseUnit(text).text || '–'], by] };
}

const greek: Readonly<Record<string, string>> = {
  alpha: 'α',
  beta: 'β',
  gamma: 'γ',
  delta: 'δ',
  epsilon: 'ε',
  eta: 'η',
  theta: 'θ',
  kappa: 'κ',
  lambda: 'λ',
  mu: 'µ',
  rho: 'ρ',
  sigma: 'σ',
  tau: 'τ',
  phi: 'φ',
  psi: 'ψ',
  omega: 'ω',
};

/** The letter under which a symbol is looked up: `dV_sag` is a difference and stands under Δ. */
function letterOf(symbol: string): string {
  if (/^d[A-Z](_|$)/.test(symbol)) return 'Δ';
  const word = /^[A-Za-z]+/.exec(symbol)?.[0] ?? symbol;
  return greek[word.toLowerCase()] ?? symbol.charAt(0);
}

function meaningsOf(methods: readonly Method[]): Meaning[] {
  const found = new Map<string, Meaning>();
  for (const method of methods) {
    for (const [symbol, { says, unit: text }] of [
      ...Object.entries(method.symbols),
      ...Object.entries(method.equations ?? {}),
    ]) {
      const key = `${symbol}\n${says}\n${text}`;
      const known = found.get(key)?.methods ?? [];
      found.set(key, { symbol, says, unit: text, methods: [...known, method.id] });
    }
  }
  return [...found.values()].sort(
    (a, b) => compare(letterOf(a.symbol), letterOf(b.symbol)) || compare(a.symbol, b.symbol) || compare(a.says, b.says),
  );
}

// By code point and not by locale: the order must be the same on every machine.
const compare = (one: string, other: string): number => (one < other ? -1 : one > other ? 1 : 0);
