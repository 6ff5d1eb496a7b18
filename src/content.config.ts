import { defineCollection } from 'astro:content';
import { z } from 'astro/zod';
import { calculateAll } from './site/calculate.ts';
import type { StoredRevision } from './site/calculated.ts';
import { packetLoader } from './site/loader.ts';

export const collections = {
  packets: defineCollection({ loader: packetLoader(calculateAll), schema: z.custom<StoredRevision>() }),
};
