import { typeset } from '../../expression/readings/typeset.ts';
import type { Circuit } from '../../spec/board.ts';
import type { Block } from '../block.ts';
import { cautionLine } from '../caution-block.ts';
import { chapterHeads } from '../chapter-list.ts';
import { link, listed, math, method as methodName, name, strong } from '../inline.ts';
import { countsOf, marginText, verdictSentence } from '../margins.ts';
import { type Numbering, numbering } from '../numbering.ts';
import type { Chapter, Section } from '../packet.ts';
import { checksOf, type Review, rankedChecks } from '../review.ts';
import { worstSentence } from '../statements.ts';
import { symbolLeaves } from '../symbols.ts';
import type { Text } from '../text.ts';
import { checkLink } from '../trail.ts';
import { capital, counted, sentence } from '../words.ts';
import { boardBlocks } from './board-blocks.ts';
import { chapter } from './chapter.ts';
import { checksTable, validityTable } from './checks-table.ts';
import { circuitDrawing } from './circuit-drawing.ts';
import { equationOf } from './equation.ts';
import { inputsTable } from './inputs-table.ts';
import { sweepsOf } from './sweeps.ts';

/** A section for every circuit: what goes in, every equation with its numbers, what must hold. */
export function calculations(review: Review): Chapter | undefined {
  const { circuits, totals } = review.board;
  if (!circuits.length) return undefined;
  const numbers = numbering(chapterHeads.calculations.number);
  const opening = [reading, ...boardBlocks(review, numbers)];
  const sections = circuits.map((circuit) => circuitSection(review, circuit, numbers));
  return chapter('calculations', opening, totals.length ? [...sections, totalsSection(review)] : sections, {
    sectionPages: true,
  });
}

const reading: Block = {
  kind: 'paragraph',
  text: [
    'Each equation stands three times: as symbols, with typical numbers, and with the numbers of the corner that is worst for what it limits. Numbers put into a line are rounded for print alone: its result was calculated with all digits, and at the worst corner it is rounded outward. A number in brackets is an equation, a name such as ',
    name('circuit.symbol'),
    ' is the same name in the specification, in the result file and in every table of this packet. In a plot, the band holds every board under every condition, and is proven unless its caption says otherwise.',
  ],
};

function circuitSection(review: Review, circuit: Circuit, numbers: Numbering): Section {
  const thinnest = rankedChecks(review).find((check) => check.circuit === circuit.id);
  const equations = equationsOf(review, circuit);
  const blocks = [
    lead(review, circuit),
    circuitDrawing(review, circuit, numbers),
    inputsTable(review, circuit, numbers),
    ...circuit.results.map((result) => equationOf(review, result)),
    checksTable(review, circuit, numbers),
    validityTable(review, circuit, numbers),
    ...sweepsOf(review, circuit, numbers),
  ].filter((block) => block !== undefined);
  return {
    id: circuit.id,
    number: review.trail.sections.get(circuit.id)!,
    title: circuit.title,
    key: circuit.id,
    ...(equations ? { equations } : {}),
    ...(thinnest
      ? {
          mark: {
            verdict: thinnest.verdict,
            margin: marginText(thinnest),
            ...(thinnest.deviation ? { deviation: thinnest.deviation } : {}),
          },
        }
      : {}),
    aside: aside(review, circuit),
    blocks,
  };
}

/** First and last number of a circuit's equations, which run through the chapter. */
function equationsOf({ trail }: Review, { results }: Circuit): [first: string, last: string] | undefined {
  const [first, last] = [results[0], results.at(-1)];
  return first && last ? [trail.equations.get(first.id)!, trail.equations.get(last.id)!] : undefined;
}

function numbersOf(review: Review, circuit: Circuit): string {
  const [first, last] = equationsOf(review, circuit) ?? [];
  if (first === undefined) return '';
  return first === last ? ` (${first})` : ` (${first}) to (${last})`;
}

/** Opens with the verdict, then the number that decides it. */
function lead(review: Review, circuit: Circuit): Block {
  const checks = checksOf(review, circuit);
  const worst = rankedChecks(review).find((check) => check.circuit === circuit.id);
  if (!worst) return { kind: 'paragraph', lead: true, text: ['Nothing is checked here; the results serve others.'] };
  const verdict = verdictSentence(countsOf(checks), review.board.target);
  const thinnest: Text = checks.length > 1 ? [' The thinnest is ', checkLink(worst.id), '. '] : [' '];
  return {
    kind: 'paragraph',
    lead: true,
    text: [verdict, ...thinnest, ...worstSentence(review, worst), ...outside(review, circuit)],
  };
}

/** A circuit whose equations do not hold everywhere must say so before anybody reads its numbers. */
function outside({ judged }: Review, circuit: Circuit): Text {
  const broken = circuit.validity
    .map(({ id }) => judged.get(id)!)
    .filter(({ verdict }) => verdict === 'fail' || verdict === 'not assessed');
  if (!broken.length) return [];
  const names = listed(broken.map(({ id }): Text => [checkLink(id)]));
  return [' ', strong('Its equations do not hold everywhere:'), ' see ', ...names, '.'];
}

function aside(review: Review, circuit: Circuit): Text[] {
  const { method, count, checks, results, why } = circuit;
  const alike = count > 1 ? `, ${counted(count, 'alike', 'alike')} on the board` : '';
  return [
    [
      strong(circuit.id),
      method ? ', method ' : ', equations of this board',
      ...(method ? [methodName(method.id)] : []),
      ...(alike ? [alike] : []),
    ],
    [
      `${capital(counted(results.length, 'equation'))}${numbersOf(review, circuit)}, ${counted(checks.length, 'check')}.`,
    ],
    ...(why ? [[strong('Why these parts.'), ` ${sentence(why)}`]] : []),
    ...(method ? [[strong('Holds when:'), ` ${sentence(method['holds when'])}`]] : []),
    ...temperature(circuit),
    ...feeds(review, circuit),
    ...dangers(review, circuit),
  ];
}

function temperature({ temperature: tree }: Circuit): Text[] {
  return tree ? [[strong('Drifts follow'), ' ', math(typeset(tree, symbolLeaves(tree, undefined))), '.']] : [];
}

/** Cautions that speak of this circuit's numbers, beside it. */
const dangers = ({ cautions }: Review, { id }: Circuit): Text[] =>
  cautions.filter(({ circuits = [] }) => circuits.includes(id)).map((caution) => cautionLine(caution, false));

/** Circuits that build on this one. */
function feeds({ trail }: Review, circuit: Circuit): Text[] {
  const own = [...circuit.inputs, ...circuit.results].map(({ id }) => id);
  const users = own.flatMap((id) => trail.uses.get(id) ?? []).map((id) => id.split('.')[0]!);
  const others = [...new Set(users)].filter((id) => id !== circuit.id && trail.sections.has(id));
  return others.length
    ? [['Feeds ', ...listed(others.map((id): Text => [link(id, id), ` (${trail.sections.get(id)})`])), '.']]
    : [];
}

function totalsSection(review: Review): Section {
  return {
    id: 'board',
    number: review.trail.sections.get('board')!,
    title: 'Sums over the board',
    aside: [],
    blocks: [
      {
        kind: 'paragraph',
        lead: true,
        text: [
          'What each circuit gives off, stores or draws, added up. The worst case of a sum takes every circuit at one and the same corner.',
        ],
      },
      ...review.board.totals.map((total) => equationOf(review, total)),
    ],
  };
}
