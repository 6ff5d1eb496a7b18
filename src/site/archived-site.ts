import { readFile } from 'node:fs/promises';
import { join, posix } from 'node:path';
import { filesIn } from '../archive/keep-earlier.ts';
import { type Address, pageLinks, styleAddresses } from './html-links.ts';

/**
 * The part of a built site that one revision needs, as a site that opens from a folder by itself: its own folder, the pages it
 * links to directly, and the style sheets, faces and pictures of these. Where a page links to something else, such as the list
 * of all boards, the link leads to a page that says what this folder holds. Pages of the handbook are something else too: they
 * name the boards that use a method, and no other board may change this archive.
 * @param folder  the built site, with relative links
 * @param revision  `orchard-cart/rev-b`
 * @param front  the page that says what the folder holds
 */
export async function archivedSite(
  folder: string,
  revision: string,
  front: string,
): Promise<Map<string, Uint8Array | string>> {
  const there = new Set(await filesIn(folder));
  const own = [...there].filter((path) => path.startsWith(`${revision}/`) && !promised(path));
  const ofAnother = (path: string) => there.has(`${path.split('/').slice(0, 2).join('/')}/packet.html`);
  const texts = new Map<string, string>();
  const targets = async (path: string): Promise<string[]> => {
    if (!/\.(html|css)$/.test(path)) return [];
    const source = texts.get(path) ?? (await readFile(join(folder, path), 'utf8'));
    texts.set(path, source);
    return addressesIn(path, source).flatMap(({ text }) => targetOf(path, text) ?? []);
  };
  const linked = (await Promise.all(own.map(targets))).flat();
  const wanted = new Set(own);
  const add = async (path: string): Promise<void> => {
    if (wanted.has(path) || !there.has(path)) return;
    wanted.add(path);
    const further = await targets(path);
    for (const one of further) if (!one.endsWith('.html')) await add(one);
  };
  for (const path of new Set(linked))
    if (path !== frontPage && !handbook.test(path) && !ofAnother(path)) await add(path);
  const files = new Map<string, Uint8Array | string>([[frontPage, front]]);
  for (const path of [...wanted].sort()) {
    const source = texts.get(path);
    files.set(path, source === undefined ? await readFile(join(folder, path)) : closed(path, source, wanted));
  }
  return files;
}

const frontPage = 'index.html';
const handbook = /^handbook\/.*\.html$/;

const addressesIn = (path: string, source: string): readonly Address[] =>
  path.endsWith('.html') ? pageLinks(source).addresses : styleAddresses(source);

/** The file of the site that an address leads to; undefined for one that leads out of it, or stays on the page. */
function targetOf(from: string, address: string): string | undefined {
  if (/^([a-z][a-z+.-]*:|#)/i.test(address)) return undefined;
  const path = address.replace(/[?#].*$/, '');
  return path === '' ? undefined : posix.normalize(posix.join(posix.dirname(from), decodeURI(path)));
}

/** The page with links to what is not in the archive turned to its front page. */
function closed(path: string, source: string, wanted: ReadonlySet<string>): string {
  let result = '';
  let done = 0;
  for (const { from, to, text } of addressesIn(path, source)) {
    const target = targetOf(path, text);
    if (target === undefined || target === frontPage || wanted.has(target) || promised(target)) continue;
    result += source.slice(done, from) + posix.relative(posix.dirname(path), frontPage);
    done = to;
  }
  return result + source.slice(done);
}

/** The archive itself, which cannot lie inside itself. */
const promised = (target: string): boolean => target.endsWith('.zip');
