import { all, create, type Unit as MathjsUnit } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { type Dimension, multiplied, raised, same } from '../../src/quantity/dimension.ts';
import { type KindName, kinds } from '../../src/quantity/kinds.ts';
import { knownUnits } from '../../src/quantity/known-units.ts';
import { unitTable } from '../../src/quantity/unit-table.ts';
import { coherentUnit, describeDimension, parseUnit, unitNames } from '../../src/quantity/units.ts';

const mathjs = create(all!);

describe('against mathjs', () => {
  /** Spelled as mathjs knows it, or undefined where it does not. */
  const abroad = (name: string): string | undefined => {
    const spelled = name.replace('µ', 'u').replace('Ω', 'ohm').replace('Ohm', 'ohm').replace('°C', 'degC');
    const known = (mathjs.Unit as unknown as { isValuelessUnit(name: string): boolean }).isValuelessUnit(spelled);
    return known ? spelled : undefined;
  };
  const shared = [...knownUnits].flatMap(([name, unit]) => {
    const theirs = abroad(name);
    return theirs ? [{ name, unit, theirs: mathjs.unit(1, theirs) }] : [];
  });

  test('most of the table is known there', () => {
    expect(shared.length).toBeGreaterThan(180);
    const strangers = [...unitNames()].filter((name) => !abroad(name));
    const ownOnly = /^(µ|u|n|m|k|M)?(VA|Ah|Nm)$|^(µ|u|m)rad$|^(k|M|G)?(bit|Bd|baud)$|^k?cmil$/;
    const rest = ['°', '℃', '%', 'ppm', 'dB', 'count', 'LSB', 'lsb', 'rev', 'turn', 'rpm', 'd'];
    expect(strangers.filter((name) => !ownOnly.test(name) && !rest.includes(name))).toEqual([]);
  });

  test.each(shared)('$name has the same size and dimension', ({ unit, theirs }) => {
    const [kg, m, s, A, K, cd, mol] = (theirs as MathjsUnit & { dimensions: number[] }).dimensions;
    expect(unit.dimension).toEqual([m, kg, s, A, K, mol, cd]);
    const si = unit.offset === 0 ? (theirs as MathjsUnit & { value: number }).value : theirs.toNumber('K');
    expect(unit.scale + unit.offset).toBeCloseTo(si, 12 - Math.ceil(Math.log10(si)));
  });
});

test('no spelling stands for two units', () => {
  const spellings = unitTable.flatMap(([text, typed, , , prefixes]) =>
    ['', ...prefixes].flatMap((prefix) => [text, ...typed].map((name) => prefix + name)),
  );
  expect(spellings.filter((name, i) => spellings.indexOf(name) !== i)).toEqual([]);
  // µ and u are one prefix, so the table of spellings is larger than this list by the u's alone.
  const micro = spellings.filter((name) => name.startsWith('µ')).length;
  expect(knownUnits.size).toBe(spellings.length + micro);
});

test.each([
  ['min', 'min', 60],
  ['m', 'm', 1],
  ['mm', 'mm', 1e-3],
  ['h', 'h', 3600],
  ['d', 'd', 86400],
  ['T', 'T', 1],
  ['mT', 'mT', 1e-3],
  ['Pa', 'Pa', 1],
  ['cd', 'cd', 1],
  ['mol', 'mol', 1],
  ['mil', 'mil', 2.54e-5],
  ['in', 'in', 0.0254],
  ['kg', 'kg', 1],
  ['mOhm', 'mΩ', 1e-3],
  ['Mohm', 'MΩ', 1e6],
  ['k\u2126', 'kΩ', 1000],
  ['k\u03a9', 'kΩ', 1000],
  ['uF', 'µF', 1e-6],
  ['\u00b5F', 'µF', 1e-6],
  ['\u03bcF', 'µF', 1e-6],
  ['K/W', 'K/W', 1],
  ['degC/W', '°C/W', 1],
  ['V/us', 'V/µs', 1e6],
  ['V/ns', 'V/ns', 1e9],
  ['A/mm^2', 'A/mm²', 1e6],
  ['A^2 s', 'A²·s', 1],
  ['A²s', 'A²·s', 1],
  ['ohm m', 'Ω·m', 1],
  ['nohm m', 'nΩ·m', 1e-9],
  ['uV/K', 'µV/K', 1e-6],
  ['V·s', 'V·s', 1],
  ['V*s', 'V·s', 1],
  ['m/s²', 'm/s²', 1],
  ['m/s/s', 'm/s²', 1],
  ['s^-1', '1/s', 1],
  ['nV/Hz^0.5', 'nV/√Hz', 1e-9],
  ['nV/sqrt(Hz)', 'nV/√Hz', 1e-9],
  ['1/K', '1/K', 1],
  ['W/(m K)', 'W/(m·K)', 1],
  ['mm2', 'mm²', 1e-6],
  ['mil^2', 'mil²', 6.4516e-10],
  ['N m', 'N·m', 1],
  ['mNm', 'mN·m', 1e-3],
  ['rpm/V', 'rpm/V', Math.PI / 30],
  ['ppm/K', 'ppm/K', 1e-6],
  ['', '', 1],
  ['1', '', 1],
])('%j prints as %j', (typed, text, scale) => {
  expect(parseUnit(typed)).toMatchObject({ text, scale });
});

test('a printed unit reads back as itself', () => {
  const compounds = [
    'K/W',
    'V/us',
    'A^2 s',
    'W/(m K)',
    'nV/Hz^0.5',
    'kg m^2/(s^3 A)',
    '1/(V s)',
    'Nm^2',
    'Hz^1.5',
    '%/K',
  ];
  for (const unit of [...knownUnits.values(), ...compounds.map(parseUnit)]) expect(parseUnit(unit.text)).toEqual(unit);
});

test('only degrees Celsius have a zero of their own, and only alone', () => {
  expect([...knownUnits.values()].filter(({ offset }) => offset !== 0).map(({ text }) => text)).toEqual(
    Array.from({ length: 3 }, () => '°C'),
  );
  expect(parseUnit('degC').offset).toBe(273.15);
  expect(parseUnit('K/degC').offset).toBe(0);
});

test('every kind is called by its name, and its unit is coherent', () => {
  for (const [name, { of, unit }] of Object.entries(kinds)) {
    expect(describeDimension(of)).toBe(name);
    expect(coherentUnit(of)).toMatchObject({ text: unit, scale: 1, offset: 0 });
    expect(same(parseUnit(unit).dimension, of)).toBe(true);
  }
});

test('a dimension without a name is given in base units', () => {
  expect(describeDimension([2, 1, -3, 0, 1, 0, 0])).toBe('kg·m²·K/s³');
  expect(describeDimension([0, 0, -0.5, 0, 0, 0, 0])).toBe('1/√s');
  expect(coherentUnit(raised([0, 0, 1, 0, 0, 0, 0], 4)).text).toBe('s⁴');
});

const product = (...factors: readonly (readonly [KindName, number])[]): Dimension =>
  factors.reduce((d, [name, power]) => multiplied(d, raised(kinds[name].of, power)), kinds['pure number'].of);

test.each<[KindName, Dimension]>([
  ['voltage', product(['current', 1], ['resistance', 1])],
  ['capacitance', product(['charge', 1], ['voltage', -1])],
  ['power', product(['voltage', 1], ['current', 1])],
  ['energy or torque', product(['power', 1], ['time', 1])],
  ['energy or torque', product(['force', 1], ['length', 1])],
  ['resistance', raised(product(['inductance', 1], ['capacitance', -1]), 0.5)],
  ['magnetic flux', product(['voltage', 1], ['time', 1])],
  ['magnetic flux density', product(['magnetic flux', 1], ['area', -1])],
  ['conductance', product(['resistance', -1])],
  ['pressure', product(['force', 1], ['area', -1])],
  ['time', product(['resistance', 1], ['capacitance', 1])],
])('%s follows from its definition', (name, dimension) => expect(describeDimension(dimension)).toBe(name));
