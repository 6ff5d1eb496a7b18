import type { Loader } from 'astro/loaders';
import type { HandbookPage } from '../packet/handbook/page.ts';
import { handbookPages } from '../packet/handbook/pages.ts';
import { link, strong } from '../packet/inline.ts';
import type { Text } from '../packet/text.ts';
import type { StoredRevision } from './calculated.ts';
import { loadHandbook } from './handbook-files.ts';
import { currentOptions } from './options.ts';
import { loadPublished } from './published-files.ts';
import { loadSafety } from './safety-files.ts';
import { addressOf, type Links, methodAddress } from './screen-pages.ts';

/** Loads the pages of the handbook into the store, one entry each. */
export function handbookLoader(): Loader {
  return {
    name: 'copperplate-handbook',
    async load({ store }) {
      store.clear();
      for (const page of handbookPages(loadHandbook(currentOptions().designs), loadSafety(), loadPublished()))
        store.set({ id: page.id, data: { ...page } });
    },
  };
}

/** Links on a page of the handbook: to its own anchors, and to other pages of the site by their path. */
export const handbookLinks: Links = {
  address: (to) => (to.startsWith('/') ? to : `#${to}`),
  method: methodAddress,
  number: (anchor) => {
    throw new Error(`A page of the handbook has no printed page for "${anchor}".`);
  },
};

/**
 * The circuits that use a method, board by board, for the margin of its page. A packet that this run did not build is linked
 * at its first page: what else stands there was made by an earlier run.
 */
export function usersOf(page: Pick<HandbookPage, 'id'>, revisions: readonly StoredRevision[]): Text[] {
  const users = revisions.flatMap(({ packet, kept }): Text[] => {
    const circuits = packet?.methods.filter(({ method }) => method === page.id) ?? [];
    if (!packet || !circuits.length) return [];
    const board = link(`${packet.title}, revision ${packet.revisionMark}`, addressOf(packet, 'index'));
    const named = circuits.map(({ circuit, title }) =>
      kept ? title : link(title, addressOf(packet, `calculations/${circuit}`)),
    );
    return [[board, ': ', ...named.flatMap((one, i) => (i ? [', ', one] : [one])), '.']];
  });
  return users.length ? [[strong('Used by')], ...users] : [];
}
