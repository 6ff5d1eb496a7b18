import { z } from 'zod';
import { circuit, symbolName } from './circuit-schema.ts';
import { described } from './described.ts';
import { action, decision, deviation, requirement, review } from './record-schema.ts';

const sentence = z.string().trim().min(1);
const quantityText = z.string().trim().min(1);
const date = z.string().regex(/^\d{4}-\d{2}-\d{2}$/, 'date');

export const cautionLevels = ['danger', 'warning', 'caution', 'notice'] as const;
export const statuses = ['draft', 'for review', 'released'] as const;

/** A range, or a range with what it is. */
const condition = z.union([
  quantityText.transform((is): { is: string; says?: string | undefined } => ({ is })),
  z.strictObject({
    is: described(quantityText, 'The range to endure.', '-10 degC to 45 degC typ 25 degC'),
    says: described(sentence.optional(), 'What it is.', 'Air at the enclosure'),
  }),
]);

const cautionDecision = z.strictObject({
  level: described(z.enum(cautionLevels).optional(), 'Another signal word than the caution has.', 'warning'),
  dismissed: described(z.literal('yes').optional(), 'Leaves the caution out, for a reason.', 'yes'),
  reason: described(sentence.optional(), 'Why.', 'The pack is potted; no cell can be reached.'),
  role: described(sentence.optional(), 'Who decided, by role.', 'Safety engineer'),
  date: described(date.optional(), 'When, year-month-day.', '2026-03-20'),
});

/** The whole spec file of one revision. Values are still text here; `readSpec` gives them meaning. */
export const specSchema = z.strictObject({
  board: described(sentence, 'Title of the board, at most 40 characters on the cover.', 'Orchard cart hub drive'),
  document: described(sentence, 'Document number.', 'OC-210'),
  revision: described(z.string().trim().min(1).max(8), 'Revision mark as printed.', 'B'),
  supersedes: described(
    z
      .string()
      .regex(/^[A-Za-z0-9][A-Za-z0-9._-]*$/, 'folder')
      .optional(),
    'Folder of the revision that this one replaces; the packet then says what changed.',
    'rev-a',
  ),
  issued: described(date, 'Date of issue, year-month-day.', '2026-03-18'),
  status: described(z.enum(statuses), 'How far the document is.', 'draft'),
  purpose: described(
    sentence,
    'What the board does, in one sentence.',
    'Drives the hub motor of a fruit-picking cart.',
  ),
  owner: described(sentence.optional(), 'Legal owner, for the title block.', 'Windfall Carts'),
  department: described(sentence.optional(), 'Department, for the title block.', 'Power electronics'),
  designer: described(sentence.optional(), 'Who made it, for the title block.', 'Design engineer'),
  approver: described(sentence.optional(), 'Who approves it, for the title block.', 'Chief engineer'),
  classification: described(sentence.optional(), 'Who may read it, for the title block.', 'internal'),
  language: described(
    z
      .string()
      .regex(/^[a-z]{2}(-[A-Z]{2})?$/, 'language')
      .optional(),
    'Language of the texts.',
    'en',
  ),
  supplement: described(sentence.optional(), 'Supplementary title.', 'Calculation packet'),
  conditions: described(z.record(symbolName, condition).optional(), 'Ranges that every board must endure, by symbol.', {
    I_ph: '5 A to 70 A typ 20 A',
    T_amb: '-10 degC to 45 degC typ 25 degC',
  }),
  cases: described(
    z.record(z.string(), z.record(symbolName, quantityText)).optional(),
    'Named operating cases; a condition that a case does not name keeps its full range.',
    { climb: { I_ph: '40 A to 70 A typ 60 A' } },
  ),
  margins: described(
    z
      .strictObject({
        derating: described(
          z.union([z.string(), z.record(symbolName, quantityText)]).optional(),
          'Name of a published derating policy, or a table of your own.',
          'ecss',
          { resistor_power: '0.5' },
        ),
        target: described(quantityText.optional(), 'A check that holds by less is marginal.', '10 %'),
      })
      .optional(),
    'House rules.',
    { derating: 'ecss', target: '10 %' },
  ),
  requirements: described(z.record(z.string(), requirement).optional(), 'Requirements and the checks that show them.', {
    'REQ-1': { says: 'Full torque from a full to an empty pack', 'shown by': ['pack.window', 'stage.*'] },
  }),
  circuits: described(z.record(symbolName, circuit).optional(), 'The circuits of the board, by name.', {
    bus_sense: { method: 'voltage-divider', given: { V_in: 'pack.V_bat' } },
  }),
  deviations: described(z.array(deviation).optional(), 'Checks that do not hold and are accepted all the same.', [
    { check: 'stage.junction', reason: 'Bench shows 6 K less than computed', approved: '2026-03-20' },
  ]),
  decisions: described(z.record(z.string(), decision).optional(), 'What was decided on this revision, and why.', {
    'D-1': { what: 'One shunt a phase', why: 'Two would not fit beside the terminals', date: '2026-03-10' },
  }),
  actions: described(z.record(z.string(), action).optional(), 'Actions of the review, open or closed.', {
    'A-1': { says: 'Measure the case temperature at 45 °C', 'blocks release': 'yes' },
  }),
  review: described(review.optional(), 'What was said and decided at the review meeting.', {
    kind: 'detail',
    date: '2026-03-18',
    present: ['Design engineer', 'Test engineer'],
    outcome: 'pass with actions',
  }),
  safety: described(
    z.record(symbolName, z.string()).optional(),
    'Facts for the safety cautions that no equation gives: yes or no, and numbers. Silence is unknown, never no.',
    { has_fuse: 'true', I_fuse: '60 A' },
  ),
  cautions: described(
    z.record(symbolName, cautionDecision).optional(),
    'Safety cautions that this board raises, or lowers or dismisses for a reason, by id.',
    { S05: { level: 'danger' } },
  ),
});
export type Spec = z.output<typeof specSchema>;
