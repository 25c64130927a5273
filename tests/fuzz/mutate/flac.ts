import { flacBlocks } from '../../support/flac-writer.js';
import { ascii, joined } from '../../support/wav-writer.js';
import type { Draw } from './draw.js';
import { type FlacForm, flacForm, sealedBlock } from './flac-pieces.js';
import { type Mutation, oneOf } from './mutation.js';
import { withLie } from './numbers.js';
import { replaced } from './pieces.js';

/** What can go wrong in a FLAC file, the checksums of its blocks right all the same. */
export const flacWrong: Mutation = oneOf([
  [3, inFlac(streamLies)],
  [2, inFlac(metadataLies)],
  [1, inFlac(metadataMoved)],
  [3, inFlac(blockHeadLies)],
  [4, inFlac(blockSpoiled)],
  [1, inFlac(blockDropped)],
  [1, inFlac(blockDoubled)],
  [1, inFlac(blocksSwapped)],
  [2, inFlac(blockForged)],
  [1, inFlac(namesPut)],
]);

function inFlac(mutate: (form: FlacForm, draw: Draw) => Uint8Array | null): Mutation {
  return (bytes, draw) => {
    const form = flacForm(bytes);
    return form && mutate(form, draw);
  };
}

/** Lengths of blocks, of frames, rate with channels and bits, number of frames, MD5. */
const STREAM_FIELDS = [
  [0, 2],
  [2, 2],
  [4, 3],
  [7, 3],
  [10, 3],
  [12, 1],
  [13, 1],
  [13, 5],
  [18, 8],
];

function streamLies({ bytes, metadata: [stream] }: FlacForm, draw: Draw): Uint8Array | null {
  const [at = 0, width = 1] = draw.any(STREAM_FIELDS) ?? [];
  return stream === undefined
    ? null
    : withLie(bytes, { at: stream.body + at, width, order: 'big' }, draw);
}

function metadataLies({ bytes, metadata }: FlacForm, draw: Draw): Uint8Array | null {
  const block = draw.any(metadata);
  if (block === null) return null;
  if (draw.chance(0.6)) return withLie(bytes, { at: block.at + 1, width: 3, order: 'big' }, draw);
  const copy = Uint8Array.from(bytes);
  copy[block.at] = draw.chance(0.5) ? (copy[block.at] ?? 0) ^ 0x80 : draw.below(256);
  return copy;
}

function metadataMoved({ bytes, metadata }: FlacForm, draw: Draw): Uint8Array | null {
  const [block, before] = [draw.any(metadata), draw.any(metadata)];
  if (block === null || before === null) return null;
  const content = bytes.slice(block.at, block.end);
  if (draw.chance(0.5)) return replaced(bytes, before.at, before.at, content);
  return replaced(bytes, block.at, block.end);
}

function blockHeadLies({ bytes, blocks }: FlacForm, draw: Draw): Uint8Array | null {
  const block = draw.any(blocks);
  if (block === null) return null;
  const changed = bytes.slice(block.at, block.end);
  const headBytes = block.body - block.at;
  changed[1 + draw.below(headBytes - 2)] = draw.below(256);
  return replaced(bytes, block.at, block.end, sealedBlock(changed, headBytes));
}

function blockSpoiled({ bytes, blocks }: FlacForm, draw: Draw): Uint8Array | null {
  const block = draw.any(blocks);
  if (block === null) return null;
  const changed = bytes.slice(block.at, block.end);
  const headBytes = block.body - block.at;
  // What says how a channel is coded stands at its beginning.
  const reach = draw.chance(0.5)
    ? Math.min(4, changed.length - headBytes)
    : changed.length - headBytes;
  for (let left = draw.pick([1, 1, 3]); left > 0; left--) {
    changed[headBytes + draw.below(reach)] = draw.below(256);
  }
  return replaced(bytes, block.at, block.end, sealedBlock(changed, headBytes));
}

function blockDropped({ bytes, blocks }: FlacForm, draw: Draw): Uint8Array | null {
  const block = draw.any(blocks);
  return block && replaced(bytes, block.at, block.end);
}

function blockDoubled({ bytes, blocks }: FlacForm, draw: Draw): Uint8Array | null {
  const block = draw.any(blocks);
  return block && replaced(bytes, block.end, block.end, bytes.slice(block.at, block.end));
}

function blocksSwapped({ bytes, blocks }: FlacForm, draw: Draw): Uint8Array | null {
  const at = draw.below(blocks.length - 1);
  const [first, second] = [blocks[at], blocks[at + 1]];
  if (first === undefined || second === undefined) return null;
  const turned = [bytes.slice(second.at, second.end), bytes.slice(first.at, first.end)];
  return replaced(bytes, first.at, second.end, ...turned);
}

/** A block without fault that says it comes after centuries, or is longer than all others. */
function blockForged({ bytes, blocks }: FlacForm, draw: Draw): Uint8Array {
  const frames = draw.pick([1, 16, 4096, 65_535]);
  const isVariable = draw.chance(0.5);
  const [forged = ascii('')] = flacBlocks({
    words: new Int8Array(2 * frames),
    blockFrames: isVariable ? [frames] : frames,
    firstNumber: draw.pick([0, 1, blocks.length, 2 ** 31 - 1, 2 ** 31, 2 ** 36 - 1]),
    tellsFormat: draw.chance(0.5),
  });
  const at = draw.any(blocks)?.at ?? bytes.length;
  return draw.chance(0.5) ? joined([bytes, forged]) : replaced(bytes, at, at, forged);
}

/** Names of another standard before the sound and behind it, of a length that may be a lie. */
function namesPut({ bytes, marker }: FlacForm, draw: Draw): Uint8Array {
  const size = draw.pick([0, 1, 64, 127]);
  const head = Uint8Array.of(...ascii('ID3\x04\0'), draw.pick([0, 0x10]), 0, 0, 0, size);
  const names = joined([head, new Uint8Array(draw.pick([size, size, size + 10, 0]))]);
  const tail = draw.chance(0.5) ? joined([ascii('TAG'), new Uint8Array(125)]) : new Uint8Array(0);
  return joined([names, bytes.subarray(marker), tail]);
}
