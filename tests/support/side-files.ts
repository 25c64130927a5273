import { inventedProgram, louderBetween, RATE } from './invented-program.js';
import { chunk, formatChunk, riff } from './wav-writer.js';

/** Name and bytes of a file. */
export type SideFile = readonly [name: string, bytes: Uint8Array | string];

/** A lathe of one narrow pitch, on which the programs of below overcut. */
export const NARROW_LATHE: SideFile = [
  'furrow.profile.json',
  '{ "executes": "fixed", "basePitch": "90um" }',
];

/** A program that ended at once would be a jump. */
const FADE_FRAMES = RATE / 100;

/** An invented program of so many seconds as a 16-bit stereo file. */
export function programWav(seconds: number, gainDb = 0, seed = 1): Uint8Array {
  return riff([formatChunk(), chunk('data', programBytes(seconds, gainDb, seed))]);
}

/** The same ten seconds over and over: long, and made in no time. */
export function longWav(seconds: number): Uint8Array {
  const once = programBytes(10, 0, 1);
  const whole = new Uint8Array(4 * RATE * seconds);
  for (let at = 0; at < whole.length; at += once.length) {
    whole.set(once.subarray(0, Math.min(once.length, whole.length - at)), at);
  }
  return riff([formatChunk(), chunk('data', whole)]);
}

/** One channel of it. */
export function monoWav(seconds: number): Uint8Array {
  const words = new Int16Array(programBytes(seconds, 0, 1).buffer).filter((_, at) => at % 2 === 0);
  return riff([formatChunk({ channels: 1 }), chunk('data', new Uint8Array(words.buffer))]);
}

export function silentWav(seconds: number): Uint8Array {
  return riff([formatChunk(), chunk('data', new Uint8Array(4 * RATE * seconds))]);
}

/** What a folder of premasters may hold: good, silent, mono, cut short, none at all. */
export function mixedSides(): SideFile[] {
  return [
    ['1 good.wav', programWav(4)],
    ['2 loud.wav', programWav(4, 8)],
    ['3 silent.wav', silentWav(3)],
    ['4 mono.wav', monoWav(3)],
    ['5 cut short.wav', programWav(4).subarray(0, 300_000)],
    ['6 no sound.wav', 'cutting notes, not sound'],
    ['10 last.wav', programWav(3, -6)],
  ];
}

function programBytes(seconds: number, gainDb: number, seed: number): Uint8Array {
  const { left, right } = louderBetween(inventedProgram(seconds, seed), gainDb);
  const words = Int16Array.from({ length: 2 * left.length }, (_, word) => {
    const value = (word % 2 === 0 ? left : right)[word >> 1] ?? 0;
    const gain = Math.min(1, (left.length - (word >> 1)) / FADE_FRAMES);
    return Math.round(32_767 * gain * Math.min(1, Math.max(-1, value)));
  });
  return new Uint8Array(words.buffer);
}
