import type { Method } from '../../spec/method-schema.ts';
import { capital } from '../words.ts';

/** Where on the board methods sit, from the pack to the copper. */
const places: Readonly<Record<string, { readonly title: string; readonly says: string }>> = {
  source: { title: 'Source', says: 'Pack, fuse, harness, plug and what guards them' },
  bus: { title: 'Bus', says: 'Capacitors, ripple, energy and its discharge' },
  stage: { title: 'Power stage', says: 'Switches: losses, junctions, sharing, avalanche' },
  drive: { title: 'Gate drive', says: 'Drivers, resistors, bootstrap, dead time' },
  motor: { title: 'Motor', says: 'The machine, its current loop, ripple and trip' },
  sensing: { title: 'Sensing', says: 'Shunts, dividers, temperatures, converters' },
  supply: { title: 'Supplies', says: 'Rails, converters, filters, hold-up and drain' },
  controller: { title: 'Controller', says: 'Clocks, timers, sampling, resources' },
  interface: { title: 'Interfaces', says: 'Buses, lines, ports and their protection' },
  copper: { title: 'Copper', says: 'Conductors, planes, vias and distances' },
  heat: { title: 'Heat', says: 'Chains of resistances, bursts, what a hand may touch' },
  own: { title: 'Own methods', says: 'Kept beside the boards' },
};

export interface PlacedMethods {
  readonly place: string;
  readonly title: string;
  readonly says: string;
  readonly methods: readonly Method[];
}

export const placeTitle = (place: string): string => places[place]?.title ?? capital(place);

/** The methods by where they sit, in the order of the current's way; places that this list does not know stand at the end. */
export function byPlace(methods: Iterable<Method>): PlacedMethods[] {
  const all = [...methods];
  const known = Object.keys(places);
  const others = [...new Set(all.map(({ place }) => place))].filter((place) => !known.includes(place)).sort();
  return [...known, ...others].flatMap((place) => {
    const here = all.filter((method) => method.place === place).sort((a, b) => (a.title < b.title ? -1 : 1));
    return here.length ? [{ place, title: placeTitle(place), says: places[place]?.says ?? '', methods: here }] : [];
  });
}
