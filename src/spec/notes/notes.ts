/** What an engineer wrote beside the numbers: prose with live values in it. Nothing here can run, or be markup. */
export type NoteBlock =
  | { readonly kind: 'paragraph'; readonly text: NoteText }
  | { readonly kind: 'heading'; readonly text: string }
  | { readonly kind: 'list'; readonly ordered: boolean; readonly items: readonly NoteText[] }
  | { readonly kind: 'table'; readonly head: readonly NoteText[]; readonly rows: readonly (readonly NoteText[])[] }
  /** Equation of a result, with its numbers. */
  | { readonly kind: 'equation'; readonly id: string }
  /** Histogram of a check over the simulated boards. */
  | { readonly kind: 'figure'; readonly id: string };

export type NoteText = readonly NoteInline[];

export type NoteInline =
  | string
  | { readonly kind: 'strong' | 'em' | 'code'; readonly text: string }
  /** To an http address, or to `#id` of something in the packet. */
  | { readonly kind: 'link'; readonly text: string; readonly to: string }
  | { readonly kind: 'value'; readonly id: string; readonly at: ValueAt }
  | { readonly kind: 'check'; readonly id: string };

export const valueEnds = ['typical', 'lowest', 'highest', 'range'] as const;
export type ValueAt = (typeof valueEnds)[number];
