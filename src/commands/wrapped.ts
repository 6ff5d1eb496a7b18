/**
 * Words of a text in lines of at most `width` characters; a longer word keeps its line.
 * @param first  what the first line begins with
 * @param rest  what the others begin with
 */
export function wrapped(text: string, width: number, first = '', rest = first): string {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter((one) => one !== '')) {
    const start = lines.length ? rest : first;
    if (line === '') line = start + word;
    else if (line.length + 1 + word.length <= width) line += ` ${word}`;
    else {
      lines.push(line);
      line = rest + word;
    }
  }
  return [...lines, line].join('\n');
}
