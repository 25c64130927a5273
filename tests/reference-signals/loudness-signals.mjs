// @ts-check
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
    quarterRateSine(rate),
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
 * A quarter of the sample rate with the samples on the slopes: −3.01 dB where sampled, 0.7 between.
 * It fades, so that no program's resampler overshoots at its ends.
 * @param {number} rate
 * @returns {LoudnessSignal}
 */
function quarterRateSine(rate) {
  const frames = 2 * rate;
  const sine = fill(rate, 2, (frame) => {
    const fade = Math.sin((Math.PI * frame) / (frames - 1)) ** 2;
    return 0.7 * fade * Math.sin((Math.PI / 2) * frame + Math.PI / 4);
  });
  return { name: `fs/4 between samples, ${rate} Hz`, rate, left: sine, right: sine };
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

/**
 * Even noise in −1 … 1 by a 32-bit xorshift.
 * @param {number} seed not 0
 * Source: G. Marsaglia, Xorshift RNGs, 2003.
 */
export function seededNoise(seed) {
  let state = seed;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return state / 2 ** 31;
  };
}
