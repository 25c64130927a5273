import type { FrameSource } from '../analysis/frame-source.js';
import { frameBytes, type SampleFormat } from '../analysis/sample-format.js';
import type { ProgramRange } from './program-frames.js';
import type { ProgramSide } from './program-side.js';

/** The files' own bytes one behind the other, and silence in the gaps. */
export async function* untouchedFrames(
  { tracks, format }: ProgramSide,
  files: readonly FrameSource[],
  { firstFrame, endFrame, blockFrames }: ProgramRange,
): AsyncGenerator<Uint8Array, void, undefined> {
  const blockBytes = blockFrames * frameBytes(format);
  let frame = firstFrame;
  for (const [at, track] of tracks.entries()) {
    yield* silence(format, Math.min(track.startFrame, endFrame) - frame, blockFrames);
    frame = Math.max(frame, Math.min(track.startFrame, endFrame));
    const until = Math.min(track.stopFrame, endFrame);
    const file = files[at];
    if (file === undefined || until <= frame) continue;
    const inFile = track.firstFrame - track.startFrame;
    yield* file.read({
      firstFrame: inFile + frame,
      endFrame: inFile + until,
      blockBytes,
    });
    frame = until;
  }
}

function* silence(
  format: SampleFormat,
  frames: number,
  blockFrames: number,
): Generator<Uint8Array, void, undefined> {
  // Eight bits are unsigned.
  const word = format.bitDepth === 8 ? 128 : 0;
  for (let left = frames; left > 0; left -= blockFrames) {
    yield new Uint8Array(Math.min(left, blockFrames) * frameBytes(format)).fill(word);
  }
}
