import { describe, expect, test } from 'vitest';
import { cautionsWith, data, idsShown, type Known } from './board-with.ts';

const ids = (text: string): string[] => text.trim().split(/\s+/);

/** Everything is known, and nobody works on it. */
const quiet: Known = {
  has_pack: 'yes',
  has_motor: 'yes',
  has_prop: 'no',
  has_magnets: 'no',
  has_usb: 'no',
  has_fuse: 'yes',
  has_charger: 'no',
  regen: 'no',
  clamped: 'no',
  precharge: 'no',
  bleed: 'yes',
  rev_prot: 'yes',
  sto: 'no',
  auto_restart: 'no',
  wet: 'no',
  energised_step: 'no',
  psu_step: 'no',
  psu_earthed: 'no',
  scope_step: 'no',
  solder_step: 'no',
};

/**
 * Pump drive of four cells. By hand: matched load 16.8 V × 160 A / 4 = 672 W. At 6000 rpm 1e-6 kg·m² holds 0.197 J; into
 * 400 µF the bus climbs from 16.8 V to 35.8 V, which is over the 30 V and 35 V lines and under 0.9 × 40 V. 560 µF hold
 * 0.36 J then. The motor turns out 6000 / 500 = 12 V. Four cells of 9 Wh are 36 Wh.
 */
const small: Known = {
  ...quiet,
  V_max: '12 V to 16.8 V',
  dV_bus: '0.6 V',
  I_sc: '160 A',
  I_bus: '8 A',
  n_max: '6000 rpm',
  K_v: '500 rpm/V',
  r_rim: '20 mm',
  J_rot: '1e-6 kg*m^2',
  E_slope: '0 J',
  E_wind: '2 mJ',
  C_bus: '400 uF to 560 uF',
  V_bus_rating: '40 V',
  R_bleed: '4.7 kohm',
  I_inrush: '60 A',
  I_conn_make: '80 A',
  T_touch: '50 degC',
  t_hold: '10 s',
  T_pack: '40 degC',
  V_off_cell: '3 V',
  V_cell_min: '2.5 V',
  t_drain_d: '100 day',
  t_storage_d: '60 day',
  I_fuse_br: '1 kA',
  V_fuse_dc: '60 V',
  I_fuse: '15 A',
  I_wire: '20 A',
  V_rev_block: '40 V',
  n_packs: '1',
  t_stall: '20 s',
  E_pack: '36 Wh',
  E_cell: '9 Wh',
  T_amb: '5 degC to 40 degC',
};

/**
 * Vehicle of fourteen cells on a slope without end, with a clamp at 68 V, on the bench of somebody who does everything.
 * Matched load 22 kW. The clamp holds the bus at 68 V, where 3.6 mF hold 8.3 J and 10 kΩ take 4.5 s down to 60 V. Braking
 * with 30 A through 80 mΩ lifts the pack by 2.4 V. One volt between packs of 30 mΩ drives 16.7 A.
 */
const large: Known = {
  ...quiet,
  V_max: '42 V to 58.8 V',
  dV_bus: '1 V',
  I_sc: '1500 A',
  I_bus: '80 A',
  n_max: '4000 rpm',
  K_v: '75 rpm/V',
  r_rim: '0.15 m',
  J_rot: '0.01 kg*m^2',
  E_slope: 'infinite',
  E_wind: '0.4 J',
  C_bus: '2400 uF to 3600 uF',
  V_bus_rating: '100 V',
  R_bleed: '10 kohm',
  R_pre: '22 ohm',
  precharge: 'yes',
  regen: 'yes',
  clamped: 'yes',
  V_clamp: '68 V',
  I_regen: '30 A',
  R_pack: '40 mohm to 80 mohm',
  I_inrush: '600 A',
  I_conn_make: '200 A',
  T_touch: '72 degC',
  t_hold: '10 s',
  T_pack: '50 degC',
  V_off_cell: '2.4 V',
  V_cell_min: '2.5 V',
  t_drain_d: '40 day',
  t_storage_d: '60 day',
  I_fuse_br: '2 kA',
  V_fuse_dc: '80 V',
  I_fuse: '80 A',
  I_wire: '70 A',
  rev_prot: 'no',
  n_packs: '2',
  dV_packs: '1 V',
  R_one: '30 mohm',
  I_chg_max: '15 A',
  t_stall: '1 s',
  E_pack: '504 Wh',
  E_cell: '18 Wh',
  T_amb: '-10 degC to 40 degC',
  wet: 'yes',
  has_magnets: 'yes',
  has_usb: 'yes',
  energised_step: 'yes',
  psu_step: 'yes',
  scope_step: 'yes',
  solder_step: 'yes',
  I_step: '0.2 A',
};

/**
 * Sixteen cells of iron phosphate: 58.4 V and 3 V of ripple are 59.9 V. Without a clamp 0.2 J into 2 mF would give 60.1 V;
 * the clamp holds 59 V. 3 mF hold 5.4 J at 59.9 V, and 4.7 kΩ take 35 s down to 5 V. The motor turns out 40 V.
 */
const phosphate: Known = {
  ...small,
  V_max: '40 V to 58.4 V',
  dV_bus: '3 V',
  V_bus_rating: '80 V',
  K_v: '150 rpm/V',
  C_bus: '2 mF to 3 mF',
  clamped: 'yes',
  V_clamp: '59 V',
  I_sc: '900 A',
  V_rev_block: '120 V',
  V_fuse_dc: '80 V',
  E_pack: '1024 Wh',
  E_cell: '64 Wh',
};

const smallIds = ids('S02 S03 S13 S15 S17 S23 S24 S25 S27 S28 S36 S37 S44 S45 S46 S48 S49');
const phosphateIds = ids('S01 S03 S05 S06 S07 S13 S15 S17 S18 S23 S24 S25 S26 S28 S36 S37 S44 S45 S46 S48 S49');

const without = (known: Known, ...names: string[]): Known =>
  Object.fromEntries(Object.entries(known).filter(([name]) => !names.includes(name)));

test('four cells, small', () => {
  expect(idsShown(small)).toEqual(smallIds);
});

describe('fourteen cells', () => {
  test('braking on a slope, everything done at the bench', () => {
    expect(idsShown(large)).toEqual(
      ids(`S01 S03 S05 S06 S08 S09 S13 S15 S17 S18 S19 S20 S21 S22 S23 S24 S25 S26 S29 S30 S31 S32 S33 S34 S35 S36 S37 S39 S40
           S41 S42 S43 S44 S45 S46 S47 S48 S49 S50 S51`),
    );
  });
  test('58.8 V at rest is under the 60 V line, braking is over it', () => {
    const atRest = without({ ...large, has_motor: 'no' }, 'n_max', 'K_v', 'J_rot', 't_stall');
    expect(cautionsWith(atRest).considered.find(({ id }) => id === 'S29')).toMatchObject({
      outcome: 'not shown',
      reason: 'V_touch = 59.3\u00a0V ≤ 60\u00a0V',
    });
    expect(cautionsWith(large).considered.find(({ id }) => id === 'S29')).toMatchObject({
      outcome: 'shown',
      reason: 'V_touch = 68.0\u00a0V > 60\u00a0V',
    });
  });
  test('no clamp on that slope: the bus climbs without limit', () => {
    const { shown } = cautionsWith(without({ ...large, clamped: 'no' }, 'V_clamp'));
    expect(shown.find(({ id }) => id === 'S31')!.text).toContain('the bus climbs to a voltage without limit;');
    expect(shown.find(({ id }) => id === 'S38')!.reason).toBe(
      'a pack is joined; V_fuse_dc = 80.0\u00a0V < V_pk without limit',
    );
    expect(shown.find(({ id }) => id === 'S29')!.reason).toBe('V_touch without limit > 60\u00a0V');
  });
});

describe('sixteen cells of iron phosphate', () => {
  test('59.9 V with its ripple', () => {
    expect(idsShown(phosphate)).toEqual(phosphateIds);
  });
  test('0.2 V more of ripple at its peak puts it over the line', () => {
    const shown = idsShown({ ...phosphate, dV_bus: '3.4 V' });
    expect([shown.includes('S28'), shown.includes('S29')]).toEqual([false, true]);
  });
  test('ripple that nobody gives is taken as ten per cent, and said so', () => {
    const { shown } = cautionsWith(without(phosphate, 'dV_bus'));
    const caution = shown.find(({ id }) => id === 'S29')!;
    expect(caution.reason).toBe('V_touch = 64.3\u00a0V > 60\u00a0V');
    expect(caution.assumed).toEqual([
      expect.stringMatching(/^dV_bus: no circuit gives the ripple; 10 % of the full pack/),
    ]);
  });
});

test('no fuse', () => {
  const bare = without({ ...small, has_fuse: 'no' }, 'I_fuse_br', 'V_fuse_dc', 'I_fuse');
  const { shown } = cautionsWith(bare);
  expect(shown[0]).toMatchObject({
    id: 'S38',
    level: 'danger',
    certain: true,
    reason: 'a pack is joined; no fuse stands in the lead of the pack',
  });
  expect(shown[0]!.precaution).toBe(
    'Fit a direct-current fuse rated above 160\u00a0A and 35.8\u00a0V, close to the pack, before any test. Never bridge a fuse.',
  );
  expect(shown.map(({ id }) => id).sort()).toEqual([...smallIds, 'S38'].sort());
});

test('no bleeder: the voltage does not fall by itself', () => {
  const { shown } = cautionsWith(without({ ...phosphate, bleed: 'no' }, 'R_bleed'));
  expect(shown.map(({ id }) => id).sort()).toEqual(phosphateIds);
  const words = (id: string) => shown.find((caution) => caution.id === id)!;
  expect(words('S06').text).toBe(
    'The voltage does not fall by itself after unplugging; it may remain for hours, on the pins of the pulled plug too.',
  );
  expect(words('S05').precaution).toMatch(
    /^The voltage does not fall by itself: discharge through a rated resistor, then measure below 5 V/,
  );
});

describe('missing data', () => {
  test('only the pack voltage is known: every hazard is shown', () => {
    expect(idsShown({ has_pack: 'yes', has_motor: 'yes', V_max: '30 V to 42 V' })).toEqual(
      data.cautions.map(({ id }) => id),
    );
  });
  test('what is known is still said: 42 V and a tenth of ripple is the least that a hand meets', () => {
    const { shown } = cautionsWith({ has_pack: 'yes', has_motor: 'yes', V_max: '30 V to 42 V' });
    const caution = shown.find(({ id }) => id === 'S28')!;
    expect(caution.certain).toBe(false);
    expect(caution.reason).toBe('shown because V_touch is unknown (46.2\u00a0V or more)');
    expect(caution.text).toMatch(/^Bus and leads carry 46\.2\u00a0V or more\./);
    expect(caution.tests.flatMap(({ missing }) => missing)).toEqual([
      'clamped',
      'V_clamp',
      'J_rot',
      'n_max',
      'E_slope',
      'E_wind',
      'C_bus',
      'K_v',
    ]);
  });
  test('one number missing shows exactly the cautions that need it', () => {
    const extra = (name: string) => idsShown(without(small, name)).filter((id) => !smallIds.includes(id));
    expect(extra('T_touch')).toEqual(['S09', 'S10', 'S11']);
    expect(extra('I_fuse_br')).toEqual(['S38']);
    expect(extra('E_cell')).toEqual(['S26']);
    expect(extra('scope_step')).toEqual(['S35']);
    expect(extra('T_pack')).toEqual(['S12']);
    // Without the energy of braking nobody knows how high the bus climbs, nor what the capacitors then hold.
    expect(extra('E_slope')).toEqual(['S04', 'S05', 'S06', 'S07', 'S29', 'S31', 'S38']);
  });
});

test('sorted by level, then by id; every hazard is considered once', () => {
  const { shown, considered } = cautionsWith({ ...large, has_prop: 'yes' });
  const levels = shown.map(({ level }) => level);
  expect(levels).toEqual(
    levels.toSorted(
      (a, b) =>
        ['danger', 'warning', 'caution', 'notice'].indexOf(a) - ['danger', 'warning', 'caution', 'notice'].indexOf(b),
    ),
  );
  expect(shown[0]!.id).toBe('S14');
  expect(considered.map(({ id }) => id)).toEqual(data.cautions.map(({ id }) => id));
});

test('a caution is printed beside the circuits whose numbers raise it', () => {
  expect(cautionsWith(large).shown.find(({ id }) => id === 'S05')!.circuits).toEqual(['given']);
});
