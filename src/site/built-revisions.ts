import { getCollection } from 'astro:content';
import type { StoredRevision } from './calculated.ts';

/** The revisions whose pages this run makes; the others stand in the earlier output and are listed only. */
export async function builtRevisions(): Promise<StoredRevision[]> {
  const revisions = await getCollection('packets');
  return revisions.map(({ data }) => data).filter(({ kept }) => !kept);
}
