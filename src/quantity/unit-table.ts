import type { KindName } from './kinds.ts';

/** SI prefixes as powers of ten. Source: SI Brochure 9th ed., table 7; `u` is the usual ASCII for µ. */
export const prefixTable = [
  { text: 'f', typed: ['f'], name: 'femto', power: -15 },
  { text: 'p', typed: ['p'], name: 'pico', power: -12 },
  { text: 'n', typed: ['n'], name: 'nano', power: -9 },
  { text: 'µ', typed: ['µ', 'u'], name: 'micro', power: -6 },
  { text: 'm', typed: ['m'], name: 'milli', power: -3 },
  { text: 'c', typed: ['c'], name: 'centi', power: -2 },
  { text: 'k', typed: ['k'], name: 'kilo', power: 3 },
  { text: 'M', typed: ['M'], name: 'mega', power: 6 },
  { text: 'G', typed: ['G'], name: 'giga', power: 9 },
  { text: 'T', typed: ['T'], name: 'tera', power: 12 },
] as const;

const base = 'SI Brochure 9th ed., table 2';
const derived = 'SI Brochure 9th ed., table 4';
const coherent = 'SI Brochure 9th ed., table 6';
const beside = 'SI Brochure 9th ed., table 8';
const sp811 = 'NIST SP 811 (2008), app. B.8';
const share = 'SI Brochure 9th ed., 5.4.7';
const iec13 = 'IEC 80000-13:2008';
const trade = 'common practice, no source';

/** One unit: what is printed, what may be typed beside it, its kind, its size in SI base units, the prefixes it takes. */
export type UnitRow = readonly [
  text: string,
  typed: readonly string[],
  of: KindName,
  scale: number,
  prefixes: string,
  /** Written out, for a hint to whoever types that. */
  names: string,
  source: string,
];

/**
 * Every unit that is read. A radian is 1 and a turn 2π, so rpm is an angular speed: 60 rpm is 2π/s, not 1 Hz.
 * `%`, `ppm`, `dB`, `count`, `bit` and `LSB` are pure numbers; a value in dB stays the number of decibels.
 */
export const unitTable: readonly UnitRow[] = [
  ['m', [], 'length', 1, 'npµmck', 'metre meter', base],
  ['g', [], 'mass', 1e-3, 'nµmk', 'gram gramme', base],
  ['s', [], 'time', 1, 'fpnµm', 'second sec', base],
  ['A', [], 'current', 1, 'fpnµmkM', 'ampere amp', base],
  ['K', [], 'temperature', 1, 'nµm', 'kelvin', base],
  ['mol', [], 'amount of substance', 1, 'nµmk', 'mole', base],
  ['cd', [], 'luminous intensity', 1, 'µmk', 'candela', base],

  ['Hz', [], 'frequency or angular speed', 1, 'µmkMGT', 'hertz', derived],
  ['N', [], 'force', 1, 'nµmkM', 'newton', derived],
  ['Pa', [], 'pressure', 1, 'µmkMG', 'pascal', derived],
  ['J', [], 'energy or torque', 1, 'fpnµmkMG', 'joule', derived],
  ['W', [], 'power', 1, 'fpnµmkMG', 'watt', derived],
  ['C', [], 'charge', 1, 'fpnµmk', 'coulomb', derived],
  ['V', [], 'voltage', 1, 'fpnµmkM', 'volt', derived],
  ['F', [], 'capacitance', 1, 'fpnµm', 'farad', derived],
  ['Ω', ['ohm', 'Ohm'], 'resistance', 1, 'nµmkMGT', 'ohms R', derived],
  ['S', [], 'conductance', 1, 'pnµmk', 'siemens mho', derived],
  ['Wb', [], 'magnetic flux', 1, 'nµm', 'weber', derived],
  ['T', [], 'magnetic flux density', 1, 'nµm', 'tesla', derived],
  ['H', [], 'inductance', 1, 'pnµm', 'henry', derived],
  ['°C', ['degC', '℃'], 'temperature', 1, '', 'celsius centigrade', derived],
  ['N·m', ['Nm'], 'energy or torque', 1, 'nµmkM', '', coherent],
  ['VA', [], 'power', 1, 'µmkM', 'voltampere', trade],

  ['min', [], 'time', 60, '', 'minute', beside],
  ['h', [], 'time', 3600, '', 'hour hr', beside],
  ['d', ['day'], 'time', 86400, '', 'days', beside],
  ['Ah', [], 'charge', 3600, 'nµmk', 'amperehour amphour', sp811],
  ['Wh', [], 'energy or torque', 3600, 'µmkMG', 'watthour', sp811],

  ['rad', [], 'pure number', 1, 'µm', 'radian', derived],
  ['°', ['deg'], 'pure number', Math.PI / 180, '', 'degree', beside],
  ['rev', ['turn'], 'pure number', 2 * Math.PI, '', 'revolution', sp811],
  ['rpm', [], 'frequency or angular speed', Math.PI / 30, '', 'RPM', sp811],

  ['in', ['inch'], 'length', 0.0254, '', 'inches', sp811],
  ['mil', [], 'length', 2.54e-5, '', 'thou', sp811],
  ['cmil', [], 'area', (Math.PI / 4) * 2.54e-5 ** 2, 'k', '', sp811],

  ['%', [], 'pure number', 0.01, '', 'percent pct', share],
  ['ppm', [], 'pure number', 1e-6, '', '', share],
  ['dB', [], 'pure number', 1, '', 'decibel', beside],
  ['bit', [], 'pure number', 1, 'kMG', '', iec13],
  ['count', [], 'pure number', 1, '', '', trade],
  ['LSB', ['lsb'], 'pure number', 1, '', '', trade],
  ['Bd', ['baud'], 'frequency or angular speed', 1, 'kM', '', iec13],
];

/** What is added after scaling: 0 °C is 273.15 K. Source: SI Brochure 9th ed., 2.3.1, kelvin. */
export const offsets: Readonly<Record<string, number>> = { '°C': 273.15 };
