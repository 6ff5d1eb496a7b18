import { Bytes } from './bytes.ts';
import { Code, type Type, types } from './code.ts';

export interface Signature {
  readonly parameters: readonly Type[];
  readonly result?: Type;
}

/** A function that a module may hold: written into it when another calls it first. */
export interface FunctionSource extends Signature {
  /** Pairs of doubles that one vector of its code stands for; 1 if not given. */
  readonly passes?: number;
  write(code: Code): void;
}

/** A function that whoever starts the module hands in. */
export interface ImportedFunction extends Signature {
  readonly name: string;
}

const page = 65_536;
const poolPage = 1024;

/**
 * Puts a WebAssembly module together: functions, one memory, and what stands in the memory at the start.
 * Source: WebAssembly Core Specification, release 2.0 (2022), chapter 5, "Binary Format".
 */
export class ModuleBuilder {
  readonly #imports: readonly ImportedFunction[];
  readonly #indices = new Map<FunctionSource, number>();
  readonly #functions: { signature: Signature; body: Uint8Array }[] = [];
  readonly #exports: { name: string; index: number }[] = [];
  readonly #data: { address: number; bytes: Uint8Array }[] = [];
  readonly #constants = new Map<string, number>();
  #pool: { address: number; bytes: DataView; used: number } | undefined;
  #reserved = 0;

  constructor(imports: readonly ImportedFunction[] = []) {
    this.#imports = imports;
  }

  /** The index of a function; it is written when it is first asked for. */
  use(source: FunctionSource): number {
    const known = this.#indices.get(source);
    if (known !== undefined) return known;
    const place = this.#functions.push({ signature: source, body: new Uint8Array() }) - 1;
    const index = this.#imports.length + place;
    this.#indices.set(source, index);
    const code = new Code(this, source.parameters.length, source.passes);
    source.write(code);
    this.#functions[place] = { signature: source, body: code.finish() };
    return index;
  }

  /** The index of a function that is handed in. */
  imported(name: string): number {
    const index = this.#imports.findIndex((one) => one.name === name);
    if (index < 0) throw new Error(`no function ${name} is handed in`);
    return index;
  }

  export(name: string, source: FunctionSource): void {
    this.#exports.push({ name, index: this.use(source) });
  }

  /** Bytes of memory for whatever use, zero at the start. @returns their address, a multiple of 64 */
  reserve(size: number): number {
    const address = this.#reserved;
    this.#reserved = Math.ceil((address + size) / 64) * 64;
    return address;
  }

  /** Memory that holds these bytes at the start. @returns their address */
  data(bytes: Uint8Array): number {
    const address = this.reserve(bytes.length);
    this.#data.push({ address, bytes });
    return address;
  }

  /** The address of sixteen bytes that hold a number twice. */
  constant(value: number): number {
    const key = Object.is(value, -0) ? '-0' : String(value);
    const known = this.#constants.get(key);
    if (known !== undefined) return known;
    if (!this.#pool || this.#pool.used === poolPage) {
      const bytes = new Uint8Array(16 * poolPage);
      this.#pool = { address: this.data(bytes), bytes: new DataView(bytes.buffer), used: 0 };
    }
    const offset = 16 * this.#pool.used++;
    this.#pool.bytes.setFloat64(offset, value, true);
    this.#pool.bytes.setFloat64(offset + 8, value, true);
    const address = this.#pool.address + offset;
    this.#constants.set(key, address);
    return address;
  }

  /** Bytes of memory reserved so far. */
  get reserved(): number {
    return this.#reserved;
  }

  /** The module. Its memory is exported as `memory`. */
  finish(): Uint8Array<ArrayBuffer> {
    const kinds = new Map<string, number>();
    const kindOf = (signature: Signature): number => {
      const key = signatureBytes(signature).join();
      const known = kinds.get(key);
      if (known !== undefined) return known;
      kinds.set(key, kinds.size);
      return kinds.size - 1;
    };
    const imported = this.#imports.map((one) => new Bytes().text('host').text(one.name).byte(0).unsigned(kindOf(one)));
    const declared = this.#functions.map(({ signature }) => new Bytes().unsigned(kindOf(signature)));
    const exported = this.#exports.map(({ name, index }) => new Bytes().text(name).byte(0).unsigned(index));
    const memory = new Bytes().byte(0).unsigned(Math.max(1, Math.ceil(this.#reserved / page)));
    const data = this.#data.map(({ address, bytes }) =>
      new Bytes().byte(0).byte(0x41).signed(address).byte(0x0b).sized(trimmed(bytes)),
    );
    const out = new Bytes().append([0x00, 0x61, 0x73, 0x6d, 1, 0, 0, 0]);
    const section = (id: number, items: readonly Bytes[]): void => {
      const body = new Bytes().unsigned(items.length);
      for (const item of items) body.append(item.written);
      if (items.length) out.byte(id).sized(body.written);
    };
    section(
      1,
      [...kinds.keys()].map((key) => new Bytes().append(key.split(',').map(Number))),
    );
    section(2, imported);
    section(3, declared);
    section(5, [memory]);
    section(7, [...exported, new Bytes().text('memory').byte(2).unsigned(0)]);
    section(
      10,
      this.#functions.map(({ body }) => new Bytes().sized(body)),
    );
    section(11, data);
    return out.written;
  }
}

function signatureBytes({ parameters, result }: Signature): Uint8Array {
  const out = new Bytes().byte(0x60).sized(parameters.map((type) => types[type]));
  return out.sized(result ? [types[result]] : []).written;
}

/** Without the zeros at the end, which memory holds anyway. */
function trimmed(bytes: Uint8Array): Uint8Array {
  let end = bytes.length;
  while (end > 0 && bytes[end - 1] === 0) end--;
  return bytes.subarray(0, end);
}
