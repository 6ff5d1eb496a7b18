import { createHash } from 'node:crypto';

/** What is used of npm's lock file. @see https://docs.npmjs.com/cli/configuring-npm/package-lock-json */
interface Lock {
  readonly packages: Readonly<Record<string, LockedPackage>>;
}
interface LockedPackage {
  readonly name?: string;
  readonly version?: string;
  readonly license?: string;
  readonly integrity?: string;
  readonly dev?: boolean;
  readonly optional?: boolean;
  /** For development, or optional for something that is not. */
  readonly devOptional?: boolean;
  readonly dependencies?: Readonly<Record<string, string>>;
  readonly optionalDependencies?: Readonly<Record<string, string>>;
}

/**
 * Bill of materials of the tool as CycloneDX 1.6 JSON: every package that the lock file pins and that is not for development
 * only, with its digest, licence, and what it depends on. The same lock file gives the same text: no time, and a serial number
 * made from the lock's digest.
 * @see https://cyclonedx.org/docs/1.6/json/
 */
export function sbomOf(lockText: string): string {
  const { packages } = JSON.parse(lockText) as Lock;
  const root = packages['']!;
  const places = Object.keys(packages)
    .filter((place) => place !== '' && !packages[place]!.dev)
    .sort(byOctets);
  const refOf = (place: string): string => purl(nameAt(place, packages[place]!), packages[place]!.version!);
  const known = new Map(places.map((place) => [refOf(place), place]));
  const sbom = {
    bomFormat: 'CycloneDX',
    specVersion: '1.6',
    serialNumber: `urn:uuid:${uuidFrom(lockText)}`,
    version: 1,
    metadata: {
      component: {
        type: 'application',
        'bom-ref': purl(root.name!, root.version!),
        name: root.name,
        version: root.version,
      },
    },
    components: [...known].map(([ref, place]) => component(ref, nameAt(place, packages[place]!), packages[place]!)),
    dependencies: [
      { ref: purl(root.name!, root.version!), dependsOn: needs('', root) },
      ...[...known].map(([ref, place]) => ({ ref, dependsOn: needs(place, packages[place]!) })),
    ],
  };
  return `${JSON.stringify(sbom, null, 1)}\n`;

  function needs(place: string, { dependencies, optionalDependencies }: LockedPackage): string[] {
    const names = Object.keys({ ...dependencies, ...optionalDependencies });
    const found = names.map((name) => placeOf(name, place, packages)).filter((at) => at !== undefined);
    return [...new Set(found.map(refOf))].sort(byOctets);
  }
}

/** Where a package finds another: in its own folder of modules, or in that of a package around it. */
function placeOf(name: string, from: string, packages: Lock['packages']): string | undefined {
  const around = from.split(/\/?node_modules\//).slice(1);
  for (let depth = around.length; depth >= 0; depth -= 1) {
    const folder = around.slice(0, depth).map((one) => `node_modules/${one}/`);
    const place = `${folder.join('')}node_modules/${name}`;
    if (packages[place]) return packages[place].dev ? undefined : place;
  }
  return undefined;
}

function component(ref: string, name: string, { version, license, integrity, optional, devOptional }: LockedPackage) {
  return {
    type: 'library',
    'bom-ref': ref,
    name,
    version,
    scope: optional || devOptional ? 'optional' : 'required',
    ...(integrity ? { hashes: hashes(integrity) } : {}),
    ...(license ? { licenses: [{ expression: license }] } : {}),
    purl: ref,
  };
}

/** npm states digests in base 64, CycloneDX in hexadecimal. */
function hashes(integrity: string): { alg: string; content: string }[] {
  return integrity.split(/\s+/).map((one) => {
    const [algorithm, digest] = one.split('-', 2) as [string, string];
    return {
      alg: algorithm.toUpperCase().replace('SHA', 'SHA-'),
      content: Buffer.from(digest, 'base64').toString('hex'),
    };
  });
}

const nameAt = (place: string, { name }: LockedPackage): string =>
  name ?? place.slice(place.lastIndexOf('node_modules/') + 'node_modules/'.length);

/** @see https://github.com/package-url/purl-spec */
const purl = (name: string, version: string): string => `pkg:npm/${name.replace('@', '%40')}@${version}`;

/** A UUID of version 8, whose bits mean what its maker says: here the beginning of a SHA-256. @see RFC 9562, 5.8 */
function uuidFrom(content: string): string {
  const hex = createHash('sha256').update(content).digest('hex');
  const variant = ((Number.parseInt(hex[16]!, 16) & 3) | 8).toString(16);
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-8${hex.slice(13, 16)}-${variant}${hex.slice(17, 20)}-${hex.slice(20, 32)}`;
}

const byOctets = (one: string, other: string): number => (one < other ? -1 : one > other ? 1 : 0);
