// @ts-check
import { playBass, playBassDrum } from './bass.mjs';
import { playBrass } from './brass.mjs';
import { CHORD_SECONDS, hzOf, rootOf } from './chords.mjs';
import { playEss, playVowel } from './voice.mjs';

/** @typedef {import('./tape.mjs').Tape} Tape */

/**
 * A bowed bass under the chords.
 * @param {Tape} tape
 * @param {{ start: number, chords: number, level: number, flipRight?: boolean }} passage
 */
export function playBassLine(tape, { start, chords, level, flipRight = false }) {
  for (let index = 0; index < chords; index++) {
    for (const beat of [0, 2]) {
      const hz = rootOf(index) * (beat === 0 ? 1 : 1.5);
      const at = start + index * CHORD_SECONDS + beat;
      playBass(tape, { start: at, seconds: 1.9, hz, level, flipRight });
    }
  }
}

/**
 * Horns swell into the end of every second chord.
 * @param {Tape} tape
 * @param {{ start: number, chords: number, level: number }} passage
 */
export function playSwells(tape, { start, chords, level }) {
  for (let index = 1; index < chords; index += 2) {
    const at = start + index * CHORD_SECONDS;
    playHornChord(tape, { start: at, seconds: CHORD_SECONDS, level, attack: 2.4 });
  }
}

/**
 * Three horns at once.
 * @param {Tape} tape
 * @param {{ start: number, seconds: number, level: number, attack: number }} chord
 */
export function playHornChord(tape, { level, ...note }) {
  playBrass(tape, { ...note, hz: hzOf(5), level: level / 3, side: -0.4 });
  playBrass(tape, { ...note, hz: hzOf(12), level: level / 3, side: 0.4 });
  playBrass(tape, { ...note, hz: hzOf(20), level: level / 3, side: 0 });
}

/**
 * Strokes of the bass drum, uneven so that no turn repeats the one before.
 * @param {Tape} tape
 * @param {{ start: number, seconds: number, level: number }} passage
 */
export function playStrokes(tape, { start, seconds, level }) {
  for (let stroke = 0; stroke * 1.7 < seconds - 1; stroke++) {
    const late = 0.21 * (stroke % 3);
    playBassDrum(tape, { start: start + stroke * 1.7 + late, level });
  }
}

/**
 * A voice that sings a syllable a second, each begun with an s.
 * @param {Tape} tape
 * @param {{ start: number, seconds: number, level: number, ess: number }} passage
 */
export function playSyllables(tape, { start, seconds, level, ess }) {
  const tune = [12, 15, 17, 12, 10, 12, 8, 7];
  for (let syllable = 0; syllable + 1 < seconds; syllable++) {
    const at = start + syllable;
    const hz = hzOf(tune[syllable % tune.length] ?? 12);
    playEss(tape, { start: at, seconds: 0.16, level: ess, seed: syllable + 1 });
    playVowel(tape, { start: at + 0.13, seconds: 0.8, hz, level });
  }
}
