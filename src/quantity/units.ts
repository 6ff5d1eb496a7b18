/** Units: reading them, and naming dimensions by them. */
export { coherentUnit, describeDimension } from './coherent-unit.ts';
export { pureUnit } from './compose-unit.ts';
export { unitNames } from './known-units.ts';
export { parseUnit } from './parse-unit.ts';
