import { defineCollection } from 'astro:content';
import { z } from 'astro/zod';
import type { Block } from './packet/block.ts';
import type { HandbookPage } from './packet/handbook/page.ts';
import type { StoredRevision } from './site/calculated.ts';
import { guideLoader } from './site/guide.ts';
import { handbookLoader } from './site/handbook-pages.ts';
import { packetLoader } from './site/loader.ts';
import { calculateAll } from './site/packets.ts';

export const collections = {
  packets: defineCollection({ loader: packetLoader(calculateAll), schema: z.custom<StoredRevision>() }),
  handbook: defineCollection({ loader: handbookLoader(), schema: z.custom<HandbookPage>() }),
  guide: defineCollection({ loader: guideLoader(), schema: z.custom<Block>() }),
};
