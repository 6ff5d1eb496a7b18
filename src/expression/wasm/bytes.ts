const view = new DataView(new ArrayBuffer(8));

/** A growing row of bytes, written the way a WebAssembly module is. */
export class Bytes {
  #bytes = new Uint8Array(256);
  #length = 0;

  get length(): number {
    return this.#length;
  }

  /** What was written so far; valid until more is written. */
  get written(): Uint8Array<ArrayBuffer> {
    return this.#bytes.subarray(0, this.#length);
  }

  byte(value: number): this {
    this.#room(1);
    this.#bytes[this.#length++] = value;
    return this;
  }

  append(bytes: ArrayLike<number>): this {
    this.#room(bytes.length);
    this.#bytes.set(bytes, this.#length);
    this.#length += bytes.length;
    return this;
  }

  /** A whole number from 0 to 2³² − 1, seven bits a byte, least first (LEB128). */
  unsigned(value: number): this {
    let rest = value >>> 0;
    while (rest > 0x7f) {
      this.byte((rest & 0x7f) | 0x80);
      rest >>>= 7;
    }
    return this.byte(rest);
  }

  /** A whole number of 32 bits with its sign (LEB128). */
  signed(value: number): this {
    let rest = value | 0;
    while (rest < -0x40 || rest > 0x3f) {
      this.byte((rest & 0x7f) | 0x80);
      rest >>= 7;
    }
    return this.byte(rest & 0x7f);
  }

  double(value: number): this {
    view.setFloat64(0, value, true);
    return this.append(new Uint8Array(view.buffer));
  }

  /** Bytes with their number before them. */
  sized(bytes: ArrayLike<number>): this {
    return this.unsigned(bytes.length).append(bytes);
  }

  text(value: string): this {
    return this.sized(new TextEncoder().encode(value));
  }

  #room(more: number): void {
    if (this.#length + more <= this.#bytes.length) return;
    const grown = new Uint8Array(Math.max(2 * this.#bytes.length, this.#length + more));
    grown.set(this.written);
    this.#bytes = grown;
  }
}
