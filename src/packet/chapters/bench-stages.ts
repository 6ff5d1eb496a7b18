import type { benchSteps } from '../../spec/circuit-schema.ts';

/** A stage of bringing a board up, behind its hold point. */
export interface Stage {
  readonly key: (typeof benchSteps)[number];
  readonly title: string;
  /** What must be so before it begins. */
  readonly before: string;
  /** Caption of its sheet. */
  readonly says: string;
  /** Places of the safety cautions at which the hand goes in. */
  readonly meets: readonly string[];
}

/** In the order of what can go wrong: each stage adds energy to the one before. The order is common practice, no source. */
export const stages: readonly Stage[] = [
  {
    key: 'cold',
    title: 'nothing is powered',
    before: 'Board seen through: parts, polarity, solder, no short from bus to ground',
    says: 'Readings on the cold board.',
    meets: ['bare-board'],
  },
  {
    key: 'supply',
    title: 'first power, from a bench supply with its current limited',
    before: 'Supply limited, no pack, no motor; a way to switch off is at hand',
    says: 'Readings from a bench supply.',
    meets: ['first-power', 'bring-up', 'waveforms', 'usb'],
  },
  {
    key: 'pack',
    title: 'joining the pack',
    before: 'All readings from the supply are accepted; fuse in place',
    says: 'Readings from the pack, gates blocked.',
    meets: ['joining', 'pack', 'harness'],
  },
  {
    key: 'motor',
    title: 'a motor is connected',
    before: 'Rails, sensing and trips are accepted; the shaft is guarded',
    says: 'Readings with a motor, unloaded.',
    meets: ['motor', 'motor-leads'],
  },
  {
    key: 'load',
    title: 'current flows',
    before: 'Over-current trip was seen to work; heat sensors are read',
    says: 'Readings under load.',
    meets: ['load-test', 'stage', 'surfaces'],
  },
];
