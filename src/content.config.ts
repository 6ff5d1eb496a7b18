import { defineCollection } from 'astro:content';
import { z } from 'astro/zod';
import type { Block } from './packet/block.ts';
import type { HandbookPage } from './packet/handbook/page.ts';
import type { StoredRevision } from './site/calculated.ts';
import { guideLoader } from './site/guide.ts';
import { handedOver } from './site/hand-over.ts';
import { handbookLoader } from './site/handbook-pages.ts';
import { listLoader, packetLoader } from './site/loader.ts';
import { calculateAll } from './site/packets.ts';

const handed = handedOver();
const loader = handed ? listLoader(handed.listed) : packetLoader(calculateAll);

export const collections = {
  packets: defineCollection({ loader, schema: z.custom<StoredRevision>() }),
  handbook: defineCollection({ loader: handbookLoader(), schema: z.custom<HandbookPage>() }),
  guide: defineCollection({ loader: guideLoader(), schema: z.custom<Block>() }),
};
