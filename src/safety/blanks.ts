const BLANK = /\{([^{}]*)\}/g;

/** Names that stand in braces in a text. */
export const blanksIn = (text: string): string[] => [...text.matchAll(BLANK)].map(([, name]) => name!);

/** The text with each blank replaced. */
export const filled = (text: string, fill: (name: string) => string): string =>
  text.replaceAll(BLANK, (_, name: string) => fill(name));
