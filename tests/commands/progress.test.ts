import { expect, test } from 'vitest';
import { Progress } from '../../src/commands/progress.ts';

function written(terminal: boolean, quiet = false) {
  let text = '';
  let now = 0;
  const stream = { isTTY: terminal, columns: 30, write: (piece: string) => (text += piece) };
  const progress = new Progress(quiet, stream, () => now);
  return { progress, text: () => text, pass: (ms: number) => (now += ms) };
}

test('on a terminal one line is written over, never wider than it, and cleared at the end', () => {
  const { progress, text } = written(true);
  progress.stage('printing', 2, 5, 'orchard-cart/rev-b');
  progress.stage('printing', 3, 5, 'orchard-cart/rev-c');
  progress.end();
  const start = '\r\u001b[2K';
  expect(text()).toBe(`${start}printing 2 of 5: orchard-cart${start}printing 3 of 5: orchard-cart${start}`);
});

test('in a log there are plain lines, without the steps that follow each other quickly', () => {
  const { progress, text, pass } = written(false);
  progress.stage('building pages');
  for (let page = 1; page <= 50; page += 1) {
    progress.stage('building page', page, 50, 'a/rev-a');
    pass(100);
  }
  progress.stage('printing', 1, 1, 'a/rev-a');
  progress.end();
  const lines = text().split('\n');
  expect(lines.slice(0, 3)).toEqual([
    'building pages',
    'building page 1 of 50: a/rev-a',
    'building page 21 of 50: a/rev-a',
  ]);
  expect(lines.slice(-3)).toEqual(['building page 50 of 50: a/rev-a', 'printing 1 of 1: a/rev-a', '']);
});

test('quiet is quiet', () => {
  const { progress, text } = written(true, true);
  progress.stage('printing', 1, 1, 'a/rev-a');
  progress.end();
  expect(text()).toBe('');
});
