import type { Term } from './code.ts';

/**
 * Instructions as terms, by the names of the specification: `f64x2` works on two doubles at a time.
 * Source: WebAssembly Core Specification, release 2.0 (2022), 5.4.8, "Vector Instructions".
 */
const vector =
  (opcode: number) =>
  (...args: readonly Term[]): Term =>
  (code) => {
    for (const arg of args) arg(code);
    code.bytes.byte(0xfd).unsigned(opcode);
  };

const plain =
  (opcode: number) =>
  (...args: readonly Term[]): Term =>
  (code) => {
    for (const arg of args) arg(code);
    code.bytes.byte(opcode);
  };

export const f64x2 = {
  splat: vector(20),
  eq: vector(71),
  ne: vector(72),
  lt: vector(73),
  gt: vector(74),
  le: vector(75),
  ge: vector(76),
  ceil: vector(116),
  floor: vector(117),
  abs: vector(236),
  neg: vector(237),
  sqrt: vector(239),
  add: vector(240),
  sub: vector(241),
  mul: vector(242),
  div: vector(243),
  /** As Math.min and Math.max: not a number where either is not. */
  min: vector(244),
  max: vector(245),
  /** `b < a ? b : a`, and `a < b ? b : a`: the first where either is not a number. */
  pmin: vector(246),
  pmax: vector(247),
  /** The first two of four whole numbers with sign. */
  fromLowI32: vector(254),
} as const;

export const i64x2 = {
  shl: vector(203),
  shrU: vector(205),
  add: vector(206),
  sub: vector(209),
} as const;

export const i32x4 = {
  splat: vector(17),
  shrS: vector(172),
  shrU: vector(173),
  add: vector(174),
  mul: vector(181),
} as const;

export const bits = {
  not: vector(77),
  and: vector(78),
  /** `a` without the bits of `b`. */
  andnot: vector(79),
  or: vector(80),
  xor: vector(81),
  /** The bits of `a` where the mask has ones, of `b` where zeros: `select(a, b, mask)`. */
  select: vector(82),
  /** 1 where any bit is set, in any of the pairs (i32). */
  any:
    (term: Term): Term =>
    (code) =>
      code.each(() => {
        vector(83)(term)(code);
        if (code.pass > 0) i32.or()(code);
      }),
} as const;

export const i32 = {
  add: plain(0x6a),
  sub: plain(0x6b),
  mul: plain(0x6c),
  and: plain(0x71),
  or: plain(0x72),
  shl: plain(0x74),
  shrU: plain(0x76),
  gtU: plain(0x4b),
} as const;

/** A whole number written in the code. */
export const integer =
  (value: number): Term =>
  ({ bytes }) =>
    void bytes.byte(0x41).signed(value);

/** A double written in the code. */
export const double =
  (value: number): Term =>
  ({ bytes }) =>
    void bytes.byte(0x44).double(value);

/** Two equal doubles, read from the module's constants. */
export const twice =
  (value: number): Term =>
  ({ bytes, module }) =>
    void bytes.byte(0x41).signed(0).byte(0xfd).unsigned(0).unsigned(4).unsigned(module.constant(value));

/** Four equal whole numbers of 32 bits. */
export const fourfold = (value: number): Term => pattern(value, value);

/** Two patterns of 64 bits, each given as its upper and lower half; equal where the second is not given. */
export const pattern =
  (upper: number, lower = 0, upper2 = upper, lower2 = lower): Term =>
  ({ bytes }) => {
    bytes.byte(0xfd).unsigned(12);
    for (const word of [lower, upper, lower2, upper2]) bytes.append(littleEndian(word));
  };

const littleEndian = (value: number): number[] => [
  value & 0xff,
  (value >> 8) & 0xff,
  (value >> 16) & 0xff,
  value >>> 24,
];

/** 32-bit lanes of `a` (0 … 3) and `b` (4 … 7) by their numbers. */
export const shuffleWords =
  (a: Term, b: Term, words: readonly [number, number, number, number]): Term =>
  (code) => {
    a(code);
    b(code);
    code.bytes
      .byte(0xfd)
      .unsigned(13)
      .append(words.flatMap((word) => [0, 1, 2, 3].map((byte) => 4 * word + byte)));
  };

/** One of four whole numbers of 32 bits. */
export const wordOf =
  (value: Term, lane: number): Term =>
  (code) => {
    value(code);
    code.bytes.byte(0xfd).unsigned(27).byte(lane);
  };

/** One of two doubles. */
export const doubleOf =
  (value: Term, lane: number): Term =>
  (code) => {
    value(code);
    code.bytes.byte(0xfd).unsigned(33).byte(lane);
  };
