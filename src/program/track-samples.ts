import { convertSamples } from '../analysis/convert-samples.js';
import type { FrameSource } from '../analysis/frame-source.js';
import { frameBytes } from '../analysis/sample-format.js';
import { mapStereo, type Stereo } from '../analysis/stereo.js';
import type { ProgramTrack } from './program-side.js';

/** Which frames of a track, counted from its first; silence lies before and behind it. */
export interface TrackSpan {
  readonly from: number;
  readonly until: number;
}

/**
 * A track's samples over a stretch, full scale 1, as they lie in its file; mono goes to both.
 * @throws InputError `bad-sample` where one is no finite number or far beyond full scale
 */
export async function fileSamples(
  file: FrameSource,
  track: ProgramTrack,
  { from, until }: TrackSpan,
): Promise<Stereo> {
  const samples = { left: new Float64Array(until - from), right: new Float64Array(until - from) };
  const firstFrame = Math.max(track.firstFrame + from, track.firstFrame);
  const endFrame = Math.min(track.firstFrame + until, track.endFrame);
  if (firstFrame >= endFrame) return samples;
  let frame = firstFrame;
  for await (const block of file.read({ firstFrame, endFrame })) {
    const both = new Float64Array((2 * block.length) / frameBytes(file.format));
    const unfit = convertSamples(block, file.format, both);
    if (unfit >= 0) throw file.refuse(frame + unfit);
    const at = frame - track.firstFrame - from;
    samples.left.set(everyOther(both, 0), at);
    samples.right.set(everyOther(both, 1), at);
    frame += both.length / 2;
  }
  return samples;
}

function everyOther(both: Float64Array, first: 0 | 1): Float64Array {
  const one = new Float64Array(both.length / 2);
  for (let n = 0; n < one.length; n++) one[n] = both[2 * n + first] ?? 0;
  return one;
}

/**
 * The same as they are to be cut: trimmed and faded. A fade is a raised cosine,
 * ½·(1 − cos πn/N) for n = 0 … N from the track's first frame on, mirrored at its last.
 */
export function shapeSamples(samples: Stereo, track: ProgramTrack, { from }: TrackSpan): Stereo {
  const { gain, fadeInFrames, fadeOutFrames } = track;
  if (gain === 1 && fadeInFrames === 0 && fadeOutFrames === 0) return samples;
  const last = track.endFrame - track.firstFrame - 1;
  const factors = new Float64Array(samples.left.length);
  for (let n = 0; n < factors.length; n++) {
    const frame = from + n;
    factors[n] = gain * rising(frame, fadeInFrames) * rising(last - frame, fadeOutFrames);
  }
  return mapStereo(samples, (channel) => multiplied(channel, factors));
}

function multiplied(channel: Float64Array, factors: Float64Array): Float64Array {
  const product = new Float64Array(channel.length);
  for (let n = 0; n < product.length; n++) product[n] = (channel[n] ?? 0) * (factors[n] ?? 0);
  return product;
}

function rising(frame: number, frames: number): number {
  if (frame >= frames) return 1;
  return frame <= 0 ? 0 : 0.5 - 0.5 * Math.cos((Math.PI * frame) / frames);
}
