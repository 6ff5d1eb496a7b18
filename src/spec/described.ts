import type { z } from 'zod';

/**
 * A key of a spec with what an editor shows while it is typed: a sentence, and at least one example as it would stand there.
 * @example described(sentence, 'Title of the board.', 'Orchard cart hub drive')
 */
export const described = <T extends z.ZodType>(
  schema: T,
  description: string,
  ...examples: readonly [unknown, ...unknown[]]
): T => schema.meta({ description, examples });
