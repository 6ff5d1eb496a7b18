/**
 * Text as it may be written to a terminal: what a file holds must not move the cursor, change colours or reach the clipboard.
 * Line breaks stay, other control characters are shown as pictures of themselves; marks that turn the direction of
 * reading are left out.
 */
export function printable(text: string): string {
  return (
    text
      // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
      .replace(/[\u0000-\u0009\u000b-\u001f]/g, (c) => String.fromCharCode(0x2400 + c.charCodeAt(0)))
      .replace(/[\u007f-\u009f]/g, '\ufffd')
      .replace(/[\u200e\u200f\u202a-\u202e\u2066-\u2069]/g, '')
  );
}

/** Writes text that came out of a file to standard output. */
export const say = (text: string): void => console.log(printable(text));
