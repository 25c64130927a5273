// @ts-check
import { play, swell } from './tape.mjs';
import { harmonics, waveform } from './waveform.mjs';

const dark = waveform(harmonics(6, (k) => 0.7 / k ** 2));
const bright = waveform(harmonics(18, (k) => 0.5 / k ** 1.15));

/**
 * Horns that swell over `attack` seconds: the louder they blow, the brighter. A little to one side.
 * @param {import('./tape.mjs').Tape} tape
 * @param {{ start: number, seconds: number, hz: number, level: number, attack: number,
 *   side: number }} note side: −1 left … 1 right
 */
export function playBrass(tape, { start, seconds, hz, level, attack, side }) {
  const [left, right] = [Math.sqrt((1 - side) / 2), Math.sqrt((1 + side) / 2)];
  play(tape, start, seconds, (t) => {
    const force = swell(t, seconds, attack, 0.12);
    const tone = (1 - force) * dark(hz * t) + force * bright(hz * t);
    return [left * level * force * tone, right * level * force * tone];
  });
}
