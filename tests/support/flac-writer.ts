import { createHash } from 'node:crypto';
import { ascii, joined } from './wav-writer.js';

/**
 * Builds FLAC files for tests, right or wrong: samples as they are, or one for a whole block, which
 * is all that a decoder needs. Written after RFC 9639, bit by bit.
 */

export interface FlacOptions {
  channels?: 1 | 2;
  bits?: number;
  sampleRate?: number;
  /** Interleaved samples. */
  words: ArrayLike<number>;
  /** Frames of each block: all the same, but where the blocks tell their first frame. */
  blockFrames?: number | readonly number[];
  /** What STREAMINFO says of the number of frames and of their MD5. */
  frames?: number;
  md5?: Uint8Array;
  /** Further blocks of metadata, by type and content. */
  metadata?: readonly (readonly [type: number, content: Uint8Array])[];
  /** False leaves rate and bits of a sample to STREAMINFO, as blocks may. */
  tellsFormat?: boolean;
  /** Of the first block, or of its first frame; 0 unless it is to lie. */
  firstNumber?: number;
  /** Changes a block before its CRC-16 is made. */
  spoil?: (block: Uint8Array, index: number) => void;
}

const CODE_OF_RATE = new Map([
  [192_000, 3],
  [44_100, 9],
  [96_000, 11],
]);
const CODE_OF_BITS = new Map([
  [8, 1],
  [12, 2],
  [16, 4],
  [20, 5],
  [24, 6],
]);

export function flacBytes(options: FlacOptions): Uint8Array {
  return joined([flacHead(options), ...flacBlocks(options)]);
}

/** Marker and metadata. */
export function flacHead(options: FlacOptions): Uint8Array {
  const { channels = 2, bits = 16, sampleRate = 44_100, words, metadata = [] } = options;
  const frames = options.frames ?? words.length / channels;
  const stream = new BitWriter();
  for (const size of lengthsOf(options, 'ends')) stream.write(size, 16);
  stream.write(0, 24);
  stream.write(0, 24);
  stream.write(sampleRate, 20);
  stream.write(channels - 1, 3);
  stream.write(bits - 1, 5);
  stream.write(frames, 36);
  const blocks = [
    [0, joined([stream.bytes(), options.md5 ?? md5Of(words, bits)])] as const,
    ...metadata,
  ];
  return joined([
    ascii('fLaC'),
    ...blocks.map(([type, content], at) => {
      const head = new BitWriter();
      head.write(at === blocks.length - 1 ? 1 : 0, 1);
      head.write(type, 7);
      head.write(content.length, 24);
      return joined([head.bytes(), content]);
    }),
  ]);
}

/** The blocks, one by one. */
export function flacBlocks(options: FlacOptions): Uint8Array[] {
  const { channels = 2, words, firstNumber = 0, spoil } = options;
  const isVariable = typeof options.blockFrames === 'object';
  let first = 0;
  return lengthsOf(options).map((length, index) => {
    const rows = Array.from({ length: channels }, (_, channel) =>
      Array.from({ length }, (__, frame) => words[(first + frame) * channels + channel] ?? 0),
    );
    const block = flacBlock(rows, firstNumber + (isVariable ? first : index), isVariable, options);
    spoil?.(block, index);
    first += length;
    return joined([block, wordOf(crcOf(block, 16, 0x8005), 16)]);
  });
}

function flacBlock(
  rows: readonly (readonly number[])[],
  number: number,
  isVariable: boolean,
  { bits = 16, sampleRate = 44_100, tellsFormat = true }: FlacOptions,
): Uint8Array {
  const head = new BitWriter();
  head.write(isVariable ? 0xfff9 : 0xfff8, 16);
  // Length in 16 bits.
  head.write(7, 4);
  head.write(tellsFormat ? (CODE_OF_RATE.get(sampleRate) ?? 0) : 0, 4);
  head.write(rows.length - 1, 4);
  head.write(tellsFormat ? (CODE_OF_BITS.get(bits) ?? 0) : 0, 3);
  head.write(0, 1);
  for (const byte of likeALetter(number)) head.write(byte, 8);
  head.write((rows[0]?.length ?? 0) - 1, 16);
  const headBytes = head.bytes();
  const body = new BitWriter();
  for (const row of rows) {
    const isConstant = row.every((value) => value === row[0]);
    body.write(isConstant ? 0 : 2, 8);
    for (const value of isConstant ? row.slice(0, 1) : row) body.write(value, bits);
  }
  return joined([headBytes, wordOf(crcOf(headBytes, 8, 0x07), 8), body.bytes()]);
}

/** Up to 36 bits as UTF-8 codes a letter. */
function likeALetter(value: number): number[] {
  if (value < 0x80) return [value];
  let more = 1;
  while (value >= 2 ** (6 * more + 6 - more)) more++;
  const rest = Array.from({ length: more }, (_, at) => {
    return 0x80 + (Math.floor(value / 64 ** (more - 1 - at)) % 64);
  });
  return [256 - 2 ** (7 - more) + Math.floor(value / 64 ** more), ...rest];
}

/** Frames of each block; or the least and the most of them. */
function lengthsOf(options: FlacOptions, what: 'all' | 'ends' = 'all'): number[] {
  const { channels = 2, words, blockFrames = 4096 } = options;
  if (typeof blockFrames === 'object') {
    return what === 'all' ? [...blockFrames] : [Math.min(...blockFrames), Math.max(...blockFrames)];
  }
  if (what === 'ends') return [blockFrames, blockFrames];
  const frames = words.length / channels;
  return Array.from({ length: Math.ceil(frames / blockFrames) }, (_, at) =>
    Math.min(blockFrames, frames - at * blockFrames),
  );
}

/** Of signed little-endian words of whole bytes. */
function md5Of(words: ArrayLike<number>, bits: number): Uint8Array {
  const step = Math.ceil(bits / 8);
  const bytes = new Uint8Array(step * words.length);
  for (let word = 0; word < words.length; word++) {
    for (let byte = 0; byte < step; byte++) {
      bytes[word * step + byte] = (words[word] ?? 0) >> (8 * byte);
    }
  }
  return createHash('md5').update(bytes).digest();
}

/** Long division, bit by bit: another way than the tables of the code under test. */
export function crcOf(bytes: Uint8Array, width: 8 | 16, generator: number): number {
  let rest = 0;
  for (const byte of bytes) {
    for (let bit = 7; bit >= 0; bit--) {
      const top = (rest >> (width - 1)) & 1;
      rest = (rest << 1) & (2 ** width - 1);
      if (top !== ((byte >> bit) & 1)) rest ^= generator;
    }
  }
  return rest;
}

function wordOf(value: number, bits: number): Uint8Array {
  const writer = new BitWriter();
  writer.write(value, bits);
  return writer.bytes();
}

class BitWriter {
  readonly #bits: number[] = [];

  /** @param value a negative one as its complement */
  write(value: number, bits: number): void {
    const positive = value < 0 ? value + 2 ** bits : value;
    for (let bit = bits - 1; bit >= 0; bit--) this.#bits.push(Math.floor(positive / 2 ** bit) % 2);
  }

  bytes(): Uint8Array {
    const bytes = new Uint8Array(Math.ceil(this.#bits.length / 8));
    for (const [at, bit] of this.#bits.entries()) {
      bytes[at >> 3] = (bytes[at >> 3] ?? 0) | (bit << (7 - (at % 8)));
    }
    return bytes;
  }
}
