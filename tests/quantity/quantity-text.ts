import fc from 'fast-check';

/** Texts of quantities of every form, as an engineer may type them. */
const unit = fc.constantFrom(
  'V',
  'mV',
  'kohm',
  'MΩ',
  'uF',
  'nH',
  'A',
  'K/W',
  'A^2 s',
  'rpm',
  'Ah',
  'deg',
  'mil^2',
  'min',
);
const positive = fc
  .tuple(fc.integer({ min: 1, max: 99_999 }), fc.integer({ min: 0, max: 4 }))
  .map(([digits, decimals]) => String(digits / 10 ** decimals));
const number = fc.oneof(
  positive,
  positive.map((text) => `-${text}`),
);
const share = fc.integer({ min: 0, max: 9_999 }).map((hundredths) => `${hundredths / 100} %`);
const ppm = fc.integer({ min: 0, max: 9_999 }).map(String);

const tolerance = fc.oneof(
  share.map((side) => `±${side}`),
  fc.tuple(share, share).map(([up, down]) => `+${up} -${down}`),
);
const drift = fc.oneof(
  ppm.map((side) => `±${side} ppm/K`),
  fc.tuple(ppm, ppm).map(([up, down]) => `+${up} -${down} ppm/K`),
);
const ageing = fc.oneof(
  share.map((side) => `age ±${side}`),
  share.map((side) => `age -${side}`),
);
const word = fc.constantFrom('normal', 'uniform', 'triangular');

const some = (text: fc.Arbitrary<string>) => fc.option(text, { nil: '' });
const joined = (...parts: fc.Arbitrary<string>[]) => fc.tuple(...parts).map((texts) => texts.join(' '));
const inOrder = (count: number) =>
  fc
    .array(number, { minLength: count, maxLength: count })
    .map((numbers) => numbers.toSorted((a, b) => Number(a) - Number(b)));

const part = fc
  .tuple(joined(number, unit), tolerance, fc.shuffledSubarray(['drift', 'ageing', 'word']), drift, ageing, word)
  .map(([value, tolerance, order, drift, ageing, word]) => {
    const terms: Record<string, string> = { drift, ageing, word };
    return [value, tolerance, ...order.map((name) => terms[name]!)].join(' ');
  });
const step = fc
  .tuple(number, unit, positive, positive)
  .map(([typ, unit, up, down]) => `${typ} ${unit} +${up} -${down} ${unit}`);
const onlyDrift = joined(number, unit, drift, some(ageing));
const triple = fc
  .tuple(inOrder(3), unit, some(drift), some(word))
  .filter(([numbers]) => numbers[1] !== '0')
  .map(([numbers, unit, drift, word]) => `${numbers.join(' / ')} ${unit} ${drift} ${word}`);
const measured = fc.tuple(number, unit, positive).map(([mean, unit, sd]) => `${mean} ${unit} sd ${sd} ${unit}`);
const range = fc
  .tuple(inOrder(3), unit, fc.boolean())
  .map(([[low, typ, high], unit, said]) => `${low} to ${high} ${unit}${said ? ` typ ${typ}` : ''}`);
const temperature = fc.integer({ min: -40, max: 150 }).map((degrees) => `${degrees} degC ±${Math.abs(degrees) / 10} K`);

export const quantityText = fc.oneof(joined(number, unit), part, step, onlyDrift, triple, measured, range, temperature);
