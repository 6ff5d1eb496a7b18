/** Where on the board a method sits, from the pack to the air: name of its folder, and its heading. */
export const places: ReadonlyMap<string, string> = new Map([
  ['source', 'Source: pack, fuse, harness'],
  ['bus', 'Bus'],
  ['stage', 'Power stage'],
  ['drive', 'Gate drive'],
  ['motor', 'Motor'],
  ['sensing', 'Sensing'],
  ['supply', 'Supplies'],
  ['controller', 'Controller'],
  ['interface', 'Interfaces'],
  ['copper', 'Copper'],
  ['heat', 'Heat'],
]);

/** Heading of a place; a folder of one's own is its own heading. */
export const placeTitle = (place: string): string =>
  places.get(place) ?? (place === 'own' ? 'Own methods' : place.replace(/^./, (first) => first.toUpperCase()));

/** Things with a place, grouped: the places of the board in their order, then others by name; each group by id. */
export function byPlace<T extends { readonly id: string; readonly place: string }>(all: Iterable<T>): [string, T[]][] {
  const groups = new Map<string, T[]>([...places.keys()].map((place) => [place, []]));
  for (const one of [...all].sort((a, b) => compare(a.place, b.place) || compare(a.id, b.id))) {
    const group = groups.get(one.place) ?? [];
    group.push(one);
    groups.set(one.place, group);
  }
  return [...groups].filter(([, group]) => group.length > 0);
}

// Not by locale: the order must be the same on every machine.
const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
