/**
 * A hexadecimal digest in eights, each with a thin gap in its middle, to be compared by eye from paper to screen.
 * `digestGroups('9c417be205da3f88')` → `['9c41 7be2', '05da 3f88']`
 */
export function digestGroups(digest: string): string[] {
  return (digest.match(/.{1,8}/g) ?? []).map((group) => group.replace(/^(.{4})(?=.)/, '$1 '));
}
