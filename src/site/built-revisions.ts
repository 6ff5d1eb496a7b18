import { getCollection } from 'astro:content';
import type { StoredRevision } from './calculated.ts';
import { handedOver } from './hand-over.ts';

/** The revisions whose pages this run makes; others may be finished already and are listed only. */
export async function builtRevisions(): Promise<readonly StoredRevision[]> {
  return handedOver()?.built ?? (await getCollection('packets')).map(({ data }) => data);
}
