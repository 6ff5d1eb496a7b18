import type { Known } from './board-with.ts';

/** Sets of values on which one caution is shown or not; each row adds to or replaces what is given. */
export interface Edges {
  readonly id: string;
  readonly given: Known;
  readonly rows: readonly (readonly [Known, Outcome])[];
}
export type Outcome = 'shown' | 'not shown';

const yes: Outcome = 'shown';
const no: Outcome = 'not shown';
const pack = { has_pack: 'yes' };
const motor = { has_motor: 'yes' };

/**
 * At each threshold of the sources and one step either side. The outcomes are those that the sources ask for: a limit
 * "above 1000 W" leaves 1000 W outside, a limit "from 65 °C" takes 65 °C in.
 */
export const edges: readonly Edges[] = [
  {
    id: 'S01',
    given: pack,
    rows: [
      [{ P_sc: '999 W' }, no],
      [{ P_sc: '1000 W' }, no],
      [{ P_sc: '1001 W' }, yes],
      [{ P_sc: '5 kW', has_pack: 'no' }, no],
      // 20 V and 20 mΩ: 1000 A, matched load 20 × 1000 / 4 = 5 kW.
      [{ V_max: '20 V', I_sc: '1000 A' }, yes],
    ],
  },
  {
    id: 'S02',
    given: pack,
    rows: [
      [{ P_sc: '239 W' }, no],
      [{ P_sc: '240 W' }, no],
      [{ P_sc: '241 W' }, yes],
      [{ P_sc: '1000 W' }, yes],
      [{ P_sc: '1001 W' }, no],
    ],
  },
  {
    id: 'S03',
    given: {},
    rows: [
      [{ I_bus: '0.49 A' }, no],
      [{ I_bus: '0.5 A' }, no],
      [{ I_bus: '0.51 A' }, yes],
    ],
  },
  {
    id: 'S04',
    given: {},
    rows: [
      [{ E_cap: '99.9 J' }, no],
      [{ E_cap: '100 J' }, yes],
      [{ E_cap: '100.1 J' }, yes],
    ],
  },
  {
    id: 'S05',
    given: {},
    rows: [
      [{ E_cap: '0.999 J' }, no],
      [{ E_cap: '1 J' }, yes],
      [{ E_cap: '1.001 J' }, yes],
      [{ E_cap: '99.9 J' }, yes],
      [{ E_cap: '100 J' }, no],
    ],
  },
  {
    id: 'S06',
    given: { bleed: 'yes', V_touch: '40 V', E_cap: '2 J' },
    rows: [
      [{ t_60: '0 s', t_5: '4.9 s' }, no],
      [{ t_60: '0 s', t_5: '5 s' }, no],
      [{ t_60: '0 s', t_5: '5.1 s' }, yes],
      [{ t_60: '0 s', t_5: '5.1 s', E_cap: '0.99 J' }, no],
      [{ t_60: '0 s', t_5: '5.1 s', E_cap: '1 J' }, yes],
      [{ t_60: '1 s', t_5: '4 s' }, no],
      [{ t_60: '1.1 s', t_5: '4 s', V_touch: '70 V' }, yes],
      [{ bleed: 'no', E_cap: '1 J' }, yes],
    ],
  },
  {
    id: 'S07',
    given: { precharge: 'no', E_cap: '0.5 J', I_inrush: '99 A', I_conn_make: '100 A' },
    rows: [
      [{}, no],
      [{ I_inrush: '100 A' }, no],
      [{ I_inrush: '101 A' }, yes],
      [{ E_cap: '0.999 J' }, no],
      [{ E_cap: '1 J' }, yes],
      [{ E_cap: '1 J', precharge: 'yes' }, no],
    ],
  },
  {
    id: 'S08',
    given: { precharge: 'yes', I_conn_make: '100 A' },
    rows: [
      [{ I_inrush: '99 A' }, no],
      [{ I_inrush: '100 A' }, no],
      [{ I_inrush: '101 A' }, yes],
      [{ I_inrush: '101 A', precharge: 'no' }, no],
    ],
  },
  {
    id: 'S09',
    given: {},
    rows: [
      [{ T_touch: '64.9 degC' }, no],
      [{ T_touch: '65 degC' }, yes],
      [{ T_touch: '65.1 degC' }, yes],
    ],
  },
  {
    id: 'S10',
    given: {},
    rows: [
      [{ T_touch: '54.9 degC' }, no],
      [{ T_touch: '55 degC' }, yes],
      [{ T_touch: '64.9 degC' }, yes],
      [{ T_touch: '65 degC' }, no],
    ],
  },
  {
    id: 'S11',
    given: { t_hold: '10 s' },
    rows: [
      [{ T_touch: '50.9 degC' }, no],
      [{ T_touch: '51 degC' }, yes],
      [{ T_touch: '54.9 degC' }, yes],
      [{ T_touch: '55 degC' }, no],
      [{ T_touch: '48 degC', t_hold: '60 s' }, no],
      [{ T_touch: '48 degC', t_hold: '61 s' }, yes],
      [{ T_touch: '47.9 degC', t_hold: '61 s' }, no],
      [{ T_touch: '43 degC', t_hold: '600 s' }, no],
      [{ T_touch: '43 degC', t_hold: '601 s' }, yes],
      [{ T_touch: '42.9 degC', t_hold: '601 s' }, no],
    ],
  },
  {
    id: 'S12',
    given: { ...pack, T_pack_max: '60 degC' },
    rows: [
      [{ T_pack: '59.9 degC' }, no],
      [{ T_pack: '60 degC' }, no],
      [{ T_pack: '60.1 degC' }, yes],
      [{ T_pack: '50 degC', T_pack_max: '49.9 degC' }, yes],
      [{ T_pack: '60.1 degC', has_pack: 'no' }, no],
    ],
  },
  {
    id: 'S13',
    given: {},
    rows: [
      [{ has_motor: 'yes' }, yes],
      [{ has_motor: 'no' }, no],
    ],
  },
  {
    id: 'S14',
    given: motor,
    rows: [
      [{ has_prop: 'yes' }, yes],
      [{ has_prop: 'no' }, no],
      [{ has_prop: 'yes', has_motor: 'no' }, no],
    ],
  },
  {
    id: 'S15',
    given: {},
    rows: [
      [{ has_motor: 'yes' }, yes],
      [{ has_motor: 'no' }, no],
    ],
  },
  {
    id: 'S16',
    given: motor,
    rows: [
      [{ auto_restart: 'yes' }, yes],
      [{ auto_restart: 'no' }, no],
    ],
  },
  {
    id: 'S17',
    given: {},
    rows: [
      [{ sto: 'no', has_motor: 'no' }, no],
      [{ sto: 'yes', has_motor: 'no' }, yes],
      [{ sto: 'no', has_motor: 'yes' }, yes],
    ],
  },
  {
    id: 'S18',
    given: motor,
    rows: [
      [{ V_bemf: '29.9 V' }, no],
      [{ V_bemf: '30 V' }, yes],
      [{ V_bemf: '30.1 V' }, yes],
      [{ n_max: '3000 rpm', K_v: '100 rpm/V' }, yes],
      [{ n_max: '2990 rpm', K_v: '100 rpm/V' }, no],
    ],
  },
  {
    id: 'S19',
    given: { ...pack, V_cell_min: '2.5 V' },
    rows: [
      [{ V_off_cell: '2.49 V' }, yes],
      [{ V_off_cell: '2.5 V' }, no],
      [{ V_off_cell: '2.51 V' }, no],
    ],
  },
  {
    id: 'S20',
    given: { ...pack, t_storage_d: '60 day' },
    rows: [
      [{ t_drain_d: '59.9 day' }, yes],
      [{ t_drain_d: '60 day' }, no],
      [{ t_drain_d: '60.1 day' }, no],
      [{ Q_reserve: '0.25 Ah', I_q: '150 uA' }, no],
      [{ Q_reserve: '0.25 Ah', I_q: '200 uA' }, yes],
    ],
  },
  {
    id: 'S21',
    given: { ...pack, regen: 'yes', has_charger: 'no', V_chg_max: '42 V', I_regen: '0 A' },
    rows: [
      [{ V_brake: '41.9 V' }, no],
      [{ V_brake: '42 V' }, no],
      [{ V_brake: '42.1 V' }, yes],
      [{ V_brake: '42.1 V', regen: 'no' }, no],
      [{ V_brake: '42 V', I_regen: '10 mA' }, yes],
      [{ V_brake: '42 V', has_charger: 'yes', V_charger: '42 V' }, no],
      [{ V_brake: '42 V', has_charger: 'yes', V_charger: '42.1 V' }, yes],
    ],
  },
  {
    id: 'S22',
    given: { ...pack, has_charger: 'no', regen: 'yes', T_chg_min: '0 degC' },
    rows: [
      [{ T_amb: '0.1 degC to 40 degC' }, no],
      [{ T_amb: '0 degC to 40 degC' }, no],
      [{ T_amb: '-0.1 degC to 40 degC' }, yes],
      [{ T_amb: '-20 degC to 40 degC', regen: 'no' }, no],
      [{ T_amb: '-20 degC to 40 degC', regen: 'no', has_charger: 'yes' }, yes],
      [{ T_amb: '5 degC to 40 degC', T_chg_min: '10 degC' }, yes],
    ],
  },
  ...['S23', 'S24', 'S25', 'S45'].map(
    (id): Edges => ({
      id,
      given: {},
      rows: [
        [{ has_pack: 'yes' }, yes],
        [{ has_pack: 'no' }, no],
      ],
    }),
  ),
  {
    id: 'S26',
    given: { ...pack, E_cell: '10 Wh', E_pack: '90 Wh' },
    rows: [
      [{}, no],
      [{ E_pack: '100 Wh' }, no],
      [{ E_pack: '100.1 Wh' }, yes],
      [{ E_cell: '20 Wh' }, no],
      [{ E_cell: '20.1 Wh' }, yes],
    ],
  },
  {
    id: 'S27',
    given: { ...pack, E_cell: '10 Wh', E_pack: '90 Wh' },
    rows: [
      [{}, yes],
      [{ E_pack: '100 Wh' }, yes],
      [{ E_pack: '100.1 Wh' }, no],
      [{ E_cell: '20 Wh' }, yes],
      [{ E_cell: '20.1 Wh' }, no],
    ],
  },
  {
    id: 'S28',
    given: {},
    rows: [
      [{ V_touch: '29.9 V' }, no],
      [{ V_touch: '30 V' }, no],
      [{ V_touch: '30.1 V' }, yes],
      [{ V_touch: '60 V' }, yes],
      [{ V_touch: '60.1 V' }, no],
    ],
  },
  {
    id: 'S29',
    given: {},
    rows: [
      [{ V_touch: '59.9 V' }, no],
      [{ V_touch: '60 V' }, no],
      [{ V_touch: '60.1 V' }, yes],
    ],
  },
  {
    id: 'S30',
    given: { wet: 'yes' },
    rows: [
      [{ V_touch: '29.9 V' }, no],
      [{ V_touch: '30 V' }, no],
      [{ V_touch: '30.1 V' }, yes],
      [{ V_touch: '30.1 V', wet: 'no' }, no],
    ],
  },
  {
    id: 'S31',
    given: { ...motor, V_max: '42 V', V_bus_rating: '80 V' },
    rows: [
      // Nine tenths of 60 V, then the 60 V line itself.
      [{ V_regen: '53.9 V', V_bus_rating: '60 V' }, no],
      [{ V_regen: '54 V', V_bus_rating: '60 V' }, yes],
      [{ V_regen: '54.1 V', V_bus_rating: '60 V' }, yes],
      [{ V_regen: '60 V' }, no],
      [{ V_regen: '60.1 V' }, yes],
      [{ V_regen: '65 V', V_max: '60.1 V' }, no],
      [{ V_regen: '65 V', V_max: '60 V' }, yes],
      [{ V_regen: '75 V', has_motor: 'no' }, no],
    ],
  },
  {
    id: 'S32',
    given: motor,
    rows: [
      [{ psu_step: 'yes' }, yes],
      [{ psu_step: 'no' }, no],
      [{ psu_step: 'yes', has_motor: 'no' }, no],
    ],
  },
  {
    id: 'S33',
    given: {},
    rows: [
      [{ energised_step: 'no', psu_step: 'no' }, no],
      [{ energised_step: 'yes', psu_step: 'no' }, yes],
      [{ energised_step: 'no', psu_step: 'yes' }, yes],
    ],
  },
  {
    id: 'S34',
    given: { has_usb: 'yes', has_pack: 'no', has_charger: 'no', psu_earthed: 'no' },
    rows: [
      [{ V_shift: '0.09 V' }, no],
      [{ V_shift: '0.1 V' }, no],
      [{ V_shift: '0.11 V' }, yes],
      [{ V_shift: '0.11 V', has_usb: 'no' }, no],
      [{ V_shift: '0 V', has_pack: 'yes' }, yes],
      [{ V_shift: '0 V', has_charger: 'yes' }, yes],
      [{ V_shift: '0 V', psu_earthed: 'yes' }, yes],
    ],
  },
  {
    id: 'S35',
    given: {},
    rows: [
      [{ scope_step: 'yes' }, yes],
      [{ scope_step: 'no' }, no],
    ],
  },
  {
    id: 'S36',
    given: { has_pack: 'no' },
    rows: [
      [{ E_cap: '19.9 J' }, no],
      [{ E_cap: '20 J' }, yes],
      [{ E_cap: '20.1 J' }, yes],
      [{ E_cap: '0 J', has_pack: 'yes' }, yes],
    ],
  },
  {
    id: 'S37',
    given: { has_pack: 'no', has_motor: 'no', solder_step: 'no' },
    rows: [
      [{}, no],
      [{ has_pack: 'yes' }, yes],
      [{ has_motor: 'yes' }, yes],
      [{ solder_step: 'yes' }, yes],
    ],
  },
  {
    id: 'S38',
    given: { ...pack, has_fuse: 'yes', I_sc: '1000 A', V_pk: '60 V', I_fuse_br: '2000 A', V_fuse_dc: '80 V' },
    rows: [
      [{}, no],
      [{ has_fuse: 'no', I_fuse_br: '0 A', V_fuse_dc: '0 V' }, yes],
      [{ I_fuse_br: '999 A' }, yes],
      [{ I_fuse_br: '1000 A' }, no],
      [{ I_fuse_br: '1001 A' }, no],
      [{ V_fuse_dc: '59.9 V' }, yes],
      [{ V_fuse_dc: '60 V' }, no],
      [{ V_fuse_dc: '60.1 V' }, no],
    ],
  },
  {
    id: 'S39',
    given: { ...pack, rev_prot: 'yes', V_rev: '84 V' },
    rows: [
      [{ V_rev_block: '83.9 V' }, yes],
      [{ V_rev_block: '84 V' }, no],
      [{ V_rev_block: '84.1 V' }, no],
      [{ rev_prot: 'no' }, yes],
    ],
  },
  {
    id: 'S40',
    given: { ...pack, n_packs: '2', I_chg_max: '10 A' },
    rows: [
      [{ I_eq: '9.9 A' }, no],
      [{ I_eq: '10 A' }, no],
      [{ I_eq: '10.1 A' }, yes],
      [{ I_eq: '10.1 A', n_packs: '1' }, no],
      // Half a volt round a loop of 50 mΩ and 50 mΩ: 5 A; at 20 mΩ each 12.5 A.
      [{ dV_packs: '0.5 V', R_one: '50 mohm' }, no],
      [{ dV_packs: '0.5 V', R_one: '20 mohm' }, yes],
    ],
  },
  {
    id: 'S41',
    given: motor,
    rows: [
      [{ t_stall: '9.9 s' }, yes],
      [{ t_stall: '10 s' }, no],
      [{ t_stall: '10.1 s' }, no],
    ],
  },
  {
    id: 'S42',
    given: {},
    rows: [
      [{ has_magnets: 'yes' }, yes],
      [{ has_magnets: 'no' }, no],
    ],
  },
  {
    id: 'S43',
    given: { energised_step: 'yes', has_motor: 'no' },
    rows: [
      [{ P_sc: '240 W', V_touch: '60 V' }, no],
      [{ P_sc: '241 W', V_touch: '60 V' }, yes],
      [{ P_sc: '240 W', V_touch: '60.1 V' }, yes],
      [{ P_sc: '240 W', V_touch: '60 V', has_motor: 'yes' }, yes],
      [{ P_sc: '5 kW', V_touch: '70 V', energised_step: 'no' }, no],
    ],
  },
  {
    id: 'S47',
    given: { ...pack, has_charger: 'yes', regen: 'no', T_chg_max: '45 degC' },
    rows: [
      [{ T_pack: '44.9 degC' }, no],
      [{ T_pack: '45 degC' }, no],
      [{ T_pack: '45.1 degC' }, yes],
      [{ T_pack: '45.1 degC', has_charger: 'no' }, no],
      [{ T_pack: '45.1 degC', has_charger: 'no', regen: 'yes' }, yes],
    ],
  },
  {
    id: 'S48',
    given: motor,
    rows: [
      [{ V_touch: '34.9 V' }, no],
      [{ V_touch: '35 V' }, no],
      [{ V_touch: '35.1 V' }, yes],
      [{ V_touch: '35.1 V', has_motor: 'no' }, no],
    ],
  },
  {
    id: 'S49',
    given: {},
    rows: [
      [{ has_motor: 'yes' }, yes],
      [{ has_motor: 'no' }, no],
    ],
  },
  {
    id: 'S50',
    given: { solder_step: 'yes', has_pack: 'no' },
    rows: [
      [{ E_cap: '0.999 J' }, no],
      [{ E_cap: '1 J' }, yes],
      [{ E_cap: '1.001 J' }, yes],
      [{ E_cap: '0 J', has_pack: 'yes' }, yes],
      [{ E_cap: '2 J', solder_step: 'no' }, no],
    ],
  },
  {
    id: 'S51',
    given: { ...pack, has_fuse: 'yes', I_wire: '60 A' },
    rows: [
      [{ I_fuse: '59.9 A' }, no],
      [{ I_fuse: '60 A' }, no],
      [{ I_fuse: '60.1 A' }, yes],
      [{ I_fuse: '60.1 A', has_pack: 'no' }, no],
    ],
  },
];
