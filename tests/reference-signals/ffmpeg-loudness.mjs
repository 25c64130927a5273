// @ts-check
import { runProgram } from './run-program.mjs';

/** @typedef {import('./loudness-signals.mjs').LoudnessSignal} LoudnessSignal */
/** @typedef {{ name: string, lufs: number, truePeak: number }} LoudnessReading */

/**
 * What ffmpeg's ebur128 meter reads of a program: integrated loudness and the larger channel's true
 * peak (full scale 1), both after the last whole 100 ms and in steps of 0.001.
 * @param {LoudnessSignal} signal
 * @returns {LoudnessReading}
 */
export function ffmpegLoudness(signal) {
  const quiet = ['-hide_banner', '-nostdin', '-loglevel', 'error'];
  const raw = ['-f', 'f32le', '-ar', `${signal.rate}`, '-ac', '2', '-i', 'pipe:0'];
  const meter = ['-af', 'ebur128=peak=true:metadata=1,ametadata=print:file=-', '-f', 'null', '-'];
  const { stdout } = runProgram('ffmpeg', [...quiet, ...raw, ...meter], interleaved(signal));
  const text = stdout.toString('utf8');
  const peaks = [lastReading(text, 'true_peaks_ch0'), lastReading(text, 'true_peaks_ch1')];
  return {
    name: signal.name,
    lufs: lastReading(text, 'I'),
    truePeak: Math.max(...peaks),
  };
}

/** @param {LoudnessSignal} signal */
function interleaved({ left, right }) {
  const both = new Float32Array(2 * left.length);
  for (let frame = 0; frame < left.length; frame++) {
    both[2 * frame] = left[frame] ?? 0;
    both[2 * frame + 1] = right[frame] ?? 0;
  }
  return new Uint8Array(both.buffer);
}

/**
 * @param {string} text
 * @param {string} key of the meter's metadata
 */
function lastReading(text, key) {
  const values = text.split('\n').filter((line) => line.startsWith(`lavfi.r128.${key}=`));
  const last = values.at(-1)?.split('=')[1];
  if (last === undefined) throw new Error(`the meter said nothing of ${key}`);
  return Number(last);
}
