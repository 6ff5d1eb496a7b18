import { expect, test } from 'vitest';
import { methodSheet } from '../../src/commands/method-sheet.ts';
import { methodBlock } from '../../src/spec/method-block.ts';
import { handbook } from '../handbook.ts';
import { messagesFor, read, spec } from '../spec/spec-text.ts';
import { runCommand } from './run-command.ts';

const all = [...handbook.methods.values()];

test.each(all.map((method) => [method.id, method] as const))(
  'the block of %s builds where it is pasted',
  (id, method) => {
    const text = `conditions:\n  T_amb: -10 degC to 45 degC typ 25 degC\ncircuits:\n${methodBlock(method)}\n`;
    expect(messagesFor(text)).toBe('');
    const circuit = read(spec(text)).board!.circuits[0]!;
    expect(circuit.method?.id).toBe(id);
    // Nothing was left to a usual value that the block claims to give.
    const given = Object.keys(method.example.given).filter(
      (name) => method.example.given[name] !== method.symbols[name]!.usual,
    );
    expect(circuit.inputs.filter(({ usual }) => !usual).map(({ symbol }) => symbol)).toEqual(
      expect.arrayContaining(given),
    );
  },
);

test('a sheet holds every symbol, equation, check and source', () => {
  for (const method of all) {
    const sheet = methodSheet(method, 100);
    for (const name of Object.keys(method.symbols)) expect(sheet).toMatch(new RegExp(`^ +${name} `, 'm'));
    for (const [name, { is }] of Object.entries(method.equations ?? {}))
      expect(sheet.replaceAll(/\s+/g, ' ')).toContain(`${name} = ${is.replaceAll(/\s+/g, ' ')}`);
    for (const name of Object.keys(method.checks ?? {})) expect(sheet).toContain(`  ${name}: `);
    for (const key of Object.keys(method.sources)) expect(sheet).toContain(`[${key}] `);
  }
});

test('a name that is none gets the nearest, and no name gets the way to the list', async () => {
  expect(await runCommand('method', ['voltage-divder'])).toMatchObject({
    status: 2,
    err: expect.stringContaining('Did you mean `voltage-divider`?'),
  });
  expect((await runCommand('method', ['divider'])).err).toContain('`phase-divider` or `voltage-divider`');
  expect((await runCommand('method', [])).err).toContain('npm run new -- --list');
  expect((await runCommand('method', ['voltage_divider'])).status).toBe(0);
});
