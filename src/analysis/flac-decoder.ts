import type { FLACDecoder } from '@wasm-audio-decoders/flac';
import type { FlacBatch } from './flac-blocks.js';
import { flacDamaged } from './flac-damaged.js';
import type { FlacLayout } from './flac-layout.js';
import type { FlacStream } from './flac-stream.js';
import { toldBlock } from './flac-told-block.js';
import { silently } from './silently.js';

/** Samples of one batch by channel; n bits are scaled by 2^(n−1) − 1. */
export type FlacSamples = readonly Float32Array[];

/** Decodes the blocks of one file in their order, from any one on. */
export interface FlacDecoder {
  /** @throws InputError `sound-damaged` where a block's checksum is right and its content is not */
  decode(batch: FlacBatch): Promise<FlacSamples>;
  close(): void;
}

/**
 * The decoder of a file, for one reader: it takes a block that does not follow the one before for
 * damage. Made when the first block is to be decoded.
 */
export function flacDecoder({ source, stream }: FlacLayout): FlacDecoder {
  let ready: Promise<FLACDecoder> | null = null;
  return {
    decode: async (batch) => {
      ready ??= newDecoder();
      const samples = await samplesOf(await ready, batch, stream);
      if (samples?.length !== stream.format.channels) throw flacDamaged(source.path, batch);
      return samples;
    },
    close: () => {
      // After a block that it could not decode it may not be able to; its memory goes all the same.
      ready?.then((decoder) => decoder.free()).catch(() => {});
    },
  };
}

async function newDecoder(): Promise<FLACDecoder> {
  // Few runs have such a file.
  const { FLACDecoder } = await import('@wasm-audio-decoders/flac');
  const decoder = new FLACDecoder();
  await decoder.ready;
  return decoder;
}

/** @returns null where they are not what the blocks' heads promise */
async function samplesOf(
  decoder: FLACDecoder,
  { blocks, frames }: FlacBatch,
  stream: FlacStream,
): Promise<FlacSamples | null> {
  const told = blocks.map((block) => toldBlock(block, stream));
  try {
    const decoded = await silently(() => decoder.decodeFrames(told));
    const { channelData, samplesDecoded, errors } = decoded;
    return errors.length === 0 && samplesDecoded === frames ? channelData : null;
  } catch {
    // It has read beyond its memory.
    return null;
  }
}
