import { type Algorithm, algorithms, declaration, digestOf, oxum } from './bag.ts';

type Files = ReadonlyMap<string, Uint8Array>;

/**
 * What is wrong with a bag, a sentence each that names the file; empty when it is complete and valid after RFC 8493, section 3.
 * Stricter than the RFC where these archives are: both digests, and a manifest of the tag files, must be there.
 * @param files  by name, without the bag's own folder
 */
export function bagProblems(files: Files): string[] {
  if (decoded(files.get('bagit.txt')) !== declaration)
    return ['bagit.txt is missing or does not say that this is a bag of version 1.0 in UTF-8.'];
  const payload = [...files.keys()].filter((name) => name.startsWith('data/'));
  const tags = [...files.keys()].filter((name) => !name.startsWith('data/') && !name.startsWith('tagmanifest-'));
  return [
    ...kindProblems(files, 'manifest', payload),
    ...kindProblems(files, 'tagmanifest', tags),
    ...oxumProblems(files),
  ];
}

/** What the manifests of one kind say about the files that they have to list. */
function kindProblems(files: Files, kind: 'manifest' | 'tagmanifest', present: readonly string[]): string[] {
  const problems: string[] = [];
  const faults = new Map<string, { how: string; by: string[] }>();
  for (const algorithm of algorithms) {
    const manifest = `${kind}-${algorithm}.txt`;
    const content = decoded(files.get(manifest));
    if (content === undefined) {
      problems.push(`${manifest} is missing.`);
      continue;
    }
    const { listed, malformed } = readManifest(content, algorithm, kind);
    problems.push(
      ...malformed.map((line) => `${manifest}, line ${line}, is not a digest, two spaces and a file name.`),
    );
    for (const [name, digest] of listed) {
      const bytes = files.get(name);
      if (!bytes) note(name, 'is missing', manifest);
      else if (digestOf(algorithm, bytes) !== digest) note(name, 'was changed', manifest);
    }
    for (const name of present)
      if (!listed.has(name)) note(name, 'is extra: it does not belong to the archive', manifest);
  }
  const found = [...faults].map(([name, { how, by }]) => `${name} ${how} (${by.join(', ')}).`);
  return [...problems, ...found.sort()];

  function note(name: string, how: string, manifest: string): void {
    const known = faults.get(name) ?? { how, by: [] };
    known.by.push(manifest);
    faults.set(name, known);
  }
}

function readManifest(content: string, algorithm: Algorithm, kind: 'manifest' | 'tagmanifest') {
  const listed = new Map<string, string>();
  const malformed: number[] = [];
  const digits = algorithm === 'sha256' ? 64 : 128;
  const line = new RegExp(`^([0-9a-f]{${digits}}) [ *](${kind === 'manifest' ? 'data/' : '(?!data/)'}.+)$`);
  for (const [index, row] of content.replace(/\n$/, '').split('\n').entries()) {
    const [, digest, name] = line.exec(row) ?? [];
    if (digest === undefined || name === undefined || listed.has(name)) malformed.push(index + 1);
    else listed.set(name, digest);
  }
  return { listed, malformed };
}

function oxumProblems(files: Files): string[] {
  const stated = /^Payload-Oxum: (\S+)$/m.exec(decoded(files.get('bag-info.txt')) ?? '')?.[1];
  const payload = [...files].filter(([name]) => name.startsWith('data/')).map(([, bytes]) => ({ bytes }));
  const counted = oxum(payload);
  if (stated === counted) return [];
  return [`bag-info.txt says Payload-Oxum ${stated ?? 'nothing'}, the payload has ${counted} (octets.files).`];
}

const decoded = (bytes: Uint8Array | undefined): string | undefined => bytes && Buffer.from(bytes).toString('utf8');
