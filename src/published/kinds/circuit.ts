import { stringify } from 'yaml';
import { find } from '../../analysis/find.ts';
import type { Findings, ResultFinding } from '../../analysis/findings.ts';
import { decimalOf } from '../../quantity/decimal.ts';
import { inSi } from '../../quantity/figure.ts';
import { parseUnit } from '../../quantity/units.ts';
import { showProblems } from '../../spec/problem.ts';
import { readSpec } from '../../spec/read-spec.ts';
import type { PublishedCheck } from '../check.ts';
import type { Figures } from '../judge.ts';

type InPlace = Extract<PublishedCheck, { equations: unknown }>;

/** A circuit written in place, calculated as a board's: figures by result and name, `V_o worst max`, `gate margin`. */
export function circuitFigures(check: InPlace, given: Readonly<Record<string, string>>): Figures {
  const found = findInPlace(check, given);
  return (what) => {
    const [, symbol = '', name = ''] = /^(\S+) (.+)$/.exec(what) ?? [];
    if (name === 'margin') return marginOf(found, symbol);
    const result = found.results[`c.${symbol}`];
    const read = readers[name];
    if (!result || !read) throw new Error(`${check.id}: there is no figure "${what}"`);
    const { number, difference } = read(result);
    const unit = parseUnit(result.unit);
    return difference ? number * unit.scale : inSi(decimalOf(number), unit);
  };
}

function findInPlace(
  { id, title, equations, checks, correlations, trials }: InPlace,
  given: Readonly<Record<string, string>>,
): Findings {
  const circuit = {
    given,
    ...(Object.keys(equations).length ? { equations } : {}),
    ...(checks ? { checks } : {}),
    ...(correlations ? { correlations } : {}),
  };
  const spec = {
    board: title.slice(0, 40),
    document: id,
    revision: 'A',
    issued: '2026-01-01',
    status: 'draft',
    purpose: title,
    circuits: { c: circuit },
  };
  const place = { file: `${id}.yaml`, board: 'published', revision: 'a' };
  const { board, problems } = readSpec(stringify(spec), place, { methods: new Map(), policies: new Map() });
  if (!board) throw new Error(showProblems(problems));
  return find(board, { seed: 1, trials, digest: '', tool: 'published' });
}

function marginOf({ checks }: Findings, name: string): number {
  const margin = checks.find(({ id }) => id === `c.${name}`)?.margin;
  if (margin === undefined || margin === null) throw new Error(`There is no margin of ${name}`);
  return margin;
}

type Reader = (result: ResultFinding) => { readonly number: number; readonly difference?: true };
const spread = ({ spread: found }: ResultFinding) => {
  if (!found) throw new Error('A result that no part moves has no spread');
  return found;
};

const readers: Readonly<Record<string, Reader>> = {
  nominal: ({ nominal }) => ({ number: nominal }),
  'worst min': ({ worst }) => ({ number: worst.min }),
  'worst max': ({ worst }) => ({ number: worst.max }),
  mean: (result) => ({ number: spread(result).mean }),
  deviation: (result) => ({ number: spread(result).sd, difference: true }),
  '2.5 % quantile': (result) => ({ number: spread(result).quantiles['0.025'] }),
  '97.5 % quantile': (result) => ({ number: spread(result).quantiles['0.975'] }),
  'half of the 95 % interval': (result) => {
    const { quantiles } = spread(result);
    return { number: (quantiles['0.975'] - quantiles['0.025']) / 2, difference: true };
  },
  'half of root-sum-square': ({ rss }) => ({ number: (rss.max - rss.min) / 2, difference: true }),
  // Of measured spreads, whose limits are taken at four deviations.
  'deviation of first order': ({ rss }) => ({ number: (rss.max - rss.min) / 8, difference: true }),
};
