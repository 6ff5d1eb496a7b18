/** Running numbers of one chapter's tables and figures. `numbering(7).table()` → `7.1`, then `7.2` */
export function numbering(chapter: number): { table(): string; figure(): string } {
  let tables = 0;
  let figures = 0;
  return { table: () => `${chapter}.${++tables}`, figure: () => `${chapter}.${++figures}` };
}
export type Numbering = ReturnType<typeof numbering>;
