// @ts-check
import { seededNoise } from '../../examples/demo/seeded-noise.mjs';

/**
 * @typedef {object} LoudnessSignal
 * @property {string} name what it tells
 * @property {number} rate Hz
 * @property {Float32Array} left full scale 1
 * @property {Float32Array} right
 */

/** Short stereo programs for the meters; the same numbers on every machine. */
export function loudnessSignals() {
  return [44_100, 48_000, 96_000].flatMap((rate) => [
    calibrationSine(rate),
    betweenSamples(rate),
    steppedNoise(rate),
  ]);
}

/**
 * 997 Hz at −23 dBFS peak on both channels: −23.0 LUFS by BS.1770, whose gain is 0.691 dB there.
 * @param {number} rate
 * @returns {LoudnessSignal}
 */
function calibrationSine(rate) {
  const amplitude = 10 ** (-23 / 20);
  const sine = fill(rate, 5, (frame) => amplitude * Math.sin((2 * Math.PI * 997 * frame) / rate));
  return { name: `997 Hz at -23 dBFS, ${rate} Hz`, rate, left: sine, right: sine };
}

/**
 * A quarter of the sample rate (at 96 kHz an eighth, so as to stay in the audible band) with no
 * sample on a peak: −3.01 dB (−0.69 dB) where sampled, 0.7 between. It fades, so that no
 * program's resampler overshoots at its ends.
 * @param {number} rate
 * @returns {LoudnessSignal}
 */
function betweenSamples(rate) {
  const frames = 2 * rate;
  const step = (2 * Math.PI * Math.min(rate / 4, 12_000)) / rate;
  const sine = fill(rate, 2, (frame) => {
    const fade = Math.sin((Math.PI * frame) / (frames - 1)) ** 2;
    return 0.7 * fade * Math.sin(step * (frame + 0.5));
  });
  return { name: `peaks between samples, ${rate} Hz`, rate, left: sine, right: sine };
}

/**
 * Noise in three steps of level, 4 s each: the last lies under the relative gate; the channels
 * differ. Two poles at 1 kHz keep it out of the octave that only one of the rates has.
 * @param {number} rate
 * @returns {LoudnessSignal}
 */
function steppedNoise(rate) {
  const steps = [0, -10, -35].map((db) => 10 ** (db / 20));
  const [left, right] = [darkNoise(41, rate), darkNoise(97, rate)];
  const level = (/** @type {number} */ frame) => steps[Math.floor(frame / (4 * rate))] ?? 0;
  return {
    name: `noise in three steps, ${rate} Hz`,
    rate,
    left: fill(rate, 12, (frame) => level(frame) * left()),
    right: fill(rate, 12, (frame) => level(frame) * 0.5 * right()),
  };
}

/**
 * @param {number} seed
 * @param {number} rate
 */
function darkNoise(seed, rate) {
  const white = seededNoise(seed);
  const share = 1 - Math.exp((-2 * Math.PI * 1000) / rate);
  let [once, twice] = [0, 0];
  return () => {
    once += share * (white() - once);
    twice += share * (once - twice);
    return twice;
  };
}

/**
 * @param {number} rate
 * @param {number} seconds
 * @param {(frame: number) => number} value
 */
function fill(rate, seconds, value) {
  return Float32Array.from({ length: seconds * rate }, (_, frame) => value(frame));
}
