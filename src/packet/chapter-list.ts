/** The chapters in their order: number, page on screen, title, and the question each answers. */
export const chapterHeads = {
  cover: { number: 1, title: 'Title block, decision and signatures', question: 'May this board be built?' },
  contents: { number: 2, title: 'Contents', question: 'Every question is answered by turning to a page.' },
  summary: { number: 3, title: 'Summary', question: 'What is the worst one, and what is still open?' },
  cautions: { number: 4, title: 'Safety cautions', question: 'What can hurt someone, and at which step?' },
  changes: {
    number: 5,
    title: 'What changed',
    question: 'What moved since the last revision, and what must be looked at again?',
  },
  conditions: {
    number: 6,
    title: 'Conditions, derating, assumptions',
    question: 'What must the board endure, and what was taken for granted?',
  },
  calculations: { number: 7, title: 'Calculations', question: 'Where does that number come from?' },
  margins: {
    number: 8,
    title: 'Margin table',
    question: 'What is the worst one, where does it stand, and at which corner?',
  },
  tolerances: {
    number: 9,
    title: 'Tolerances',
    question: 'How seldom do boards come near the limit, and which part decides?',
  },
  heat: { number: 10, title: 'Heat', question: 'Where does the heat arise, and how hot does it get?' },
  parts: { number: 11, title: 'Parts and their room', question: 'May I fit another one, and how far may it differ?' },
  'test-points': { number: 12, title: 'Test points', question: 'What should the meter show?' },
  firmware: { number: 13, title: 'Firmware constants', question: 'Which scale factors go into firmware?' },
  bench: {
    number: 14,
    title: 'Bench results against prediction',
    question: 'Does the copper agree with the numbers?',
  },
  decisions: {
    number: 15,
    title: 'Decisions, deviations, review record',
    question: 'What was decided and accepted, by whom, and why?',
  },
  sources: { number: 16, title: 'Sources', question: 'Who says so?' },
  colophon: { number: 17, title: 'Colophon', question: 'Is this the packet that was signed?' },
} as const;

export type Slug = keyof typeof chapterHeads;
