// @ts-check
import { play, swell } from './tape.mjs';
import { harmonics, waveform } from './waveform.mjs';

const plucked = waveform(harmonics(5, (k) => 1 / k ** 2.2));

/**
 * A bowed bass.
 * @param {import('./tape.mjs').Tape} tape
 * @param {{ start: number, seconds: number, hz: number, level: number, flipRight: boolean }} note
 *   flipRight: the right channel was wired the wrong way round
 */
export function playBass(tape, { start, seconds, hz, level, flipRight }) {
  const right = flipRight ? -1 : 1;
  play(tape, start, seconds, (t) => {
    const value = level * swell(t, seconds, 0.15, 0.3) * plucked(hz * t);
    return [value, right * value];
  });
}

/**
 * A bass drum: a sine that falls from 70 to 46 Hz and dies away.
 * @param {import('./tape.mjs').Tape} tape
 * @param {{ start: number, level: number }} stroke
 */
export function playBassDrum(tape, { start, level }) {
  play(tape, start, 0.9, (t) => {
    const cycles = 46 * t + (24 / 9) * (1 - Math.exp(-9 * t));
    const value = level * swell(t, 0.9, 0.004, 0.3) * Math.exp(-4 * t);
    const tone = value * Math.sin(2 * Math.PI * cycles);
    return [tone, tone];
  });
}
