import { createAnalyser } from '../../src/analysis/analyse.js';
import type { MotionSummary } from '../../src/analysis/motion.js';
import { frameBytes, type SampleFormat } from '../../src/analysis/sample-format.js';
import type { Stereo } from '../../src/analysis/stereo.js';
import { resolveProfile } from '../../src/profile/resolve-profile.js';
import type { Settings } from '../../src/settings.js';

/** The default profile with what a test wants to be different. */
export function settingsWith(changes: Partial<Settings> = {}): Settings {
  return { ...resolveProfile(), ...changes };
}

/** k of a profile: the 45° peak velocity of one channel at full scale and 1 kHz, by hand. */
export function fullScaleVelocityOf({ referenceVelocity, referenceDbfs }: Settings): number {
  return (referenceVelocity / Math.sqrt(2)) * 10 ** (-referenceDbfs / 20);
}

export function doubles(sampleRate: number, channels: 1 | 2 = 2): SampleFormat {
  return { encoding: 'float', bitDepth: 64, channels, sampleRate };
}

/** Raw frames as a file holds them; integers are rounded and clipped, mono is the left. */
export function framesOf(program: Stereo, format: SampleFormat): Uint8Array {
  const bytes = new Uint8Array(program.left.length * frameBytes(format));
  const view = new DataView(bytes.buffer);
  const word = format.bitDepth / 8;
  const channels = [program.left, program.right].slice(0, format.channels);
  for (let frame = 0; frame < program.left.length; frame++) {
    for (const [channel, signal] of channels.entries()) {
      write(view, (frame * format.channels + channel) * word, signal[frame] ?? 0, format);
    }
  }
  return bytes;
}

function write(view: DataView, at: number, value: number, format: SampleFormat): void {
  const { encoding, bitDepth } = format;
  if (encoding === 'float') {
    if (bitDepth === 64) view.setFloat64(at, value, true);
    else view.setFloat32(at, value, true);
    return;
  }
  const full = 2 ** (bitDepth - 1);
  const code = Math.max(-full, Math.min(full - 1, Math.round(value * full)));
  if (bitDepth === 8) view.setUint8(at, code + full);
  else if (bitDepth === 16) view.setInt16(at, code, true);
  else if (bitDepth === 32) view.setInt32(at, code, true);
  else {
    view.setUint16(at, code & 0xffff, true);
    view.setInt8(at + 2, code >> 16);
  }
}

/** The one pass over raw frames, pushed in blocks of these lengths in bytes, or all at once. */
export async function summaryOfFrames(
  bytes: Uint8Array,
  format: SampleFormat,
  settings: Settings,
  blocks: readonly number[] = [bytes.length],
): Promise<MotionSummary> {
  const frames = bytes.length / frameBytes(format);
  const analyser = await createAnalyser(format, frames, settings);
  let at = 0;
  for (const length of blocks) {
    const unfit = analyser.push(bytes.subarray(at, at + length));
    if (unfit >= 0) throw new Error(`frame ${unfit} is unfit`);
    at += length;
  }
  if (at !== bytes.length) throw new Error(`the blocks hold ${at} of ${bytes.length} bytes`);
  return analyser.finish();
}

/** The one pass over a program in doubles. */
export async function summaryOf(
  program: Stereo,
  sampleRate: number,
  settings: Settings,
): Promise<MotionSummary> {
  const format = doubles(sampleRate);
  return await summaryOfFrames(framesOf(program, format), format, settings);
}
