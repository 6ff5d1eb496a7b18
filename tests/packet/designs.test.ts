import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { find } from '../../src/analysis/find.ts';
import type { Reviewed } from '../../src/packet/by-id.ts';
import { outward, toSi } from '../../src/packet/figures.ts';
import { packetOf } from '../../src/packet/packet-of.ts';
import { formatValue } from '../../src/quantity/figure.ts';
import { readDesigns } from '../../src/site/designs.ts';
import { showProblems } from '../../src/spec/problem.ts';
import { readSpec } from '../../src/spec/read-spec.ts';
import { handbook } from '../handbook.ts';
import { expectSound } from './sound.ts';
import { anchorIds, equationsOf, rowsOf, sectionNamed, tableNamed, targetsOf } from './walk.ts';

const designs = readDesigns(fileURLToPath(new URL('../../designs', import.meta.url)));
const seen = new Map<string, Reviewed>();

function reviewedDesign(board: string, revision: string): Reviewed {
  const key = `${board}/${revision}`;
  const known = seen.get(key);
  if (known) return known;
  const design = designs.find((one) => one.board === board && one.revision === revision)!;
  const read = readSpec(design.files.get('spec.yaml')!, { file: `${key}/spec.yaml`, board, revision }, handbook);
  if (!read.board) throw new Error(showProblems(read.problems));
  const findings = find(read.board, { seed: 1, trials: 500, digest: 'f'.repeat(64), tool: '1.0.0' });
  const found = { board: read.board, findings };
  seen.set(key, found);
  return found;
}

const names = designs.map(({ board, revision }) => [board, revision] as const);

describe.each(names)('the packet of %s/%s', (name, revision) => {
  const { board, findings } = reviewedDesign(name, revision);
  const { supersedes } = board.identity;
  const previous =
    supersedes && designs.some((one) => one.board === name && one.revision === supersedes)
      ? reviewedDesign(name, supersedes)
      : undefined;
  const packet = packetOf(board, findings, previous ? { previous } : {});

  test('is sound', () => {
    expectSound(packet);
  });

  test('has a section for every circuit, an equation for every result, a row for every input and check', () => {
    const anchors = new Set(anchorIds(packet));
    const wanted = board.circuits.flatMap(({ id, inputs, results, checks, validity, firmware }) => [
      id,
      ...[...inputs, ...results, ...firmware].map((one) => one.id),
      ...[...checks, ...validity].map((check) => `check-${check.id}`),
    ]);
    expect(wanted.filter((id) => !anchors.has(id))).toEqual([]);
    for (const { id, title } of board.circuits) expect(sectionNamed(packet, id).title).toBe(title);
  });

  test('every check is referred to from somewhere else', () => {
    const targets = new Set(targetsOf(packet));
    const checks = findings.checks.map(({ id }) => `check-${id}`);
    expect(checks.filter((id) => !targets.has(id))).toEqual([]);
  });

  test('prints on every line of an equation the number that was found', () => {
    for (const { id, lines } of equationsOf(packet)) {
      const { unit } = [...board.circuits.flatMap(({ results }) => results), ...board.totals].find(
        (one) => one.id === id,
      )!;
      const { nominal, worst } = findings.results[id]!;
      const [, typical, hurting] = lines;
      expect(typical!.result).toEqual(formatValue(toSi(nominal, unit), unit));
      if (!hurting) continue;
      const either = [outward(toSi(worst.max, unit), unit, 'up'), outward(toSi(worst.min, unit), unit, 'down')];
      expect(either).toContainEqual(hurting.result);
    }
  });

  test('lists every check once in the margin table, in the order of the ranking within each verdict', () => {
    const links = rowsOf(tableNamed(packet, 'margin-table')).flatMap((row) => /^\d+ \| (\S+) \|/.exec(row)?.[1] ?? []);
    expect(links.toSorted()).toEqual([...findings.ranking].toSorted());
  });
});
