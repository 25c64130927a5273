// @ts-check
/**
 * What the instruments play onto.
 * @typedef {object} Tape
 * @property {number} rate frames a second
 * @property {Float64Array} left full scale 1
 * @property {Float64Array} right
 */

/**
 * @param {number} rate
 * @param {number} seconds
 * @returns {Tape} silence
 */
export function blankTape(rate, seconds) {
  const frames = Math.round(rate * seconds);
  return { rate, left: new Float64Array(frames), right: new Float64Array(frames) };
}

/**
 * Adds a sound frame by frame; what would lie past the end is left out.
 * @param {Tape} tape
 * @param {number} start seconds
 * @param {number} seconds
 * @param {(t: number) => readonly [left: number, right: number]} sound of seconds since its start
 */
export function play(tape, start, seconds, sound) {
  const first = Math.round(start * tape.rate);
  const count = Math.min(Math.round(seconds * tape.rate), tape.left.length - first);
  for (let frame = 0; frame < count; frame++) {
    const [left, right] = sound(frame / tape.rate);
    tape.left[first + frame] = (tape.left[first + frame] ?? 0) + left;
    tape.right[first + frame] = (tape.right[first + frame] ?? 0) + right;
  }
}

/**
 * Rises as a raised cosine over `attack`, holds, falls likewise over `release`; the two do not
 * overlap.
 * @param {number} t
 * @param {number} seconds whole length
 * @param {number} attack
 * @param {number} release
 */
export function swell(t, seconds, attack, release) {
  const nearest = Math.min(t / attack, (seconds - t) / release);
  return nearest >= 1 ? 1 : 0.5 - 0.5 * Math.cos(Math.PI * Math.max(0, nearest));
}
