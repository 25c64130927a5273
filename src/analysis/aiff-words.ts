import type { AiffEncoding } from './aiff-encoding.js';

/** Turns the words of a block, in place, into those of SampleFormat. */
export type WordTurner = (block: Uint8Array) => void;

/** The turner from an AIFF file's words: little endian, and words of 8 bits unsigned. */
export function wordTurner({ bits, order, isSigned }: AiffEncoding): WordTurner {
  if (bits === 8) return isSigned ? flipSigns : leave;
  if (order === 'little') return leave;
  if (bits === 24) return swapThrees;
  return (block) => {
    const bytes = Buffer.from(block.buffer, block.byteOffset, block.length);
    if (bits === 16) bytes.swap16();
    else if (bits === 32) bytes.swap32();
    else bytes.swap64();
  };
}

function leave(): void {}

function flipSigns(block: Uint8Array): void {
  for (let at = 0; at < block.length; at++) block[at] = block[at]! ^ 0x80;
}

function swapThrees(block: Uint8Array): void {
  for (let at = 0; at + 2 < block.length; at += 3) {
    const first = block[at]!;
    block[at] = block[at + 2]!;
    block[at + 2] = first;
  }
}
