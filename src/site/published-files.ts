import { readdirSync, readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { parse } from 'yaml';
import { z } from 'zod';
import { type DataSet, type Published, readChecks } from '../published/check.ts';

const data = new URL('../published/data/', import.meta.url);

/** Reads every published check from disk, in the order of the file names. */
export function loadPublished(): Published {
  const names = readdirSync(data, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.yaml') && name !== 'not-covered.yaml')
    .sort();
  const text = (name: string): string => readFileSync(new URL(name, data), 'utf8');
  const sets = JSON.parse(text('nist-univariate.json')) as DataSet[];
  return {
    themes: names.map((name) => ({ id: basename(name, '.yaml'), checks: readChecks(text(name)) })),
    sets: new Map(sets.map((set) => [set.name, set])),
    notCovered: z.record(z.string(), z.string()).parse(parse(text('not-covered.yaml'))),
  };
}
