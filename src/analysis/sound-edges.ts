import { convertSamples } from './convert-samples.js';
import type { FrameSource } from './frame-source.js';
import { frameBytes } from './sample-format.js';
import type { SoundEdges } from './silent-ends.js';

/** Frames that are looked at at a time. */
const BLOCK = 2 ** 16;

/**
 * Where the sound of a program begins and ends: its first and last frame of which a sample reaches
 * a magnitude. Only the silent ends are read, and one block more at each.
 * @param least the magnitude, full scale 1
 * @returns null where no sample reaches it; then all has been read
 */
export async function readSoundEdges(
  source: FrameSource,
  least: number,
): Promise<SoundEdges | null> {
  const { frames, format } = source;
  let first: number | null = null;
  for (let from = 0; first === null && from < frames; from += BLOCK) {
    first = (await soundIn(source, from, Math.min(from + BLOCK, frames), least))?.first ?? null;
  }
  if (first === null) return null;
  let last: number | null = null;
  for (let until = frames; last === null && until > first; until -= BLOCK) {
    last = (await soundIn(source, Math.max(until - BLOCK, 0), until, least))?.last ?? null;
  }
  return {
    headSeconds: first / format.sampleRate,
    tailSeconds: (frames - 1 - (last ?? first)) / format.sampleRate,
  };
}

/** First and last frame of a range that reaches the magnitude; null without one. */
async function soundIn(
  source: FrameSource,
  firstFrame: number,
  endFrame: number,
  least: number,
): Promise<{ readonly first: number; readonly last: number } | null> {
  const { format } = source;
  let frame = firstFrame;
  let first: number | null = null;
  let last = firstFrame;
  for await (const block of source.read({ firstFrame, endFrame })) {
    const count = block.length / frameBytes(format);
    const stereo = new Float64Array(2 * count);
    convertSamples(block, format, stereo);
    for (let at = 0; at < count; at++, frame++) {
      if (Math.abs(stereo[2 * at]!) < least && Math.abs(stereo[2 * at + 1]!) < least) continue;
      first ??= frame;
      last = frame;
    }
  }
  return first === null ? null : { first, last };
}
