import { parseExpression, parseStatement } from '../expression/parse.ts';
import { dimensionOf } from '../expression/readings/dimension.ts';
import type { Tree } from '../expression/tree.ts';
import { type Dimension, same } from '../quantity/dimension.ts';
import { looksLikeQuantity } from '../quantity/looks-like-quantity.ts';
import { parseQuantity } from '../quantity/parse-quantity.ts';
import { TextError } from '../quantity/text-problem.ts';
import { describeDimension, parseUnit } from '../quantity/units.ts';
import { readDrawing } from './drawing/read-drawing.ts';
import { type Method, methodSchema, type Policy, policySchema } from './method-schema.ts';
import { mentioned } from './names.ts';
import type { Problem } from './problem.ts';
import { requireDimension } from './read-circuit.ts';
import { checkPath } from './read-path.ts';
import { Report } from './report.ts';
import { meant, schemaProblems } from './schema-problems.ts';
import { type Path, readYaml } from './yaml-file.ts';

/**
 * A method file as a page of the handbook, or every problem with it. Names, units and dimensions of all equations are
 * settled here, before any board uses it.
 * @param id  file name without its ending: `voltage-divider`
 * @param place  folder that says where on the board it sits: `sensing`
 */
export function readMethod(
  text: string,
  file: string,
  id: string,
  place: string,
): { method?: Method; problems: readonly Problem[] } {
  const yaml = readYaml(text, file);
  if (yaml.problems.length) return { problems: yaml.problems };
  const parsed = methodSchema.safeParse(yaml.data);
  if (!parsed.success)
    return { problems: schemaProblems(yaml, parsed.error.issues, () => Object.keys(methodSchema.shape)) };
  const method: Method = { ...parsed.data, id, place };
  const report = new Report(yaml);
  new MethodReader(report, method).read();
  return report.problems.length ? { problems: report.problems } : { method, problems: [] };
}

class MethodReader {
  readonly #report: Report;
  readonly #method: Method;
  readonly #dimensions = new Map<string, Dimension>();

  constructor(report: Report, method: Method) {
    this.#report = report;
    this.#method = method;
  }

  read(): void {
    const { symbols, equations, checks, valid, firmware, sources, example, drawing, path } = this.#method;
    for (const [name, { unit, usual }] of Object.entries(symbols)) {
      const read = this.#report.attempt(['symbols', name, 'unit'], () => parseUnit(unit));
      if (read) this.#dimensions.set(name, read.dimension);
      if (read && usual !== undefined && looksLikeQuantity(usual))
        this.#report.attempt(['symbols', name, 'usual'], () => requireDimension(parseQuantity(usual), read, usual));
    }
    for (const [name, { unit }] of Object.entries(equations ?? {})) {
      if (Object.hasOwn(symbols, name))
        this.#report.add(
          ['equations', name],
          {
            code: 'given-and-found',
            found: `\`${name}\` both a symbol and found by an equation`,
            expected: 'one of the two',
          },
          'key',
        );
      const read = this.#report.attempt(['equations', name, 'unit'], () => parseUnit(unit));
      if (read) this.#dimensions.set(name, read.dimension);
    }
    for (const [name, { unit, usual }] of Object.entries(symbols)) {
      // A usual value may follow from a factor of the policy, another symbol or a result: a line at a temperature found here.
      if (usual !== undefined && !looksLikeQuantity(usual))
        this.#equation(['symbols', name, 'usual'], usual, this.#dimensions.get(name), unit);
    }
    for (const [name, { is, unit, source }] of Object.entries(equations ?? {})) {
      this.#equation(['equations', name, 'is'], is, this.#dimensions.get(name), unit);
      if (source === undefined)
        this.#report.add(
          ['equations', name],
          { code: 'missing-key', found: `no \`source\` for \`${name}\``, expected: 'the key of one of `sources`' },
          'key',
        );
      else if (!Object.hasOwn(sources, source))
        this.#report.add(['equations', name, 'source'], {
          code: 'unknown-source',
          found: `\`${source}\``,
          expected: 'a key of `sources`',
          ...meant(source, Object.keys(sources)),
        });
    }
    for (const [part, all] of [
      ['checks', checks],
      ['valid', valid],
    ] as const) {
      for (const [name, { holds }] of Object.entries(all ?? {})) this.#check([part, name, 'holds'], holds);
    }
    for (const [name, constant] of Object.entries(firmware ?? {}))
      this.#equation(
        ['firmware', name],
        constant.is,
        constant.unit === undefined ? undefined : parseUnit(constant.unit).dimension,
        constant.unit ?? '',
      );
    if (path) checkPath(this.#report, ['path'], path, [...this.#dimensions.keys()]);
    if (drawing) readDrawing(this.#report, ['drawing'], drawing, [...this.#dimensions.keys()]);
    this.#proposals();
    this.#example(example);
  }

  #lookup = (name: string): Dimension | undefined => {
    // Factors of the policy are ratios, but for the junction's limit and distance.
    if (name.startsWith('derating.')) return parseUnit(/junction_(limit|below_max)$/.test(name) ? 'K' : '1').dimension;
    return this.#dimensions.get(name);
  };

  #equation(path: Path, text: string, wanted: Dimension | undefined, unit: string): void {
    this.#report.attempt(path, () => {
      const tree = parseExpression(text);
      this.#names(tree);
      const found = dimensionOf(tree, this.#lookup);
      if (found === 'truth' || (wanted && !same(found, wanted))) {
        throw new TextError({
          code: 'units-disagree',
          ...tree.at,
          found: `an expression of ${found === 'truth' ? 'truth' : describeDimension(found)}`,
          expected: `one of ${wanted ? describeDimension(wanted) : 'some quantity'}, since the unit is ${unit}`,
        });
      }
    });
  }

  #check(path: Path, text: string): void {
    this.#report.attempt(path, () => {
      const { left, right } = parseStatement(text);
      for (const side of [left, right]) this.#names(side);
      const [a, b] = [dimensionOf(left, this.#lookup), dimensionOf(right, this.#lookup)];
      if (a !== 'truth' && b !== 'truth' && same(a, b)) return;
      const say = (d: Dimension | 'truth') => (d === 'truth' ? 'a comparison' : describeDimension(d));
      throw new TextError({
        code: 'units-disagree',
        start: left.at.start,
        end: right.at.end,
        found: `${say(a)} on the left and ${say(b)} on the right`,
        expected: 'the same on both sides',
      });
    });
  }

  #names(tree: Tree): void {
    for (const name of mentioned(tree)) {
      if (this.#lookup(name)) continue;
      throw new TextError({
        code: 'unknown-name',
        ...tree.at,
        found: `the name \`${name}\``,
        expected: 'a symbol of this method or `derating.factor`',
        ...meant(name, this.#dimensions.keys()),
      });
    }
  }

  #proposals(): void {
    for (const [name, { choose, of, target }] of Object.entries(this.#method.proposes ?? {})) {
      const wrong = [
        ...choose.filter((symbol) => !Object.hasOwn(this.#method.symbols, symbol)),
        ...(Object.hasOwn(this.#method.equations ?? {}, of) ? [] : [of]),
      ];
      for (const symbol of wrong)
        this.#report.add(['proposes', name], {
          code: 'unknown-name',
          found: `the name \`${symbol}\``,
          expected: 'symbols to choose and a result that they set',
          ...meant(symbol, this.#dimensions.keys()),
        });
      this.#equation(
        ['proposes', name, 'target'],
        target,
        this.#dimensions.get(of),
        this.#method.equations?.[of]?.unit ?? '',
      );
    }
  }

  #example({ given, gives }: Method['example']): void {
    const { symbols } = this.#method;
    for (const name of Object.keys(given)) {
      if (!Object.hasOwn(symbols, name))
        this.#report.add(
          ['example', 'given', name],
          {
            code: 'unknown-name',
            found: `\`${name}\``,
            expected: 'a symbol of this method',
            ...meant(name, Object.keys(symbols)),
          },
          'key',
        );
    }
    for (const [name, { usual }] of Object.entries(symbols)) {
      if (usual === undefined && !Object.hasOwn(given, name))
        this.#report.add(
          ['example', 'given'],
          { code: 'missing-value', found: `no value for \`${name}\``, expected: 'every symbol without a usual value' },
          'key',
        );
    }
    for (const name of Object.keys(gives)) {
      if (!this.#dimensions.has(name))
        this.#report.add(
          ['example', 'gives', name],
          { code: 'unknown-name', found: `\`${name}\``, expected: 'a result of this method' },
          'key',
        );
    }
  }
}

/** A derating policy, or every problem with its file. */
export function readPolicy(text: string, file: string, id: string): { policy?: Policy; problems: readonly Problem[] } {
  const yaml = readYaml(text, file);
  if (yaml.problems.length) return { problems: yaml.problems };
  const parsed = policySchema.safeParse(yaml.data);
  if (!parsed.success)
    return { problems: schemaProblems(yaml, parsed.error.issues, () => Object.keys(policySchema.shape)) };
  const report = new Report(yaml);
  for (const [name, { is }] of Object.entries(parsed.data.factors))
    report.attempt(['factors', name, 'is'], () => parseQuantity(is));
  return report.problems.length ? { problems: report.problems } : { policy: { ...parsed.data, id }, problems: [] };
}
