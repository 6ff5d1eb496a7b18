/** A node of the parsed file, as far as it is looked at. */
export interface MarkdownNode {
  readonly type: string;
  readonly position: { readonly start: { readonly offset: number }; readonly end: { readonly offset: number } };
  readonly children?: readonly MarkdownNode[];
  readonly value?: string;
  readonly url?: string;
  readonly ordered?: boolean;
  readonly name?: string | null;
  readonly attributes?: readonly {
    readonly type: string;
    readonly name?: string;
    readonly value?: unknown;
  }[];
}

export type Refuse = (
  node: MarkdownNode,
  key: string,
  what: { readonly code: string; readonly found: string; readonly expected: string; readonly hint?: string },
) => void;

/** What a note may not hold, in words, and what to do instead. */
const refused: Readonly<Record<string, { found: string; hint: string }>> = {
  mdxjsEsm: {
    found: '`import` or `export`',
    hint: 'A note runs no code: delete the line, or begin the sentence otherwise.',
  },
  mdxFlowExpression: {
    found: 'an expression in braces',
    hint: 'A note runs no code: name a number with `<Value id="…" />`, or write `\\{`.',
  },
  mdxTextExpression: {
    found: 'an expression in braces',
    hint: 'A note runs no code: name a number with `<Value id="…" />`, or write `\\{`.',
  },
  html: { found: 'HTML', hint: 'Write it in Markdown.' },
  image: { found: 'a picture', hint: 'A figure of this board is `<Figure id="circuit.check" />`.' },
  imageReference: { found: 'a picture', hint: 'A figure of this board is `<Figure id="circuit.check" />`.' },
  code: { found: 'a block of code', hint: 'Put a name or a line between single backquotes.' },
  blockquote: { found: 'a quotation', hint: 'Write it as a paragraph.' },
  thematicBreak: { found: 'a rule across the page', hint: 'Begin a new section with `## `.' },
  yaml: { found: 'a head of YAML', hint: 'What the board is called stands in spec.yaml: delete these lines.' },
  toml: { found: 'a head of TOML', hint: 'What the board is called stands in spec.yaml: delete these lines.' },
  footnoteDefinition: { found: 'a footnote', hint: 'Put it into the sentence, in brackets.' },
  footnoteReference: { found: 'a footnote', hint: 'Put it into the sentence, in brackets.' },
  linkReference: { found: 'a link whose address stands elsewhere', hint: 'Write `[text](https://…)`.' },
  definition: { found: 'an address for links', hint: 'Write `[text](https://…)`.' },
  delete: { found: 'text struck through', hint: 'Delete it: what was decided otherwise stands under `decisions`.' },
};

export function refuseNode(node: MarkdownNode, refuse: Refuse): void {
  const known = refused[node.type];
  refuse(node, '', {
    code: 'not-in-notes',
    found: known?.found ?? `\`${node.type}\``,
    expected: 'prose, headings, lists, tables, links and components',
    ...(known ? { hint: known.hint } : {}),
  });
}
