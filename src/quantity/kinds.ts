import type { Dimension } from './dimension.ts';

/** A kind of quantity: its dimension, and the unit it is usually given in. */
export interface Kind {
  readonly of: Dimension;
  /** As `parseUnit` reads it. */
  readonly unit: string;
}

const kind = (unit: string, ...of: Dimension): Kind => ({ of, unit });

/**
 * What a board's quantities are called, with exponents of m kg s A K mol cd.
 * Units and their expressions in base units: SI Brochure 9th ed., tables 2, 4, 5 and 6. The others are products of those.
 * Two kinds that share a dimension share a row: torque is a force times a length, as energy is.
 */
export const kinds = {
  'pure number': kind('', 0, 0, 0, 0, 0, 0, 0),
  length: kind('m', 1, 0, 0, 0, 0, 0, 0),
  mass: kind('kg', 0, 1, 0, 0, 0, 0, 0),
  time: kind('s', 0, 0, 1, 0, 0, 0, 0),
  current: kind('A', 0, 0, 0, 1, 0, 0, 0),
  temperature: kind('K', 0, 0, 0, 0, 1, 0, 0),
  'amount of substance': kind('mol', 0, 0, 0, 0, 0, 1, 0),
  'luminous intensity': kind('cd', 0, 0, 0, 0, 0, 0, 1),

  voltage: kind('V', 2, 1, -3, -1, 0, 0, 0),
  resistance: kind('Ω', 2, 1, -3, -2, 0, 0, 0),
  conductance: kind('S', -2, -1, 3, 2, 0, 0, 0),
  charge: kind('C', 0, 0, 1, 1, 0, 0, 0),
  capacitance: kind('F', -2, -1, 4, 2, 0, 0, 0),
  inductance: kind('H', 2, 1, -2, -2, 0, 0, 0),
  'magnetic flux': kind('Wb', 2, 1, -2, -1, 0, 0, 0),
  'magnetic flux density': kind('T', 0, 1, -2, -1, 0, 0, 0),
  power: kind('W', 2, 1, -3, 0, 0, 0, 0),
  'energy or torque': kind('J', 2, 1, -2, 0, 0, 0, 0),
  force: kind('N', 1, 1, -2, 0, 0, 0, 0),
  pressure: kind('Pa', -1, 1, -2, 0, 0, 0, 0),
  'frequency or angular speed': kind('Hz', 0, 0, -1, 0, 0, 0, 0),

  area: kind('m²', 2, 0, 0, 0, 0, 0, 0),
  volume: kind('m³', 3, 0, 0, 0, 0, 0, 0),
  density: kind('kg/m³', -3, 1, 0, 0, 0, 0, 0),
  speed: kind('m/s', 1, 0, -1, 0, 0, 0, 0),
  acceleration: kind('m/s²', 1, 0, -2, 0, 0, 0, 0),
  'moment of inertia': kind('kg·m²', 2, 1, 0, 0, 0, 0, 0),

  'thermal resistance': kind('K/W', -2, -1, 3, 0, 1, 0, 0),
  'thermal conductance': kind('W/K', 2, 1, -3, 0, -1, 0, 0),
  'thermal conductivity': kind('W/(m·K)', 1, 1, -3, 0, -1, 0, 0),
  'heat capacity': kind('J/K', 2, 1, -2, 0, -1, 0, 0),
  'specific heat': kind('J/(kg·K)', 2, 0, -2, 0, -1, 0, 0),
  'heat flux': kind('W/m²', 0, 1, -3, 0, 0, 0, 0),
  'temperature coefficient': kind('1/K', 0, 0, 0, 0, -1, 0, 0),
  'voltage drift': kind('V/K', 2, 1, -3, -1, -1, 0, 0),
  'current drift': kind('A/K', 0, 0, 0, 1, -1, 0, 0),

  'voltage slope': kind('V/s', 2, 1, -4, -1, 0, 0, 0),
  'current slope': kind('A/s', 0, 0, -1, 1, 0, 0, 0),
  'current density': kind('A/m²', -2, 0, 0, 1, 0, 0, 0),
  'electric field': kind('V/m', 1, 1, -3, -1, 0, 0, 0),
  'magnetic field': kind('A/m', -1, 0, 0, 1, 0, 0, 0),
  resistivity: kind('Ω·m', 3, 1, -3, -2, 0, 0, 0),
  'resistance per length': kind('Ω/m', 1, 1, -3, -2, 0, 0, 0),
  'speed constant': kind('1/(V·s)', -2, -1, 2, 1, 0, 0, 0),
  'squared current over time': kind('A²·s', 0, 0, 1, 2, 0, 0, 0),
  'squared current': kind('A²', 0, 0, 0, 2, 0, 0, 0),
  'squared voltage': kind('V²', 4, 2, -6, -2, 0, 0, 0),
  'voltage noise density': kind('V/√Hz', 2, 1, -2.5, -1, 0, 0, 0),
  'current noise density': kind('A/√Hz', 0, 0, 0.5, 1, 0, 0, 0),
} as const satisfies Record<string, Kind>;

export type KindName = keyof typeof kinds;
