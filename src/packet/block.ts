import type { Drawing } from './drawing.ts';
import type { Exchange } from './exchange.ts';
import type { Plot } from './plot.ts';
import type { Strip } from './strip.ts';
import type { Text, Verdict } from './text.ts';

/** What a chapter is made of. Blocks say what to show and in what order; how it looks is the components' business. */
export type Block =
  | Paragraph
  | Heading
  | List
  | Note
  | Facts
  | Table
  | Equation
  | Figure
  | Drawing
  | Exchange
  | Caution
  | Banner
  | Contents
  | Statement
  | SignOff
  | TitleBlock
  | Legend
  | Listing;

export interface Paragraph {
  readonly kind: 'paragraph';
  readonly text: Text;
  /** The sentence a reader in a hurry takes away. */
  readonly lead?: boolean;
}

/** A small heading inside a section; not numbered. */
export interface Heading {
  readonly kind: 'heading';
  readonly text: string;
  readonly id?: string;
}

export interface List {
  readonly kind: 'list';
  readonly ordered: boolean;
  readonly items: readonly Text[];
}

/** Stands in the margin column, beside the block that follows it. */
export interface Note {
  readonly kind: 'note';
  readonly text: Text;
  readonly strip?: Strip;
}

/** A few large figures with a line under each. */
export interface Facts {
  readonly kind: 'facts';
  readonly items: readonly { readonly figure: string; readonly text: Text }[];
}

export interface Table {
  readonly kind: 'table';
  readonly id: string;
  /** `7.4`: chapter and running number. */
  readonly number: string;
  readonly caption: Text;
  readonly columns: readonly Column[];
  readonly groups: readonly RowGroup[];
  /** Fills text block and margin column. */
  readonly wide?: boolean;
  /** Scale that strips in this table share, with its printed ticks. */
  readonly scale?: {
    readonly from: number;
    readonly to: number;
    readonly ticks: readonly { at: number; text: string }[];
  };
  readonly foot?: Text;
  /** May go on over the page although it is short: its rows are tall. */
  readonly breaks?: boolean;
}
export interface Column {
  readonly head: Text;
  /** `decimal`: numbers flush on the decimal point; `unit`: left-aligned behind a decimal column. */
  readonly align: 'left' | 'right' | 'decimal' | 'unit' | 'strip' | 'blank';
  readonly face?: 'serif' | 'sans';
  /** Share of the table's width, where the content should not decide. */
  readonly width?: number;
}
export interface RowGroup {
  readonly title?: string;
  readonly rows: readonly Row[];
}
export interface Row {
  readonly id?: string;
  readonly cells: readonly Cell[];
  /** Differs from the superseded revision: carries a change bar. */
  readonly changed?: boolean;
}
export type Cell =
  | Text
  /** A number as printed; `unguaranteed` sets it in italics, `worst` in copper. */
  | { readonly number: string; readonly unit?: string; readonly strong?: boolean; readonly worst?: boolean }
  | { readonly strip: Strip };

/** An equation with its numbers: symbols, then typical, then the worst corner. */
export interface Equation {
  readonly kind: 'equation';
  readonly id: string;
  /** `7.14`. */
  readonly number: string;
  /** Half a sentence before it that says what it is for. */
  readonly intro: Text;
  /** TeX of the left side: the symbol. */
  readonly left: string;
  readonly lines: readonly EquationLine[];
  readonly strip?: Strip;
  readonly notes: readonly Text[];
  readonly changed?: boolean;
  /** A check with a thin margin hangs on it. */
  readonly thin?: boolean;
}
export interface EquationLine {
  /** `example` stands in the handbook, where no board is at hand. */
  readonly label: 'symbols' | 'typical' | 'worst' | 'example';
  /** TeX of the right side in top-level terms, between which a long line may break. */
  readonly terms: readonly string[];
  readonly result?: { readonly number: string; readonly unit: string };
}

export interface Figure {
  readonly kind: 'figure';
  readonly id: string;
  readonly number: string;
  readonly caption: Text;
  /** Drawn when the site is built. */
  readonly plot: Plot;
  readonly width: 'column' | 'wide' | 'half';
  readonly alt: string;
  /** The numbers behind it, to be opened on screen; on paper they are in the file named. */
  readonly data?: FigureData;
}
export interface FigureData {
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** Where they stand at full precision: `sweeps.csv`. */
  readonly file: string;
}

export interface Caution {
  readonly kind: 'caution';
  readonly id: string;
  readonly level: SignalWord;
  readonly hazard: string;
  /** What, what it does. */
  readonly text: Text;
  /** How to avoid it; printed after "Do:". */
  readonly precaution: Text;
  /** The number that raised it, the threshold, or the number that is unknown. */
  readonly raisedBy: Text;
  readonly source: Text;
  /** The same sources with their addresses, for the list of sources. */
  readonly sources?: readonly string[];
  /** Circuits whose numbers it speaks of, and keys of the steps at which it is met: it is named again there. */
  readonly circuits?: readonly string[];
  readonly steps?: readonly string[];
  readonly reminder: Text;
  /** Its standing rules by key, `L1`: each is said in full once, then by its key. */
  readonly rules?: readonly { readonly key: string; readonly says: string }[];
}
export type SignalWord = 'danger' | 'warning' | 'caution' | 'notice';

/** Cover banner: the highest level, how many of each, what to read first. */
export interface Banner {
  readonly kind: 'banner';
  readonly level: SignalWord;
  readonly counts: readonly string[];
  readonly text: readonly Text[];
}

/** List of chapters and sections; laid out from the packet itself. */
export interface Contents {
  readonly kind: 'contents';
}

/** The verdict in one sentence, with its mark. */
export interface Statement {
  readonly kind: 'statement';
  readonly verdict: Verdict;
  readonly text: Text;
  readonly facts: readonly { readonly label: string; readonly figure: string; readonly text: Text }[];
}

export interface SignOff {
  readonly kind: 'sign-off';
  readonly decisions: readonly string[];
  readonly roles: readonly { readonly role: string; readonly scope: Text }[];
}

/** ISO 7200 fields in rows; `digest` is the whole SHA-256 in hexadecimal. */
export interface TitleBlock {
  readonly kind: 'title-block';
  readonly rows: readonly (readonly TitleField[])[];
  readonly digest: string;
  readonly digestNote: Text;
}
export interface TitleField {
  readonly label: string;
  /** `sheets` prints "1 of" and the number of printed pages. */
  readonly value: string | { readonly kind: 'sheets' };
  readonly strong?: boolean;
  /** Share of the row's width, 1 if silent; rows with equal sums stand flush. */
  readonly span?: number;
}

/** How to read marks and the range rule. */
export interface Legend {
  readonly kind: 'legend';
  readonly part: 'marks' | 'range-rule' | 'questions';
  readonly items?: readonly { readonly question: string; readonly answer: Text }[];
}

/** Lines to be typed as they stand: a piece of a spec, a command. */
export interface Listing {
  readonly kind: 'listing';
  readonly text: string;
}
