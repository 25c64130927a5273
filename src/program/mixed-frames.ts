import type { FrameSource } from '../analysis/frame-source.js';
import type { Stereo } from '../analysis/stereo.js';
import type { Tally } from '../analysis/tally.js';
import type { ProgramRange } from './program-frames.js';
import type { ProgramSide, ProgramTrack } from './program-side.js';
import { soundingFrames, TrackReader } from './track-reader.js';

/** Where a track sounds, and its reader while it does. */
interface Voice {
  readonly file: FrameSource;
  readonly track: ProgramTrack;
  readonly from: number;
  readonly until: number;
  reader: TrackReader | null;
}

/** The frames of a program whose tracks are changed on the way: 64-bit floats. */
export async function* mixedFrames(
  { tracks, settings, format }: ProgramSide,
  files: readonly FrameSource[],
  { firstFrame, endFrame, blockFrames }: ProgramRange,
  tally: Tally | null,
): AsyncGenerator<Uint8Array, void, undefined> {
  const { channels, sampleRate: rate } = format;
  const voices = tracks.flatMap((track, at): Voice[] => {
    const file = files[at];
    const sounding = soundingFrames(track, settings, rate);
    return file === undefined ? [] : [{ file, track, ...sounding, reader: null }];
  });
  for (let frame = firstFrame; frame < endFrame; frame += blockFrames) {
    const until = Math.min(frame + blockFrames, endFrame);
    const mixed = new Float64Array(channels * (until - frame));
    for (const voice of voices) {
      const from = Math.max(frame, voice.from);
      const end = Math.min(until, voice.until);
      if (from < end) {
        const { file, track } = voice;
        voice.reader ??= new TrackReader(file, track, settings, from, rate, tally);
        add(mixed, channels, from - frame, await voice.reader.take(end - from));
      }
      if (voice.until <= until || until === endFrame) {
        voice.reader?.close();
        voice.reader = null;
      }
    }
    yield new Uint8Array(mixed.buffer);
  }
}

function add(mixed: Float64Array, channels: 1 | 2, at: number, { left, right }: Stereo): void {
  for (let n = 0; n < left.length; n++) {
    const place = channels * (at + n);
    mixed[place] = (mixed[place] ?? 0) + (left[n] ?? 0);
    if (channels === 2) mixed[place + 1] = (mixed[place + 1] ?? 0) + (right[n] ?? 0);
  }
}
