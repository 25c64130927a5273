import type { ProgramSide } from '../../src/program/program-side.js';
import type { Settings } from '../../src/settings.js';
import { addTone, HARD_LATHE, halved, writeProgram } from './fit-side.js';
import { inventedProgram } from './invented-program.js';
import { settingsWith } from './model-settings.js';
import { layOut } from './sheet-side.js';

/** A lathe on which the joint of the first two tracks overcuts and the last one bends too tight. */
export const ALBUM_LATHE: Settings = settingsWith(HARD_LATHE);

/** Tracks of the album, and the gap before each. */
export const ALBUM = [
  { name: 'Slate', file: 'slate.wav' },
  { name: 'Chalk', file: 'chalk.wav', gapSeconds: 0.5 },
  { name: 'Flint', file: 'flint.wav', gapSeconds: 2 },
];

/**
 * Three invented tracks: one that ends with loud bass, one that begins with some, so that they meet
 * across the gap, and one full of treble.
 */
export async function writeAlbum(folder: string): Promise<void> {
  const slate = inventedProgram(8, 1);
  addTone(slate, { from: 6.4, lasts: 1.1, hertz: 58.1, amplitude: 0.8 });
  await writeProgram(folder, 'slate.wav', halved(slate));
  const chalk = inventedProgram(8, 2);
  addTone(chalk, { from: 0.05, lasts: 1.1, hertz: 47.3, amplitude: 0.8 });
  await writeProgram(folder, 'chalk.wav', halved(chalk));
  const flint = inventedProgram(8, 3);
  addTone(flint, { from: 3, lasts: 1.5, hertz: 7100, amplitude: FLINT_TREBLE });
  await writeProgram(folder, 'flint.wav', halved(flint));
}

/** How loud the treble is: a little too much at its place, and not at the outermost one. */
const FLINT_TREBLE = 0.503;

export async function albumSide(
  folder: string,
  tracks: readonly object[] = ALBUM,
): Promise<ProgramSide> {
  return await layOut(folder, { tracks }, ALBUM_LATHE);
}
