/** In which files two bags differ, a sentence each; the manifests, which follow from the others, only when nothing else does. */
export function differences(one: ReadonlyMap<string, Uint8Array>, other: ReadonlyMap<string, Uint8Array>): string[] {
  const names = [...new Set([...one.keys(), ...other.keys()])].sort();
  const found = names.flatMap((name) => {
    const [a, b] = [one.get(name), other.get(name)];
    if (!a) return [`${name} came about only now.`];
    if (!b) return [`${name} did not come about again.`];
    const at = firstDifference(a, b);
    return at === undefined ? [] : [`${name} differs from byte ${at + 1} on (${a.length} bytes, now ${b.length}).`];
  });
  const payload = found.filter((difference) => difference.startsWith('data/'));
  if (payload.length) return payload;
  return found.length ? found : ['Every file is the same; the zip around them is packed otherwise.'];
}

function firstDifference(a: Uint8Array, b: Uint8Array): number | undefined {
  if (Buffer.compare(a, b) === 0) return undefined;
  const at = a.findIndex((byte, index) => byte !== b[index]);
  return at < 0 ? a.length : at;
}
