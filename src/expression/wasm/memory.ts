import type { Statement, Term } from './code.ts';

/** A pair of doubles at `address + offset`; of several pairs the next stand behind it. */
export const load =
  (address: Term, offset = 0): Term =>
  (code) => {
    address(code);
    code.bytes
      .byte(0xfd)
      .unsigned(0)
      .unsigned(4)
      .unsigned(offset + 16 * code.pass);
  };

/** The double at `address + offset`, twice. */
export const loadTwice =
  (address: Term, offset = 0): Term =>
  (code) => {
    address(code);
    code.bytes.byte(0xfd).unsigned(10).unsigned(3).unsigned(offset);
  };

/** Doubles from two places. */
export const loadTwo =
  (first: number, second: number): Term =>
  ({ bytes }) =>
    void bytes
      .append([0x41, 0, 0x41, 0, 0xfd])
      .unsigned(93)
      .unsigned(3)
      .unsigned(first)
      .byte(0xfd)
      .unsigned(87)
      .unsigned(3)
      .unsigned(second)
      .byte(1);

/** Stores a pair of doubles; of several pairs the next behind it. */
export const store =
  (address: Term, value: Term, offset = 0): Statement =>
  (code) =>
    code.each(() => {
      address(code);
      value(code);
      code.bytes
        .byte(0xfd)
        .unsigned(11)
        .unsigned(4)
        .unsigned(offset + 16 * code.pass);
    });

/** A whole number of 32 bits, or of 8 without sign, at `address + offset`. */
export const loadWord = (address: Term, offset = 0): Term => scalarLoad(0x28, 2, address, offset);
export const loadByte = (address: Term, offset = 0): Term => scalarLoad(0x2d, 0, address, offset);

function scalarLoad(opcode: number, align: number, address: Term, offset: number): Term {
  return (code) => {
    address(code);
    code.bytes.byte(opcode).unsigned(align).unsigned(offset);
  };
}

export const storeWord =
  (address: Term, value: Term, offset = 0): Statement =>
  (code) => {
    address(code);
    value(code);
    code.bytes.byte(0x36).unsigned(2).unsigned(offset);
  };

/** Stores one of two doubles. */
export const storeLane =
  (address: Term, value: Term, lane: 0 | 1, offset = 0): Statement =>
  (code) => {
    address(code);
    value(code);
    code.bytes.byte(0xfd).unsigned(91).unsigned(3).unsigned(offset).byte(lane);
  };
