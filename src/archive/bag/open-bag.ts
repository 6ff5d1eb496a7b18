import { unpackZip, ZipError } from './zip.ts';

/**
 * The files of a zipped bag by name, without the one folder that holds them all, and the name of that folder.
 * @throws ZipError when it is no zip, or its files do not lie in one folder
 */
export function openBag(bytes: Uint8Array): { name: string; files: Map<string, Uint8Array> } {
  const zipped = unpackZip(bytes);
  const names = new Set([...zipped.keys()].map((path) => path.slice(0, Math.max(0, path.indexOf('/')))));
  const [name] = names;
  if (name === undefined || name === '' || names.size !== 1)
    throw new ZipError('A bag has one folder that holds everything; this one has not.');
  return { name, files: new Map([...zipped].map(([path, content]) => [path.slice(name.length + 1), content])) };
}
