/** The words of a words.txt: a word and its number a line. */
export function wordsOfTable(text: string): readonly string[] {
  return text
    .split('\n')
    .map((line) => /^(\S+)\s+\d+\s*$/.exec(line)?.[1])
    .filter((word) => word !== undefined);
}

const FST_MAGIC = 2_125_659_606;
const TABLE_MAGIC = 2_125_658_996;
const HAS_INPUT_SYMBOLS = 1;
const HAS_OUTPUT_SYMBOLS = 2;
/** Properties, start state, states and arcs, eight bytes each. */
const COUNTS = 32;

/**
 * The words of a graph in OpenFst's binary form, which published models hold instead of a words.txt. The table of
 * words stands right after the header, so the beginning of the file is enough. Null where it has none or is broken.
 * Layout from memory, after OpenFst's own fst.h and symbol-table.h; the tests read a graph its tools have written.
 */
export function wordsOfGraph(start: Uint8Array): readonly string[] | null {
  try {
    const bytes = new Reader(start);
    if (bytes.int32() !== FST_MAGIC) return null;
    bytes.string();
    bytes.string();
    bytes.int32();
    const flags = bytes.int32();
    bytes.skip(COUNTS);
    if ((flags & (HAS_INPUT_SYMBOLS | HAS_OUTPUT_SYMBOLS)) === 0) return null;
    if (bytes.int32() !== TABLE_MAGIC) return null;
    bytes.string();
    bytes.int64();
    const count = bytes.int64();
    const words: string[] = [];
    for (let index = 0; index < count; index += 1) {
      words.push(bytes.string());
      bytes.int64();
    }
    return words;
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

/** Little-endian numbers and counted strings. Reading past the end is a RangeError, as of DataView itself. */
class Reader {
  readonly #view: DataView;
  readonly #bytes: Uint8Array;
  readonly #decoder = new TextDecoder();
  #at = 0;

  constructor(bytes: Uint8Array) {
    this.#bytes = bytes;
    this.#view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  }

  skip(count: number): void {
    this.#at += count;
  }

  int32(): number {
    this.#at += 4;
    return this.#view.getInt32(this.#at - 4, true);
  }

  /** Counts and keys are far below 2^53. */
  int64(): number {
    this.#at += 8;
    return Number(this.#view.getBigInt64(this.#at - 8, true));
  }

  string(): string {
    const length = this.int32();
    if (length < 0 || this.#at + length > this.#bytes.length) throw new RangeError('a string ends past the end');
    this.#at += length;
    return this.#decoder.decode(this.#bytes.subarray(this.#at - length, this.#at));
  }
}
