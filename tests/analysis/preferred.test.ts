import { expect, test } from 'vitest';
import { preferredFindings } from '../../src/analysis/preferred.ts';
import { methodBoard } from './method-board.ts';

/** Findings about a divider with these values, by symbol. */
function divider(given: Record<string, string>) {
  const board = methodBoard('tap', 'voltage-divider', { V_in: '36 V', V_fs: '3.3 V', ...given });
  return new Map(preferredFindings(board).map((one) => [one.input, one]));
}

test('a part is held to the series of its tolerance, and says what stands next to it', () => {
  const found = divider({ R_top: '150 kohm ±1 %', R_bot: '10.1 kohm ±1 %', C_f: '10 nF ±20 %' });
  expect(found.get('tap.R_top')).toMatchObject({ series: 'E96', stands: 'in series', tolerance: expect.closeTo(0.01) });
  expect(found.get('tap.R_bot')).toMatchObject({ series: 'E96', stands: 'in none', value: expect.closeTo(10.1) });
  expect(found.get('tap.R_bot')!.below).toBeCloseTo(10, 9);
  expect(found.get('tap.R_bot')!.above).toBeCloseTo(10.2, 9);
  expect(found.get('tap.C_f')).toMatchObject({ series: 'E6', stands: 'in series' });
});

test('a value of E24 at a tight tolerance is told apart from none, and one without tolerance takes the coarsest series', () => {
  const found = divider({ R_top: '330 kohm ±0.1 %', R_bot: '4.7 kohm', C_f: '9.5 / 10 / 10.5 nF' });
  expect(found.get('tap.R_top')).toMatchObject({ series: 'E192', stands: 'in E24' });
  expect(found.get('tap.R_bot')).toMatchObject({ series: 'E3', stands: 'in series', tolerance: null });
  expect(found.has('tap.C_f')).toBe(false);
});
