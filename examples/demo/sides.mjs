// @ts-check
import { playChords } from './chords.mjs';
import {
  playBassLine,
  playHornChord,
  playStrokes,
  playSwells,
  playSyllables,
} from './passages.mjs';
import { blankTape } from './tape.mjs';

/**
 * Two sides of the Tin Heron Ensemble, which does not exist: its players are the formulas beside
 * this file.
 * @typedef {{ file: string, tape: import('./tape.mjs').Tape }} DemoSide
 */

/**
 * A mix as it should not arrive: loud horns and drum after quiet strings, a bass whose right
 * channel is turned over, and a voice full of s at the innermost turns.
 * @returns {DemoSide}
 */
export function roughSide() {
  const tape = blankTape(44_100, 300);
  playChords(tape, { start: 1, chords: 15, level: 0.006 });

  playHornChord(tape, { start: 62, seconds: 3.9, level: 0.9, attack: 0.05 });
  playChords(tape, { start: 66, chords: 19, level: 0.2 });
  playSwells(tape, { start: 66, chords: 19, level: 0.8 });
  playStrokes(tape, { start: 66, seconds: 76, level: 0.6 });

  playChords(tape, { start: 144, chords: 12, level: 0.2 });
  playBassLine(tape, { start: 144, chords: 12, level: 0.45, flipRight: true });

  playChords(tape, { start: 194, chords: 26, level: 0.15 });
  playBassLine(tape, { start: 194, chords: 26, level: 0.15 });
  playSyllables(tape, { start: 194, seconds: 104, level: 0.3, ess: 1.35 });
  return { file: 'tin-heron-a-rough-mix.wav', tape };
}

/**
 * The same players in a mix that asks nothing of the lathe.
 * @returns {DemoSide}
 */
export function calmSide() {
  const tape = blankTape(48_000, 200);
  playChords(tape, { start: 1, chords: 49, level: 0.12 });
  playBassLine(tape, { start: 1, chords: 49, level: 0.05 });
  playSwells(tape, { start: 41, chords: 16, level: 0.12 });
  playStrokes(tape, { start: 41, seconds: 64, level: 0.06 });
  playSyllables(tape, { start: 110, seconds: 80, level: 0.1, ess: 0.01 });
  return { file: 'tin-heron-b-calm-mix.wav', tape };
}
