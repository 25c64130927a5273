// @ts-check
import { play, swell } from './tape.mjs';
import { harmonics, waveform } from './waveform.mjs';

const bowed = waveform(harmonics(12, (k) => 0.6 / k ** 1.4));

/**
 * A desk of strings, wide: the two channels play a few cents apart.
 * @param {import('./tape.mjs').Tape} tape
 * @param {{ start: number, seconds: number, hz: number, level: number }} note
 */
export function playStrings(tape, { start, seconds, hz, level }) {
  play(tape, start, seconds, (t) => {
    const loudness = level * swell(t, seconds, 0.8, 0.9);
    const vibrato = (0.0015 / (2 * Math.PI * 5.3)) * Math.sin(2 * Math.PI * 5.3 * t);
    return [
      loudness * bowed(hz * 1.0015 * (t + vibrato)),
      loudness * bowed(hz * 0.9985 * (t - vibrato) + 0.37),
    ];
  });
}
