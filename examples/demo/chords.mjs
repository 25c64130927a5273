// @ts-check
import { playStrings } from './strings.mjs';

/** Chords of a slow round, as semitones above the A at 110 Hz. */
const ROUND = [
  [0, 7, 12, 15],
  [-4, 8, 12, 15],
  [-7, 5, 12, 20],
  [-2, 10, 14, 17],
];

/** @param {number} semitones above the A at 110 Hz */
export function hzOf(semitones) {
  return 110 * 2 ** (semitones / 12);
}

/**
 * Root of the chord that sounds at a time, two octaves down, Hz.
 * @param {number} index of the chord
 */
export function rootOf(index) {
  return hzOf((ROUND[index % ROUND.length]?.[0] ?? 0) - 12);
}

/** Seconds that a chord lasts. */
export const CHORD_SECONDS = 4;

/**
 * Strings hold one chord after the other.
 * @param {import('./tape.mjs').Tape} tape
 * @param {{ start: number, chords: number, level: number }} passage
 */
export function playChords(tape, { start, chords, level }) {
  for (let index = 0; index < chords; index++) {
    for (const semitones of ROUND[index % ROUND.length] ?? []) {
      const at = start + index * CHORD_SECONDS;
      playStrings(tape, {
        start: at,
        seconds: CHORD_SECONDS + 0.6,
        hz: hzOf(semitones),
        level: level / 4,
      });
    }
  }
}
