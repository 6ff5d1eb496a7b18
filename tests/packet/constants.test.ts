import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { constantsOf, safeNames } from '../../src/packet/constants.ts';
import { constantsHeader } from '../../src/packet/constants-header.ts';
import { packetFiles } from '../../src/packet/files.ts';
import { divider, packetFrom, reviewed } from './packets.ts';
import { expectSound } from './sound.ts';
import { rowsOf, tableNamed } from './walk.ts';

const two = divider(
  '12 kohm',
  `  count:
    title: "Counts */ with a sign that would end a comment"
    given: { V_fs: 3.3 V, f: 16 kHz ±1 %, f_clk: 170 MHz, dT: -4 K }
    equations:
      n: { is: floor(f_clk / (2 * f)), unit: count, says: "Reload */ value, 5 Ω ≥ 3 µV", source: timer }
    checks:
      room: { holds: n <= 65535 count, because: the timer has 16 bits }
    firmware:
      V_PER_COUNT: V_fs / 2^12
      RELOAD: n
      EOF: f
      BELOW_K: dT
      BIG_COUNT: round(f_clk / 1 Hz)
    sources: { timer: Clock divided by a whole number }
`,
);

describe('names of constants', () => {
  test('clashing ones have their circuit before them, others keep theirs', () => {
    expect(
      safeNames([
        { circuit: 'sense', symbol: 'V_PER_COUNT' },
        { circuit: 'phase_shunt', symbol: 'V_PER_COUNT' },
        { circuit: 'sense', symbol: 'DUTY_MAX' },
      ]),
    ).toEqual(['SENSE_V_PER_COUNT', 'PHASE_SHUNT_V_PER_COUNT', 'DUTY_MAX']);
  });
  test('a prefixed name that another constant has is numbered, and names of the C library are not taken', () => {
    expect(
      safeNames([
        { circuit: 'a', symbol: 'X' },
        { circuit: 'b', symbol: 'X' },
        { circuit: 'c', symbol: 'A_X' },
        { circuit: 'c', symbol: 'NULL' },
      ]),
    ).toEqual(['A_X_2', 'B_X', 'A_X', 'C_NULL']);
  });
  test('leave room for the ends of ranges', () => {
    const names = safeNames([
      { circuit: 'a', symbol: 'X' },
      { circuit: 'b', symbol: 'X_LOWEST' },
    ]);
    const all = names.flatMap((name) => [name, `${name}_LOWEST`, `${name}_HIGHEST`]);
    expect(new Set(all).size).toBe(all.length);
  });
  test('spell out the letters of a circuit that a macro cannot hold', () => {
    expect(
      safeNames([
        { circuit: 'θ_box', symbol: 'K' },
        { circuit: 'other', symbol: 'K' },
      ]),
    ).toEqual(['THETA_BOX_K', 'OTHER_K']);
  });
});

describe('the header', () => {
  const { board, findings } = reviewed(two);
  const constants = constantsOf(board, findings);
  const header = constantsHeader(findings, constants);
  test('holds every constant once, with unit, range and digest', () => {
    const defined = [...header.matchAll(/^#define ([A-Z_0-9]+)/gm)].map(([, name]) => name!);
    expect(new Set(defined).size).toBe(defined.length);
    expect(defined).toEqual(expect.arrayContaining(constants.map(({ name }) => name)));
    expect(header).toContain(`#define COPPERPLATE_INPUTS_SHA256 "${findings.inputs_sha256}"`);
    expect(header).toMatch(
      /^\/\* Reload \* \/ value, 5 ohm >= 3 uV; n, of count, a plain number \*\/\n#define RELOAD 5312\n/m,
    );
    expect(header).toContain('#define BELOW_K (-CONSTANT(4.0))');
    expect(header).toContain('#define BIG_COUNT 170000000L');
    expect(header).toMatch(/^[ -~\n]*$/);
  });
  test('says every number in digits that read back the same', () => {
    for (const { name, value } of constants) {
      const [, literal] = new RegExp(`^#define ${name} (.*)$`, 'm').exec(header)!;
      expect(Number(literal!.replaceAll(/CONSTANT|[()L]/g, ''))).toBe(value);
    }
  });

  const folder = mkdtempSync(join(tmpdir(), 'copperplate-header-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  const compiler = ['cc', 'gcc', 'clang'].find((name) => {
    try {
      execFileSync(name, ['--version'], { stdio: 'ignore' });
      return true;
    } catch {
      return false;
    }
  });
  test.runIf(compiler)('compiles without a warning, twice included, and gives the same numbers in C', () => {
    writeFileSync(join(folder, 'constants.h'), header);
    const prints = constants.map(
      ({ name, whole }) => `printf("${whole ? '%ld' : '%.17g'}\\n", ${whole ? '(long)' : ''}${name});`,
    );
    writeFileSync(
      join(folder, 'main.c'),
      `#include <stdio.h>\n#include <limits.h>\n#include <errno.h>\n#define CONSTANT(x) x\n#include "constants.h"\n#include "constants.h"\nint main(void){${prints.join('')}return 0;}\n`,
    );
    execFileSync(compiler!, ['-std=c99', '-Wall', '-Wextra', '-Wpedantic', '-Werror', 'main.c', '-o', 'main'], {
      cwd: folder,
    });
    const printed = execFileSync(join(folder, 'main'), { encoding: 'utf8' }).trim().split('\n').map(Number);
    expect(printed).toEqual(constants.map(({ value }) => value));
  });
  test.runIf(compiler)('compiles as it is, with float numbers', () => {
    writeFileSync(join(folder, 'constants.h'), header);
    const uses = constants.map(({ name }) => `+ (float)${name}`).join(' ');
    writeFileSync(
      join(folder, 'plain.c'),
      `#include "constants.h"\nfloat all(void);\nfloat all(void) { return 0.0f ${uses}; }\n`,
    );
    execFileSync(compiler!, ['-std=c99', '-Wall', '-Wextra', '-Wpedantic', '-Werror', '-c', 'plain.c'], {
      cwd: folder,
    });
  });
});

test('constants.json says the same, and neither file is there without a constant', () => {
  const { board, findings } = reviewed(two);
  const files = packetFiles(board, findings);
  const { constants } = JSON.parse(files['constants.json']!) as {
    constants: Record<string, { value: number; unit: string }>;
  };
  expect(constants.RELOAD).toMatchObject({ value: 5312, unit: '1', whole: true, says: 'Reload */ value, 5 Ω ≥ 3 µV' });
  expect(Object.keys(constants)).toEqual([
    'SENSE_V_PER_COUNT',
    'COUNT_V_PER_COUNT',
    'RELOAD',
    'COUNT_EOF',
    'BELOW_K',
    'BIG_COUNT',
  ]);
  const bare = reviewed('');
  expect(Object.keys(packetFiles(bare.board, bare.findings))).not.toContain('constants.h');
});

const ordered = (high: string) => `conditions: { V_bus: 20 V to 40 V typ 36 V }
circuits:
  guard:
    given: { V_uv: 18 V ±2 %, V_ov: ${high} ±2 % }
    order:
      bus: { rising: [V_uv, V_bus, V_ov], because: the board must run between its two cut-offs }
`;

describe('thresholds in order', () => {
  test('are checked pair by pair against the whole range between', () => {
    const { findings } = reviewed(ordered('45 V'));
    // 20 − 18·1.02 = 1.64; 45·0.98 − 40 = 4.1.
    expect(findings.checks.map(({ id, statement, worst_slack }) => [id, statement, worst_slack])).toEqual([
      ['guard.bus_1', 'V_uv <= V_bus', expect.closeTo(1.64, 9)],
      ['guard.bus_2', 'V_bus <= V_ov', expect.closeTo(4.1, 9)],
    ]);
    const packet = packetFrom(ordered('45 V'));
    expectSound(packet);
    expect(rowsOf(tableNamed(packet, 'threshold-order'))).toEqual([
      'guard, bus: The board must run between its two cut-offs.',
      '$V_{\\mathrm{uv}}$ guard.V_uv | – | guard.bus_1 | 1.64 V | 8.2 | <pass> | [check-guard.bus_1]',
      '$V_{\\mathrm{bus}}$ V_bus | 20 to 40 V | guard.bus_2 | 4.10 V | 9.2 | <pass> | [check-guard.bus_2]',
      '$V_{\\mathrm{ov}}$ guard.V_ov | – | – | – | – | – | –',
    ]);
  });
  test('fail where one reaches the next', () => {
    expect(reviewed(ordered('40.5 V')).findings.checks.map(({ verdict }) => verdict)).toEqual(['pass', 'fail']);
  });
});
