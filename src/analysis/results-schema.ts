import { z } from 'zod';
import type { Findings } from './findings.ts';

const id = z.string().meta({ description: 'Name of a condition, or `circuit.symbol`' });
const unit = z.string().meta({ description: 'Unit of the numbers beside it; `1` for a pure number' });
const share = z.number().min(0).max(1);
const verdict = z.enum(['pass', 'marginal', 'fail', 'accepted', 'not assessed']);
const corner = z
  .record(z.string(), z.number())
  .meta({ description: 'Each variable that matters, in the unit that `inputs` states for it' });

const fraction = z
  .looseObject({ estimate: share, low: share, high: share })
  .meta({ description: 'Fraction of simulated boards with its interval at 95 % confidence' });

const spread = z.looseObject({
  at: corner.meta({ description: 'Where the conditions were held' }),
  mean: z.number(),
  sd: z.number().min(0),
  quantiles: z.looseObject({
    '0.00135': z.number(),
    '0.025': z.number(),
    '0.5': z.number(),
    '0.975': z.number(),
    '0.99865': z.number(),
  }),
  quantile_confidence: z
    .record(z.string(), z.tuple([z.number(), z.number()]))
    .meta({ description: '95 % confidence of each quantile, from the number of boards alone' }),
  histogram: z.looseObject({ from: z.number(), to: z.number(), counts: z.array(z.int().min(0)) }),
});

const input = z.looseObject({
  unit,
  kind: z.enum(['condition', 'part', 'exact', 'expression']),
  min: z.number(),
  typ: z.number(),
  max: z.number(),
});

const result = z.looseObject({
  unit,
  nominal: z.number().meta({ description: 'Everything typical' }),
  worst: z
    .looseObject({
      min: z.number(),
      max: z.number(),
      min_bound: z.number(),
      max_bound: z.number(),
      at_min: corner,
      at_max: corner,
      min_case: z.string().optional(),
      max_case: z.string().optional(),
      proven: z.boolean(),
    })
    .meta({ description: '`min` and `max` are achieved at the corners named; no board lies beyond the bounds' }),
  rss: z.looseObject({ min: z.number(), max: z.number() }),
  spread: spread.nullable(),
  sensitivity: z.array(z.looseObject({ input: id, variance: z.number(), worst: z.number(), swing: z.number() })),
});

const check = z.looseObject({
  id,
  circuit: z.string(),
  statement: z.string(),
  because: z.string(),
  worst_slack: z.number().nullable().meta({ description: 'Negative where the check fails; null where not assessed' }),
  worst_slack_bound: z.number().nullable(),
  at_worst: corner,
  case: z.string().optional(),
  unit,
  limit: z.number().nullable(),
  limit_unit: unit,
  margin: z.number().nullable().meta({ description: 'Worst slack over the size of the limit' }),
  target: z.number(),
  proven: z.boolean(),
  verdict,
  deviation: z.string().optional(),
  nominal_slack: z.number().nullable(),
  spread: spread.nullable(),
  fail_fraction: fraction.nullable(),
  requirement: z.string().optional(),
  reason: z.string().optional(),
});

const axis = z.looseObject({
  condition: id,
  unit,
  levels: z.array(z.looseObject({ name: z.enum(['low', 'typical', 'high']), value: z.number() })),
});
const cell = z.looseObject({ check: id, margin: z.number().nullable(), worst_slack: z.number(), unit, verdict });
const corners = z.looseObject({
  rows: axis,
  columns: axis.nullable(),
  checks: z.int(),
  others: z.int(),
  thinnest_other: id.optional(),
  cells: z.array(z.array(cell.nullable())),
});

const sweep = z.looseObject({
  circuit: z.string(),
  of: id,
  unit,
  over: id,
  over_unit: unit,
  stands_for: id,
  axis: z.enum(['condition', 'choice', 'result']),
  over_typical: z.number(),
  check: id.optional(),
  slack_unit: unit.optional(),
  runs: z.array(
    z.array(
      z.looseObject({
        x: z.number(),
        typical: z.number(),
        min: z.number(),
        max: z.number(),
        limit: z.number().optional(),
        slack: z.number().optional(),
      }),
    ),
  ),
  proven: z.boolean(),
  gap: z.number().min(0),
  certain: z.boolean(),
  apart: z.array(z.string()),
});

const end = z.looseObject({ value: z.number(), check: id });
const room = z.looseObject({
  input: id,
  unit,
  rating: z.boolean(),
  nominal: z.number(),
  low: end.nullable(),
  high: end.nullable(),
  tolerance: z.looseObject({ factor: z.number(), check: id }).nullable(),
});

const proposed = z.looseObject({
  values: z.record(z.string(), z.number()),
  result: z.number(),
  error: z.number().nullable(),
  margin: z.number().nullable(),
  check: id.nullable(),
});

const quantities = z.record(z.string(), z.looseObject({ value: z.number(), unit }));

const reading = z.looseObject({
  id: z.string(),
  line: z.int(),
  point: id.nullable(),
  reads: id,
  unit,
  when: quantities,
  measured: z.number(),
  uncertainty: z.number(),
  expected: z.number(),
  min: z.number(),
  max: z.number(),
  accept_from: z.number(),
  accept_to: z.number(),
  z: z.number().nullable(),
  percentile: z.number().nullable(),
  verdict: z.enum(['as predicted', 'unusual', 'undecided', 'outside']),
  closes: z.array(z.string()),
  date: z.string(),
});

const requirement = z.looseObject({
  id: z.string(),
  methods: z.array(z.string()),
  verdict,
  thinnest: id.nullable(),
  readings: z.array(z.string()),
  state: z.enum(['closed', 'open', 'reopened']),
  open: z.array(z.string()),
});

/** The keys that results.json promises; a later version may add more. Each is described where `Findings` declares it. */
export const findingsSchema = z.looseObject({
  format: z.literal('copperplate-results/1'),
  board: z.string(),
  revision: z.string(),
  document: z.string(),
  title: z.string(),
  revision_mark: z.string(),
  status: z.string(),
  issued: z.string(),
  inputs_sha256: z.string().regex(/^[0-9a-f]{64}$/),
  tool: z.string(),
  seed: z.int(),
  trials: z.int(),
  trials_chosen: z.enum(['by hand', 'for digits']),
  inputs: z.record(z.string(), input),
  results: z.record(z.string(), result),
  checks: z.array(check),
  validity: z.array(check),
  ranking: z.array(id),
  verdict,
  yield: fraction.nullable(),
  corners: corners.nullable(),
  sweeps: z.array(sweep),
  sweeps_left_out: z.array(z.looseObject({ circuit: z.string(), of: id, over: id, reason: z.string() })),
  room: z.array(room),
  proposals: z.array(
    z.looseObject({ id, of: id, unit, target: z.number(), chosen: proposed, best: proposed, differs: z.boolean() }),
  ),
  preferred: z.array(
    z.looseObject({
      input: id,
      unit,
      value: z.number(),
      tolerance: z.number().nullable(),
      series: z.enum(['E3', 'E6', 'E12', 'E24', 'E48', 'E96', 'E192']),
      stands: z.enum(['in series', 'in E24', 'round shunt', 'in none']),
      below: z.number(),
      above: z.number(),
    }),
  ),
  test_points: z.array(
    z.looseObject({
      id,
      reads: id,
      unit,
      when: quantities,
      expected: z.number(),
      min: z.number(),
      max: z.number(),
      spread: spread.nullable(),
      step: z.string(),
      held: quantities,
      accept: z
        .looseObject({ uncertainty: z.number(), from: z.number(), to: z.number(), refused: share.nullable() })
        .nullable(),
    }),
  ),
  requirements: z.array(requirement),
  bench: z.array(reading),
  cautions: z.array(
    z.looseObject({
      id: z.string(),
      level: z.enum(['danger', 'warning', 'caution', 'notice']),
      because: z.record(z.string(), z.number().nullable()),
      unit,
    }),
  ),
  assumptions: z.array(
    z.looseObject({
      symbol: id,
      value: z.string(),
      basis: z.enum(['usual value', 'typical', 'assumed']),
      effect: z
        .looseObject({
          off: z.number(),
          off_unit: z.enum(['1', 'K']),
          stated: z.boolean(),
          check: id,
          margin: z.number(),
        })
        .nullable(),
      criterion: z.literal(true).optional(),
    }),
  ),
});

/** Stops the compiler where a key of `Findings` is not described here. */
type Undescribed = Exclude<keyof Findings, keyof (typeof findingsSchema)['shape']>;
export const everyKeyIsDescribed: Undescribed extends never ? true : Undescribed = true;

/**
 * JSON Schema (2020-12) of results.json, for whoever reads it with a program of their own.
 * @see https://json-schema.org/draft/2020-12
 */
export const resultsSchema = (): object => ({
  title: 'What Copperplate found about one revision of a board',
  ...z.toJSONSchema(findingsSchema, { io: 'output', reused: 'ref' }),
});
