import { describe, expect, test } from 'vitest';
import type { CautionDecision } from '../../src/spec/board.ts';
import { cautionsWith } from './board-with.ts';

const known = { E_cap: '2 J' };
const signed = { reason: 'The bus is potted and cannot be reached.', role: 'safety engineer', date: '2026-04-02' };
const with05 = (decision: Omit<CautionDecision, 'id'>) => {
  const { shown, considered, findings } = cautionsWith(known, [{ id: 'S05', ...decision }]);
  const of = <T extends { id: string }>(all: readonly T[]) => all.find(({ id }) => id === 'S05');
  return { shown: of(shown), considered: of(considered)!, finding: of(findings) };
};

test('without a decision it keeps the level of the tables', () => {
  const { shown, considered } = with05({ dismissed: false, level: 'caution' });
  expect([shown!.level, considered.level, considered.decision]).toEqual(['caution', 'caution', undefined]);
});

describe('raising', () => {
  test('takes nothing but the level', () => {
    const { shown, considered, finding } = with05({ dismissed: false, level: 'warning' });
    expect([shown!.level, considered.level, finding!.level]).toEqual(['warning', 'warning', 'warning']);
    expect(shown!.decision).toEqual({ is: 'raised', from: 'caution', to: 'warning' });
  });
  test('sorts it among its new level', () => {
    const { shown } = cautionsWith(known, [{ id: 'S05', dismissed: false, level: 'danger' }]);
    expect(shown.slice(0, 3).map(({ id }) => id)).toEqual(['S05', 'S14', 'S38']);
  });
});

describe('lowering', () => {
  test('is printed with its reason, role and date', () => {
    const { shown } = with05({ dismissed: false, level: 'notice', ...signed });
    expect(shown).toMatchObject({
      level: 'notice',
      decision: { is: 'lowered', from: 'caution', to: 'notice', ...signed },
    });
  });
  test.each(['reason', 'role', 'date'] as const)('does not stand without %s', (key) => {
    const { [key]: _, ...less } = signed;
    expect(() => with05({ dismissed: false, level: 'notice', ...less })).toThrow(
      'S05: to lower it from caution takes `reason`, `role` and `date`.',
    );
  });
});

describe('dismissing', () => {
  test('takes it out of those shown, and leaves it in the table with its number, reason, role and date', () => {
    const { shown, considered, finding } = with05({ dismissed: true, ...signed });
    expect([shown, finding]).toEqual([undefined, undefined]);
    expect(considered).toMatchObject({
      outcome: 'dismissed',
      level: 'caution',
      truth: 'yes',
      reason: 'E_cap = 2.00\u00a0J ≥ 1\u00a0J; E_cap = 2.00\u00a0J < 100\u00a0J',
      decision: { is: 'dismissed', from: 'caution', ...signed },
    });
  });
  test.each(['reason', 'role', 'date'] as const)('does not stand without %s', (key) => {
    const { [key]: _, ...less } = signed;
    expect(() => with05({ dismissed: true, ...less })).toThrow('S05: to dismiss it takes `reason`, `role` and `date`.');
  });
  test('what the packet is not cannot be dismissed', () => {
    expect(() => cautionsWith(known, [{ id: 'S46', dismissed: true, ...signed }])).toThrow(
      'S46: it says what the packet is, and cannot be dismissed.',
    );
  });
  test('of a caution that does not apply leaves it as not shown', () => {
    const { considered } = cautionsWith({ E_cap: '0.5 J' }, [{ id: 'S05', dismissed: true, ...signed }]);
    expect(considered.find(({ id }) => id === 'S05')).toMatchObject({
      outcome: 'not shown',
      decision: { is: 'dismissed' },
    });
  });
});

test('a decision that decides nothing is an error', () => {
  expect(() => with05({ dismissed: false })).toThrow('S05: either `level` or `dismissed: yes` must stand there.');
});
