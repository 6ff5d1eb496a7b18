import { resolve } from 'node:path';

/** What a command was asked to do. */
export interface Options {
  readonly designs: string;
  readonly out: string;
  /** Simulated boards; undefined is as many as the digits printed need. */
  readonly trials: number | undefined;
  readonly seed: number;
  readonly paper: 'A4' | 'Letter';
  /** `board` or `board/revision`; empty means all. */
  readonly only: readonly string[];
  readonly json: boolean;
  readonly quiet: boolean;
  readonly fresh: boolean;
  /** A check with less margin than this ratio counts as failing; undefined is no such demand. */
  readonly failUnder: number | undefined;
}

export const usualOptions: Options = {
  designs: resolve('designs'),
  out: resolve('dist'),
  trials: undefined,
  seed: 1,
  paper: 'A4',
  only: [],
  json: false,
  quiet: false,
  fresh: false,
  failUnder: undefined,
};

/** The command line cannot be understood. */
export class UsageError extends Error {
  override readonly name = 'UsageError';
}

const flags = ['json', 'quiet', 'fresh'] as const;
const valued = ['designs', 'out', 'trials', 'seed', 'paper', 'fail-under'] as const;

/**
 * Options from the words behind a command.
 * @throws UsageError that names the word, what was expected, and the options there are
 */
export function readOptions(words: readonly string[]): Options {
  let options = usualOptions;
  const only: string[] = [];
  for (let i = 0; i < words.length; i++) {
    const word = words[i]!;
    if (!word.startsWith('--')) {
      only.push(word.replace(/\/+$/, ''));
      continue;
    }
    const [name, inline] = word.slice(2).split('=', 2) as [string, string | undefined];
    if ((flags as readonly string[]).includes(name)) options = { ...options, [name]: true };
    else if ((valued as readonly string[]).includes(name)) {
      const value = inline ?? words[++i];
      if (value === undefined)
        throw new UsageError(
          `found --${name} with nothing behind it; expected ${expected[name as keyof typeof expected]}.`,
        );
      options = { ...options, ...readValue(name as (typeof valued)[number], value) };
    } else
      throw new UsageError(
        `found --${name}; expected one of ${[...flags, ...valued].map((known) => `--${known}`).join(', ')}.`,
      );
  }
  return { ...options, only };
}

const expected = {
  designs: 'a folder',
  out: 'a folder',
  trials: 'a whole number of simulated boards from 100 to 100 000 000',
  seed: 'a whole number from 0 to 4 294 967 295',
  paper: '`A4` or `Letter`',
  'fail-under': 'a margin such as `5%`',
};

function readValue(name: (typeof valued)[number], text: string): Partial<Options> {
  if (name === 'designs' || name === 'out') return { [name]: resolve(text) };
  if (name === 'fail-under') {
    const share = /^(-?\d+(?:\.\d+)?) ?(%?)$/.exec(text.trim());
    if (share) return { failUnder: Number(share[1]) / (share[2] ? 100 : 1) };
  }
  if (name === 'paper' && (text === 'A4' || text === 'Letter')) return { paper: text };
  const number = /^\d+$/.test(text) ? Number(text) : Number.NaN;
  if (name === 'trials' && number >= 100 && number <= 1e8) return { trials: number };
  if (name === 'seed' && number <= 0xffffffff) return { seed: number };
  throw new UsageError(`found --${name} ${text}; expected ${expected[name]}.`);
}

const handedOver = 'COPPERPLATE_OPTIONS';

/** Hands the options to the site's own build, which runs in this process but has modules of its own. */
export function useOptions(options: Options): void {
  process.env[handedOver] = JSON.stringify(options);
}

/** The options that a command handed over; the usual ones where the site is built by itself. */
export function currentOptions(): Options {
  const text = process.env[handedOver];
  return text ? { ...usualOptions, ...(JSON.parse(text) as Options) } : usualOptions;
}
