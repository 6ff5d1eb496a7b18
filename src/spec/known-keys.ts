import { z } from 'zod';
import type { Path } from './yaml-file.ts';

/**
 * Keys that the mapping at a path may hold, read off the schema itself; empty where names are free.
 * @example knownKeys(specSchema, ['margins']) // ['derating', 'target']
 */
export function knownKeys(schema: z.ZodType, path: Path): readonly string[] {
  const here = unwrapped(schema);
  const [step, ...rest] = path;
  if (here instanceof z.ZodUnion) return here.options.flatMap((one) => knownKeys(one as z.ZodType, path));
  if (here instanceof z.ZodObject) {
    const shape = here.shape as Record<string, z.ZodType>;
    if (step === undefined) return Object.keys(shape);
    return Object.hasOwn(shape, step) ? knownKeys(shape[step]!, rest) : [];
  }
  if (step === undefined) return [];
  if (here instanceof z.ZodRecord) return knownKeys(here.valueType as z.ZodType, rest);
  if (here instanceof z.ZodArray) return knownKeys(here.element as z.ZodType, rest);
  return [];
}

/** The schema of what is typed, behind what makes it optional or changes it once it is read. */
function unwrapped(schema: z.ZodType): z.ZodType {
  if (schema instanceof z.ZodOptional) return unwrapped(schema.unwrap() as z.ZodType);
  if (schema instanceof z.ZodPipe) return unwrapped(schema.in as z.ZodType);
  return schema;
}
