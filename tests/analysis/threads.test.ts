import { expect, test } from 'vitest';
import { find } from '../../src/analysis/find.ts';
import { threaded } from '../../src/site/simulate-threads.ts';
import { boardFrom } from '../spec/spec-text.ts';
import { circuit } from './found.ts';

test('results.json is the same for one, two and four threads', () => {
  const board = boardFrom(
    circuit(
      { V: '30 V to 42 V typ 36 V', R_top: '150 kohm ±1 % age ±0.5 %', R_bot: '10 kohm ±1 %', C: '10 nF ±10 %' },
      { U: ['V * R_bot / (R_top + R_bot)', 'V'], f: ['1 / (2 * pi * parallel(R_top, R_bot) * C)', 'Hz'] },
      { scale: 'U <= 2.68 V', corner: 'f <= 1.9 kHz' },
    ),
  );
  const text = (threads: number) =>
    JSON.stringify(find(board, { seed: 3, trials: 210_000, digest: '', tool: '', counting: threaded(threads) }));
  const one = text(1);
  expect(text(2)).toBe(one);
  expect(text(4)).toBe(one);
  expect(one).toContain('"trials":210000');
});
