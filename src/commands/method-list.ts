import type { Handbook } from '../spec/method-schema.ts';
import { byPlace, placeTitle } from '../spec/places.ts';

/** The methods with a line each, grouped by where on the board they sit. */
export function methodList({ methods }: Handbook, width: number): string {
  const longest = Math.max(...[...methods.keys()].map((id) => id.length));
  const groups = byPlace(methods.values()).map(([place, group]) =>
    [placeTitle(place), ...group.map(({ id, title }) => `  ${id.padEnd(longest)}  ${title}`.slice(0, width))].join(
      '\n',
    ),
  );
  return `${groups.join('\n\n')}\n\nnpm run method -- <name> shows one with its symbols and equations.`;
}
