import { describe, expect, test } from 'vitest';
import { parseQuantity } from '../../src/quantity/parse-quantity.ts';
import { loadHandbook } from '../../src/site/handbook-files.ts';

const { policies } = loadHandbook();

function factor(policy: string, name: string): number {
  const found = policies.get(policy)?.factors[name];
  if (!found) throw new Error(`The policy ${policy} has no factor ${name}`);
  return parseQuantity(found.is).typ;
}

/** Rows: factor, rating, and what the policy allows of it. */
const rows = [
  // DER-02. ECSS-Q-ST-30-11C Rev.2, 6.11, table 6-10: 60 A and 300 V contacts (read in a transcription).
  ['DER-02', 'ecss', 'connector_current', 60, 30],
  ['DER-02', 'ecss', 'connector_voltage', 300, 225],
  // DER-01. ECSS-Q-ST-30-11C Rev.2, 6.17, table 6-17: cermet fuse of 10 A up to 85 °C (read in a transcription).
  ['DER-01', 'ecss', 'fuse_current', 10, 6.5],
  // DER-04. ECSS-Q-ST-30-11C Rev.2, transistor and diode tables (from memory).
  ['DER-04', 'ecss', 'mosfet_drain_voltage', 100, 80],
  ['DER-04', 'ecss', 'mosfet_gate_voltage', 20, 15],
  ['DER-04', 'ecss', 'mosfet_current', 200, 150],
  ['DER-04', 'ecss', 'mosfet_power', 300, 195],
  ['DER-04', 'ecss', 'diode_reverse_voltage', 100, 75],
  ['DER-04', 'ecss', 'diode_current', 10, 7.5],
  // DER-05. ECSS-Q-ST-30-11C Rev.2, resistor and capacitor tables (from memory).
  ['DER-05', 'ecss', 'resistor_voltage', 200, 160],
  ['DER-05', 'ecss', 'resistor_power', 0.5, 0.25],
  ['DER-05', 'ecss', 'capacitor_ceramic_voltage', 100, 60],
  // DER-06. NASA EEE-INST-002, 2003 with 2008 addendum, film chips at 70 °C (read).
  ['DER-06', 'nasa', 'resistor_power', 0.1, 0.06],
  ['DER-06', 'nasa', 'resistor_voltage', 50, 40],
] as const;

describe('derating policies', () => {
  test.each(rows)('%s: %s, %s of %d allows %d', (_, policy, name, rating, allowed) => {
    expect(factor(policy, name) * rating).toBeCloseTo(allowed, 9);
  });

  // DER-04: a maker's 175 °C. ECSS takes the lower of 110 °C and 40 K less; EEE-INST-002 takes 80 % in °C (from memory).
  test.each([
    ['ecss', 175, 110],
    ['ecss', 125, 85],
    ['nasa', 175, 140],
  ])('%s allows a junction rated %d °C to reach %d °C', (policy, rated, allowed) => {
    const inCelsius = factor(policy, 'junction_limit') - 273.15;
    const ratio = factor(policy, 'junction_ratio');
    expect(Math.min(inCelsius, rated - factor(policy, 'junction_below_max'), ratio * rated)).toBeCloseTo(allowed, 9);
  });

  test('every policy has the same factors, so that a method can name any of them', () => {
    const [first, ...others] = [...policies.values()].map(({ factors }) => Object.keys(factors).sort());
    expect(first?.length).toBeGreaterThan(0);
    for (const names of others) expect(names).toEqual(first);
  });

  test('every factor names a source of its policy, and how it is known', () => {
    for (const { id, factors, sources } of policies.values()) {
      for (const [name, { source, known }] of Object.entries(factors)) {
        expect(Object.keys(sources), `${id}.${name}`).toContain(source);
        expect(known, `${id}.${name}`).toBeDefined();
      }
    }
  });
});
