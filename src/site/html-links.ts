import { Tokenizer } from 'htmlparser2';

/** An address in a file, and where it stands: from the first byte to behind the last. */
export interface Address {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

/** What one page points at, and what can be pointed at in it. */
export interface PageLinks {
  readonly addresses: readonly Address[];
  readonly ids: ReadonlySet<string>;
}

const single = new Set(['href', 'src', 'poster', 'data', 'xlink:href', 'action']);

/** Every address in a page: links, sources, source sets, and `url()` in styles. */
export function pageLinks(html: string): PageLinks {
  const addresses: Address[] = [];
  const ids = new Set<string>();
  let name = '';
  let value: { from: number; to: number } | undefined;
  let style = false;
  const tokenizer = new Tokenizer(
    { xmlMode: false, decodeEntities: false },
    {
      onopentagname: (from, to) => {
        style = html.slice(from, to).toLowerCase() === 'style';
      },
      onattribname: (from, to) => {
        name = html.slice(from, to).toLowerCase();
        value = undefined;
      },
      onattribdata: (from, to) => {
        value = { from: value?.from ?? from, to };
      },
      onattribend: () => {
        if (!value) return;
        const text = html.slice(value.from, value.to);
        if (name === 'id') ids.add(text);
        else if (single.has(name)) addresses.push({ ...value, text });
        else if (name === 'srcset') addresses.push(...sourceSet(text, value.from));
        else if (name === 'style') addresses.push(...styleAddresses(text, value.from));
      },
      ontext: (from, to) => {
        if (style) addresses.push(...styleAddresses(html.slice(from, to), from));
      },
      onclosetag: () => {
        style = false;
      },
      onattribentity: () => {},
      oncdata: () => {},
      oncomment: () => {},
      ondeclaration: () => {},
      onend: () => {},
      onopentagend: () => {},
      onprocessinginstruction: () => {},
      onselfclosingtag: () => {},
      ontextentity: () => {},
    },
  );
  tokenizer.write(html);
  tokenizer.end();
  return { addresses, ids };
}

/** Every `url()` in a style sheet that begins at `offset`. */
export function styleAddresses(css: string, offset = 0): Address[] {
  return [...css.matchAll(/url\(\s*(["']?)([^"')]+)\1\s*\)/g)].map((match) => {
    const from = offset + match.index + match[0].indexOf(match[2]!);
    return { from, to: from + match[2]!.length, text: match[2]! };
  });
}

function sourceSet(text: string, offset: number): Address[] {
  return [...text.matchAll(/[^\s,]+(?=\s|,|$)(?:\s+[\d.]+[wx])?/g)].map((match) => {
    const address = match[0].split(/\s/)[0]!;
    const from = offset + match.index;
    return { from, to: from + address.length, text: address };
  });
}
