import { parseExpression, parseStatement } from '../expression/parse.ts';
import type { Tree } from '../expression/tree.ts';
import { kindOf } from '../quantity/coherent-unit.ts';
import { isPure, pureNumber, same } from '../quantity/dimension.ts';
import { looksLikeQuantity } from '../quantity/looks-like-quantity.ts';
import { nearest } from '../quantity/nearest.ts';
import { parseQuantity } from '../quantity/parse-quantity.ts';
import { withArticle } from '../quantity/place.ts';
import type { Quantity } from '../quantity/quantity.ts';
import { TextError } from '../quantity/text-problem.ts';
import type { Unit } from '../quantity/unit.ts';
import { coherentUnit, describeDimension, parseUnit } from '../quantity/units.ts';
import type { Circuit, Input, InputValue, Result, TestPoint } from './board.ts';
import type { CheckSpec, CircuitSpec, GivenSpec, TestPointSpec } from './circuit-schema.ts';
import { readCorrelations } from './correlations.ts';
import type { Drawing } from './drawing/drawing.ts';
import { drawingOf, readDrawing } from './drawing/read-drawing.ts';
import type { Method } from './method-schema.ts';
import { orderedChecks } from './orders.ts';
import { checkPath, pathPlace } from './read-path.ts';
import type { Report } from './report.ts';
import { meant, unknownKey } from './schema-problems.ts';
import type { Path } from './yaml-file.ts';

/** A check whose names and units are not settled yet. */
export type DraftCheck = Omit<Circuit['checks'][number], 'unit'>;
/** A circuit with its texts read but its names still as typed, and where each part of it was written. */
export type DraftCircuit = Omit<Circuit, 'checks' | 'validity'> & {
  readonly checks: readonly DraftCheck[];
  readonly validity: readonly DraftCheck[];
  /** Place in the spec of each input, result and check by its id. */
  readonly places: ReadonlyMap<string, Path>;
  /** Ids whose unit nobody typed: it follows from their dimension. */
  readonly unitless: ReadonlySet<string>;
  /** Every symbol that is given or found, also where its text could not be read. */
  readonly declared: ReadonlySet<string>;
  /** Names of its checks, also of those that could not be read. */
  readonly checkNames: readonly string[];
};

/** Reads one circuit of a spec. What cannot be read is left out and reported; the caller throws the board away then. */
export function readCircuit(
  report: Report,
  id: string,
  spec: CircuitSpec,
  method: Method | undefined,
  conditions: ReadonlySet<string>,
): DraftCircuit {
  const path: Path = ['circuits', id];
  const places = new Map<string, Path>();
  const unitless = new Set<string>();
  const inputs = readInputs(report, id, spec, method, places, unitless);
  reportRefs(report, id, spec, method);
  const equations = { ...fromMethod(method?.equations, path), ...fromSpec(spec.equations, path, 'equations') };
  const results = Object.entries(equations).flatMap(([symbol, { spec: equation, at }]) => {
    places.set(`${id}.${symbol}`, at);
    const tree = report.attempt([...at, 'is'], () => parseExpression(equation.is));
    const unit = report.attempt([...at, 'unit'], () => parseUnit(equation.unit));
    if (!tree || !unit) return [];
    const load = equation.load && at.at(-1) === 'method' ? (spec.rail ?? equation.load) : equation.load;
    const result: Result = {
      id: `${id}.${symbol}`,
      symbol,
      says: equation.says,
      unit,
      tree,
      text: equation.is,
      heat: equation.heat ?? false,
      stored: equation.stored ?? false,
      ...(equation.source ? { source: equation.source } : {}),
      ...(load ? { load } : {}),
      ...(equation.hazard ? { hazard: equation.hazard } : {}),
    };
    return [result];
  });
  const given = new Set([...Object.keys(method?.symbols ?? {}), ...Object.keys(spec.given ?? {})]);
  const found = Object.keys(equations);
  reportClashes(report, id, given, found);
  const ordered = orderedChecks(id, { ...fromMethod(method?.order, path), ...fromSpec(spec.order, path, 'order') });
  reportIdleRail(report, path, spec, method);
  const checkNames = Object.keys({ ...method?.checks, ...spec.checks, ...ordered.checks });
  reportPlots(report, id, spec, { given, found, conditions, checks: checkNames });
  const checks = readChecks(
    report,
    id,
    { ...fromMethod(method?.checks, path), ...fromSpec(spec.checks, path, 'checks'), ...ordered.checks },
    places,
  );
  const validity = readChecks(
    report,
    id,
    { ...fromMethod(method?.valid, path), ...fromSpec(spec.valid, path, 'valid') },
    places,
  );
  const correlations = spec.correlations && readCorrelations(report, id, spec.correlations, inputs);
  const temperature = readTemperature(report, path, spec, inputs, conditions, places);
  const names = [...inputs, ...results].map(({ symbol }) => symbol);
  if (spec.path) checkPath(report, [...path, 'path'], spec.path, names);
  const station = spec.path ?? method?.path;
  const drawing = drawingFor(report, path, spec, method, names);
  return {
    id,
    title: spec.title ?? method?.title ?? id,
    count: spec.count ?? 1,
    inputs,
    results,
    checks,
    validity,
    orders: ordered.orders,
    firmware: readFirmware(
      report,
      id,
      { ...fromMethod(method?.firmware, path), ...fromSpec(spec.firmware, path, 'firmware') },
      places,
      unitless,
    ),
    testPoints: readTestPoints(
      report,
      id,
      {
        ...fromMethod(method?.['test points'], path),
        ...fromSpec(spec['test points'], path, 'test points'),
      },
      results,
      found,
      new Set([...given, ...conditions]),
    ),
    plots: [...(method?.plots ?? []), ...(spec.plots ?? [])].map(({ of, over, limit, says }) => ({
      of,
      over,
      ...(limit ? { limit } : {}),
      ...(says ? { says } : {}),
    })),
    sources: { ...method?.sources, ...spec.sources },
    places,
    unitless,
    declared: new Set([...given, ...found]),
    checkNames,
    ...(method ? { method } : {}),
    ...(spec.why ? { why: spec.why } : {}),
    ...(temperature ? { temperature } : {}),
    ...(correlations ? { correlations } : {}),
    ...(drawing ? { drawing } : {}),
    ...(station ? { path: pathPlace(id, station) } : {}),
  };
}

/** The circuit's own drawing, else its method's. */
function drawingFor(
  report: Report,
  path: Path,
  spec: CircuitSpec,
  method: Method | undefined,
  known: readonly string[],
): Drawing | undefined {
  if (!spec.drawing) return method?.drawing && drawingOf(method.drawing);
  return readDrawing(report, [...path, 'drawing'], spec.drawing, known);
}

/** A rail is for what the method marks as a load; without any it would be lost in silence. */
function reportIdleRail(report: Report, path: Path, spec: CircuitSpec, method: Method | undefined): void {
  if (spec.rail === undefined) return;
  if (Object.values(method?.equations ?? {}).some(({ load }) => load !== undefined)) return;
  report.add([...path, 'rail'], {
    code: 'no-load',
    found: `the rail \`${spec.rail}\`, but ${method ? `the method \`${method.id}\` marks` : 'no method is there to mark'} no load`,
    expected: 'a method that draws from a supply',
    hint: 'An equation of the circuit itself names its rail with `load:`.',
  });
}

type Placed<T> = Record<string, { spec: T; at: Path }>;
/** What a method says stands in no line of the spec: a problem with it points at the name of the method. */
const fromMethod = <T>(part: Record<string, T> | undefined, path: Path): Placed<T> =>
  placed(part, () => [...path, 'method']);
const fromSpec = <T>(part: Record<string, T> | undefined, path: Path, key: string): Placed<T> =>
  placed(part, (name) => [...path, key, name]);
function placed<T>(part: Record<string, T> | undefined, at: (name: string) => Path): Placed<T> {
  return Object.fromEntries(Object.entries(part ?? {}).map(([name, spec]) => [name, { spec, at: at(name) }]));
}

function readInputs(
  report: Report,
  id: string,
  spec: CircuitSpec,
  method: Method | undefined,
  places: Map<string, Path>,
  unitless: Set<string>,
): Input[] {
  const path: Path = ['circuits', id, 'given'];
  const given = spec.given ?? {};
  const symbols = method?.symbols ?? {};
  // A symbol that is missing because its name is misspelt is told of once, where it is misspelt.
  const misspelt = new Set<string>();
  if (method) {
    for (const name of Object.keys(given)) {
      if (Object.hasOwn(symbols, name) || usedInSpec(spec, name)) continue;
      report.problems.push(unknownKey(report.yaml, [...path, name], name, Object.keys(symbols)));
      for (const near of nearest(name, Object.keys(symbols), 1)) misspelt.add(near);
    }
  }
  const names = [...new Set([...Object.keys(symbols), ...Object.keys(given)])];
  return names.flatMap((symbol) => {
    const known = Object.hasOwn(symbols, symbol) ? symbols[symbol] : undefined;
    const typed: GivenSpec | undefined = Object.hasOwn(given, symbol) ? given[symbol] : undefined;
    const at: Path = [...path, symbol];
    places.set(`${id}.${symbol}`, typed ? at : ['circuits', id, 'method']);
    if (!typed && known?.usual === undefined && misspelt.has(symbol)) return [];
    if (!typed && known?.usual === undefined) {
      report.add(
        Object.keys(given).length ? at : ['circuits', id, 'given'],
        {
          code: 'missing-value',
          found: `no value for \`${symbol}\` (${known!.says})`,
          expected: `${withArticle(describeOf(known!.unit))}${known!.unit === '1' ? '' : ` in ${known!.unit}`}${likeIn(method, symbol)}`,
          hint: `Add \`${symbol}:\` under \`given\` of \`${id}\`; there is no safe value to assume.`,
        },
        'key',
      );
      return [];
    }
    const unit = known ? parseUnit(known.unit) : undefined;
    const textAt: Path = typed && isLong(report, at) ? [...at, 'is'] : at;
    const value = report.attempt(typed ? textAt : ['circuits', id, 'method'], () =>
      readValue(typed?.is ?? known!.usual!, unit, method?.example.given[symbol]),
    );
    if (!value) return [];
    if (value.kind === 'expression' && !unit) unitless.add(`${id}.${symbol}`);
    const refs = spec.refs && Object.hasOwn(spec.refs, symbol) ? spec.refs[symbol] : undefined;
    const says = typed?.says ?? known?.says;
    const hazard = typed?.hazard ?? known?.hazard;
    const from = typed ? typed.from : (known?.from ?? 'usual value of the method');
    const tracking = typed?.tracks ? report.attempt([...at, 'tracks'], () => readTracking(typed.tracks!)) : undefined;
    const input: Input = {
      id: `${id}.${symbol}`,
      symbol,
      unit: unitOf(value, unit),
      rating: known?.rating ?? false,
      usual: !typed,
      value: tracking && value.kind === 'part' ? { ...value, tracks: tracking } : value,
      ...(says ? { says } : {}),
      ...(known?.part ? { part: known.part } : {}),
      ...(refs ? { refs } : {}),
      ...(from ? { from } : {}),
      ...(hazard ? { hazard } : {}),
      ...(typed?.basis ? { basis: typed.basis } : typed ? {} : { basis: 'assumed' as const }),
    };
    return [input];
  });
}

const isLong = (report: Report, at: Path): boolean =>
  typeof at.reduce<unknown>(
    (v, step) => (v as Record<string, unknown> | undefined)?.[step as string],
    report.yaml.data,
  ) === 'object';

const describeOf = (unit: string): string => describeDimension(parseUnit(unit).dimension);

/** A symbol that the method does not know may still be needed by an equation that the spec adds to it. */
const usedInSpec = (spec: CircuitSpec, name: string): boolean =>
  [
    ...Object.values(spec.equations ?? {}).map((e) => e.is),
    ...Object.values(spec.checks ?? {}).map((c) => c.holds),
    ...Object.values(spec.order ?? {}).flatMap(({ rising }) => rising),
    ...Object.values(spec.given ?? {}).map((g) => g.is),
  ].some((text) => new RegExp(`(^|[^A-Za-z0-9_.])${name}($|[^A-Za-z0-9_])`).test(text));

/** `, such as `150 kohm``, where the worked example of the method gives the symbol. */
function likeIn(method: Method | undefined, symbol: string): string {
  const example = method?.example.given[symbol];
  return example ? `, such as \`${example}\`` : '';
}

function readValue(text: string, unit: Unit | undefined, example?: string): InputValue {
  if (!looksLikeQuantity(text)) return { kind: 'expression', tree: parseExpression(text), text };
  const quantity = parseQuantity(text);
  if (unit) requireDimension(quantity, unit, text, example);
  return { kind: standing(quantity), quantity };
}

const standing = (quantity: Quantity): 'condition' | 'part' | 'exact' =>
  quantity.form === 'range' ? 'condition' : quantity.form === 'number' ? 'exact' : 'part';

export function requireDimension(quantity: Quantity, unit: Unit, text: string, example?: string): void {
  if (same(quantity.unit.dimension, unit.dimension)) return;
  throw new TextError({
    code: 'wrong-unit',
    start: 0,
    end: text.length,
    found: `\`${text}\`, which is ${kindOf(quantity.unit.dimension)}`,
    expected: `${kindOf(unit.dimension)} such as \`${example ?? `1 ${unit.text}`.trim()}\``,
  });
}

const unitOf = (value: InputValue, known: Unit | undefined): Unit =>
  value.kind === 'expression' ? (known ?? coherentUnit(pureNumber)) : value.quantity.unit;

function readTracking(text: string): { of: string; within: Quantity } {
  const match = /^([\w.]+)\s+within\s+(?:±|\+\/-)?\s*(.+)$/.exec(text);
  if (!match) {
    throw new TextError({
      code: 'not-a-tracking',
      start: 0,
      end: text.length,
      found: `\`${text}\``,
      expected: 'the part that it follows and how closely, such as `R_top within 0.1 %`',
    });
  }
  return { of: match[1]!, within: parseQuantity(`1 ±${match[2]!}`) };
}

function readChecks(report: Report, id: string, checks: Placed<CheckSpec>, places: Map<string, Path>): DraftCheck[] {
  return Object.entries(checks).flatMap(([name, { spec, at }]) => {
    places.set(`${id}:${name}`, at);
    const statement = report.attempt(at.at(-1) === 'method' ? at : [...at, 'holds'], () => parseStatement(spec.holds));
    if (!statement) return [];
    const sense = statement.relation.startsWith('<') ? ('atMost' as const) : ('atLeast' as const);
    return [
      {
        id: `${id}.${name}`,
        name,
        text: spec.holds,
        left: statement.left,
        right: statement.right,
        sense,
        because: spec.because,
        ...(spec.source ? { source: spec.source } : {}),
      },
    ];
  });
}

function readFirmware(
  report: Report,
  id: string,
  constants: Placed<{ is: string; unit?: string | undefined; says?: string | undefined }>,
  places: Map<string, Path>,
  unitless: Set<string>,
): Result[] {
  return Object.entries(constants).flatMap(([name, { spec, at }]) => {
    places.set(`${id}.${name}`, at);
    const tree = report.attempt(at, () => parseExpression(spec.is));
    const unit = report.attempt(at, () => parseUnit(spec.unit ?? '1'));
    if (!tree || !unit) return [];
    if (!spec.unit) unitless.add(`${id}.${name}`);
    return [
      {
        id: `${id}.${name}`,
        symbol: name,
        says: spec.says ?? '',
        unit,
        tree,
        text: spec.is,
        heat: false,
        stored: false,
      },
    ];
  });
}

/** A test point must read a result of its circuit, and its stimulus must stand in the place of something that goes in. */
function readTestPoints(
  report: Report,
  id: string,
  points: Placed<TestPointSpec>,
  results: readonly Result[],
  readable: readonly string[],
  stimuli: ReadonlySet<string>,
): TestPoint[] {
  return Object.entries(points).map(([name, { spec, at }]) => {
    const inMethod = at.at(-1) === 'method';
    if (!readable.includes(spec.read)) {
      report.add(inMethod ? at : [...at, 'read'], {
        code: 'unknown-name',
        found: `\`${spec.read}\``,
        expected: 'a result of this circuit',
        ...meant(spec.read, readable),
      });
    }
    const when = new Map<string, Quantity>();
    for (const [symbol, text] of Object.entries(spec.when ?? {})) {
      const place = inMethod ? at : [...at, 'when', symbol];
      if (!stimuli.has(symbol))
        report.add(
          place,
          {
            code: 'unknown-name',
            found: `\`${symbol}\``,
            expected: 'a symbol of this circuit or a condition of the board',
            ...meant(symbol, stimuli),
          },
          'key',
        );
      const quantity = report.attempt(place, () => parseQuantity(text));
      if (quantity) when.set(symbol, quantity);
    }
    const uncertainty =
      spec.uncertainty === undefined
        ? undefined
        : report.attempt(inMethod ? at : [...at, 'uncertainty'], () =>
            readUncertainty(
              spec.uncertainty!,
              results.find(({ symbol }) => symbol === spec.read),
            ),
          );
    return {
      name,
      reads: `${id}.${spec.read}`,
      when,
      ...(spec.says ? { says: spec.says } : {}),
      ...(spec.step ? { step: spec.step } : {}),
      ...(uncertainty ? { uncertainty } : {}),
    };
  });
}

/** A plain number of the unit of what is read (kelvin for a temperature), or a share of it. */
function readUncertainty(text: string, result: Result | undefined): Quantity {
  const quantity = parseQuantity(text);
  const { dimension } = quantity.unit;
  const share = isPure(dimension) && !(result && isPure(result.unit.dimension));
  const fits = share ? result?.unit.offset === 0 : !result || same(dimension, result.unit.dimension);
  if (quantity.form === 'number' && quantity.typ > 0 && quantity.unit.offset === 0 && fits) return quantity;
  throw new TextError({
    code: 'not-an-uncertainty',
    start: 0,
    end: text.length,
    found: `\`${text}\``,
    expected: `half of an interval, of ${describeDimension(result?.unit.dimension ?? dimension)}${result?.unit.offset ? ' in kelvin' : ', or a share such as `0.5 %`'}`,
  });
}

function readTemperature(
  report: Report,
  path: Path,
  spec: CircuitSpec,
  inputs: readonly Input[],
  conditions: ReadonlySet<string>,
  places: Map<string, Path>,
): Tree | undefined {
  const id = String(path[1]);
  if (spec.temperature !== undefined) {
    places.set(`${id}@temperature`, [...path, 'temperature']);
    return report.attempt([...path, 'temperature'], () => parseExpression(spec.temperature!));
  }
  const drifting = inputs.find(
    (input) => input.value.kind === 'part' && (input.value.quantity.drift ?? input.value.quantity.driftAbsolute),
  );
  if (!drifting) return undefined;
  places.set(`${id}@temperature`, path);
  if (conditions.has('T_amb')) return parseExpression('T_amb');
  report.add(['circuits', id, 'given', drifting.symbol], {
    code: 'no-temperature',
    found: `\`${drifting.symbol}\` drifts with temperature, but the board has no condition \`T_amb\``,
    expected: 'an ambient range to endure',
    hint: `Add \`T_amb: -10 degC to 45 degC typ 25 degC\` under \`conditions\`, or \`temperature:\` to \`${id}\`.`,
  });
  return undefined;
}

/** A symbol is either given or found. */
function reportClashes(report: Report, id: string, given: ReadonlySet<string>, found: readonly string[]): void {
  for (const symbol of found) {
    if (!given.has(symbol)) continue;
    report.add(
      ['circuits', id, 'given', symbol],
      {
        code: 'given-and-found',
        found: `\`${symbol}\` both given and found by an equation`,
        expected: 'one of the two',
        hint: 'Rename one of them, or leave out what is given.',
      },
      'key',
    );
  }
}

/** A designator belongs to something that is given. */
function reportRefs(report: Report, id: string, spec: CircuitSpec, method: Method | undefined): void {
  const known = [...new Set([...Object.keys(method?.symbols ?? {}), ...Object.keys(spec.given ?? {})])];
  for (const symbol of Object.keys(spec.refs ?? {})) {
    if (known.includes(symbol)) continue;
    report.add(
      ['circuits', id, 'refs', symbol],
      {
        code: 'unknown-name',
        found: `a designator for \`${symbol}\``,
        expected: known.length
          ? `a symbol that \`${id}\` is given: ${known.map((name) => `\`${name}\``).join(', ')}`
          : `a symbol under \`given\` of \`${id}\``,
        ...meant(symbol, known),
      },
      'key',
    );
  }
}

interface PlotNames {
  readonly given: ReadonlySet<string>;
  readonly found: readonly string[];
  readonly conditions: ReadonlySet<string>;
  readonly checks: readonly string[];
}

/** A plot draws a result over something that goes in, with the limit of a check. */
function reportPlots(report: Report, id: string, spec: CircuitSpec, names: PlotNames): void {
  const sides = [
    { key: 'of', known: names.found, expected: 'a result of this circuit, such as `V_out`' },
    {
      key: 'over',
      known: [...names.given, ...names.conditions],
      expected: 'something that is given here, or a condition of the board',
    },
    { key: 'limit', known: names.checks, expected: 'a check of this circuit' },
  ] as const;
  for (const [i, plot] of (spec.plots ?? []).entries()) {
    for (const { key, known, expected } of sides) {
      const name = plot[key];
      // Another circuit's symbol is looked for where all circuits are known.
      if (name === undefined || known.includes(name) || (key === 'over' && name.includes('.'))) continue;
      report.add(['circuits', id, 'plots', i, key], {
        code: key === 'limit' ? 'unknown-check' : 'unknown-name',
        found: `\`${name}\``,
        expected,
        ...meant(name, known),
      });
    }
  }
}
