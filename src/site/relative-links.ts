import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join, posix, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';
import { handedOver } from './hand-over.ts';
import { type Address, type PageLinks, pageLinks, styleAddresses } from './html-links.ts';

/**
 * Makes the built site open from a folder: every address that leads into it becomes the relative path of a real file. An address
 * that leads nowhere, or to an anchor that its page does not have, fails the build.
 * @param promised  accepts paths of files that are made after the build, such as the printed packet
 */
export function relativeLinks(promised: (path: string) => boolean): AstroIntegration {
  return {
    name: 'copperplate-relative-links',
    hooks: {
      'astro:build:done': ({ dir }) => makeLinksRelative(fileURLToPath(dir), promised, handedOver()?.finished),
    },
  };
}

/**
 * @param finished  further files of the same site that will stand beside those in the folder, with links that are looked at already
 * @throws Error that lists every address that leads nowhere, with the file it stands in
 */
export async function makeLinksRelative(
  folder: string,
  promised: (path: string) => boolean,
  finished: ReadonlySet<string> = new Set(),
): Promise<void> {
  const here = new Set((await readdir(folder, { recursive: true })).map((path) => path.split(sep).join('/')));
  const sources = await readSources(folder, here);
  const files = new Set([...here, ...finished]);
  const problems: string[] = [];
  for (const [path, source] of sources) {
    const rewritten = source.addresses.map((address): Address => {
      const result = resolveAddress(address.text, path, files, promised, sources);
      if ('problem' in result) problems.push(`${path}: "${address.text}" ${result.problem}`);
      return { ...address, text: 'problem' in result ? address.text : result.address };
    });
    const text = replaced(source.text, rewritten);
    if (text !== source.text) await writeFile(join(folder, path), text);
  }
  if (problems.length > 0) throw new Error(`Some links lead nowhere:\n  ${[...new Set(problems)].join('\n  ')}`);
}

type Source = PageLinks & { readonly text: string };

async function readSources(folder: string, files: ReadonlySet<string>): Promise<Map<string, Source>> {
  const sources = new Map<string, Source>();
  for (const path of [...files].sort()) {
    if (!/\.(html|css)$/.test(path)) continue;
    const text = await readFile(join(folder, path), 'utf8');
    const links = path.endsWith('.html')
      ? pageLinks(text)
      : { addresses: styleAddresses(text), ids: new Set<string>() };
    sources.set(path, { ...links, text });
  }
  return sources;
}

/** The address as it must stand in the file `from`, or what is wrong with it. */
export function resolveAddress(
  address: string,
  from: string,
  files: ReadonlySet<string>,
  promised: (path: string) => boolean,
  pages: ReadonlyMap<string, Pick<PageLinks, 'ids'>>,
): { address: string } | { problem: string } {
  if (/^[a-z][a-z+.-]*:/i.test(address)) return { address };
  const [, path = '', query = '', anchor = ''] = /^([^?#]*)(\?[^#]*)?(#.*)?$/.exec(address) ?? [];
  const wanted =
    path === '' ? from : posix.normalize(path.startsWith('/') ? path.slice(1) : posix.join(posix.dirname(from), path));
  const target = fileOf(wanted, files) ?? (promised(wanted) ? wanted : undefined);
  if (target === undefined) return { problem: 'leads to no file' };
  const name = decodeURIComponent(anchor.slice(1));
  const page = pages.get(target);
  if (name !== '' && page && !page.ids.has(name)) {
    return { problem: `leads to an anchor that ${target} does not have` };
  }
  if (path === '') return { address };
  return { address: `${posix.relative(posix.dirname(from), target)}${query}${anchor}` };
}

/** `summary` means `summary.html`, a folder means its `index.html`. */
function fileOf(path: string, files: ReadonlySet<string>): string | undefined {
  const bare = path === '.' ? '' : path.replace(/\/$/, '');
  const names = bare === '' ? ['index.html'] : [`${bare}.html`, `${bare}/index.html`];
  if (/\.[a-z0-9]+$/i.test(bare) && files.has(bare)) return bare;
  return names.find((name) => files.has(name));
}

function replaced(text: string, addresses: readonly Address[]): string {
  let result = '';
  let done = 0;
  for (const { from, to, text: address } of addresses) {
    result += text.slice(done, from) + address;
    done = to;
  }
  return result + text.slice(done);
}
