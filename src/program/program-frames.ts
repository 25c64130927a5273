import type { FrameRange, FrameSource } from '../analysis/frame-source.js';
import { frameBytes } from '../analysis/sample-format.js';
import type { InputError } from '../errors.js';
import { mixedFrames } from './mixed-frames.js';
import type { ProgramSide } from './program-side.js';
import { untouchedFrames } from './untouched-frames.js';

/**
 * A side of several tracks as one stream of frames, so that the analysis never sees a joint.
 * Where the files' frames only have to be put one behind the other, these are their own bytes. Else
 * they are 64-bit floats: the sum of all tracks, each trimmed, faded, brought to the program's rate
 * and filtered by itself from rest, and what its filters leave behind it under the next one.
 * @param files the tracks' files, open, in the tracks' order
 */
export function programOf(side: ProgramSide, files: readonly FrameSource[]): FrameSource {
  const { sheet, name, format, frames, isUntouched } = side;
  return {
    path: `${sheet}: ${name}`,
    format,
    frames,
    read: ({ firstFrame = 0, endFrame = frames, blockBytes = 2 ** 20, tally }: FrameRange = {}) => {
      const range = {
        firstFrame,
        endFrame,
        blockFrames: Math.max(1, Math.floor(blockBytes / frameBytes(format))),
      };
      if (!(firstFrame >= 0 && firstFrame <= endFrame && endFrame <= frames)) {
        throw new RangeError(`frames ${firstFrame} … ${endFrame} of ${frames}`);
      }
      return isUntouched
        ? untouchedFrames(side, files, range)
        : mixedFrames(side, files, range, tally ?? null);
    },
    refuse: (frame) => refuse(side, files, frame),
    tallies: !isUntouched,
  };
}

/** A stretch of a program, and how much of it at a time. */
export interface ProgramRange {
  readonly firstFrame: number;
  readonly endFrame: number;
  readonly blockFrames: number;
}

/** Says it of the file that the frame is from. */
function refuse(
  { tracks, format }: ProgramSide,
  files: readonly FrameSource[],
  frame: number,
): InputError {
  const at = tracks.findLastIndex(({ startFrame }) => startFrame <= frame);
  const [track, file] = [tracks[at], files[at]];
  if (track === undefined || file === undefined) throw new Error('no track lies there');
  const { sampleRate } = track.file.format;
  const inTrack = Math.floor(((frame - track.startFrame) * sampleRate) / format.sampleRate);
  return file.refuse(Math.min(track.firstFrame + inTrack, track.endFrame - 1));
}
