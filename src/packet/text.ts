/** Running text with marks in it. Plain strings are escaped by whoever lays them out: nothing here is markup. */
export type Text = readonly Inline[];

export type Inline =
  | string
  /** KaTeX input, made by the engine only. */
  | { readonly kind: 'math'; readonly tex: string }
  | { readonly kind: 'strong' | 'em'; readonly text: string }
  /** Name of a circuit, result, check or file, set in the apparatus face. */
  | { readonly kind: 'name'; readonly text: string }
  /** To an anchor of this packet (`stage.T_j`), wherever its chapter stands, or to an http address. */
  | { readonly kind: 'link'; readonly text: string; readonly to: string }
  /** A method of the handbook by its name; a link where the handbook stands beside the page, as it does on screen. */
  | { readonly kind: 'method'; readonly text: string; readonly id: string }
  /** The printed page on which an anchor stands, as "page 31"; `bare` as "31", in a column headed so. */
  | { readonly kind: 'page'; readonly of: string; readonly bare?: boolean }
  /** Verdict mark with its word, optionally with a figure before the word: `○ 12.9 % pass`. */
  | { readonly kind: 'verdict'; readonly verdict: Verdict; readonly figure?: string; readonly deviation?: string };

export type Verdict = 'pass' | 'marginal' | 'fail' | 'accepted' | 'not assessed';
