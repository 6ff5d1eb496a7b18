import { defineCollection } from 'astro:content';
import { z } from 'astro/zod';
import type { StoredRevision } from './site/calculated.ts';
import { packetLoader } from './site/loader.ts';
import { calculateAll } from './site/packets.ts';

export const collections = {
  packets: defineCollection({ loader: packetLoader(calculateAll), schema: z.custom<StoredRevision>() }),
};
