// @ts-check
import { seededNoise } from './seeded-noise.mjs';
import { play, swell } from './tape.mjs';
import { harmonics, waveform } from './waveform.mjs';

const vowel = waveform(harmonics(16, (k) => (0.5 / k) * (1 + 1.5 * Math.exp(-((k - 4) ** 2) / 3))));

/**
 * A sung vowel, in the middle.
 * @param {import('./tape.mjs').Tape} tape
 * @param {{ start: number, seconds: number, hz: number, level: number }} note
 */
export function playVowel(tape, { start, seconds, hz, level }) {
  play(tape, start, seconds, (t) => {
    const value = level * swell(t, seconds, 0.07, 0.1) * vowel(hz * t + 0.02 * Math.sin(34 * t));
    return [value, value];
  });
}

/**
 * An s: noise through a resonance at 7.5 kHz, in the middle.
 * @param {import('./tape.mjs').Tape} tape
 * @param {{ start: number, seconds: number, level: number, seed: number }} sound
 */
export function playEss(tape, { start, seconds, level, seed }) {
  const noise = seededNoise(seed);
  const radius = 0.9;
  const turn = 2 * radius * Math.cos((2 * Math.PI * 7500) / tape.rate);
  let [last, beforeLast] = [0, 0];
  play(tape, start, seconds, (t) => {
    const resonant = (1 - radius) * noise() + turn * last - radius * radius * beforeLast;
    beforeLast = last;
    last = resonant;
    const value = level * swell(t, seconds, 0.03, 0.04) * resonant;
    return [value, value];
  });
}
