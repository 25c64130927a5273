import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect } from 'vitest';
import { withWav } from '../../src/analysis/wav-file.js';
import type { CueMark } from '../../src/report/cue-copy/cue-mark.js';
import { writeCueCopy } from '../../src/report/cue-copy/write-cue-copy.js';
import { type ReadForm, readCues } from './riff-chunks.js';
import { temporaryFolder } from './temporary-folder.js';
import { ascii, chunk, joined } from './wav-writer.js';

/** Words of a hundred stereo frames. */
export const WORDS: readonly number[] = Array.from({ length: 200 }, (_, word) => 100 * word - 9999);

export const MARKS: readonly CueMark[] = [
  { frame: 70, length: 29, label: 'overcut', note: 'fault: Overcut at 00:00.0.' },
  { frame: 0, length: 0, label: 'land 4.8 µm', note: '' },
];
/** MARKS as they are to be read. */
export const WANTED = [
  { frame: 0, length: 0, label: 'land 4.8 um', note: null },
  { frame: 70, length: 29, label: 'overcut', note: 'fault: Overcut at 00:00.0.' },
];

/** Chunks that a copy has to keep; the first is of an odd size. */
export const BEXT = chunk(
  'bext',
  Uint8Array.from({ length: 603 }, (_, byte) => byte % 251),
);
export const INFO = chunk('LIST', joined([ascii('INFO'), chunk('IART', ascii('none\0'))]));

/** The copy of a file of these bytes, which itself must stay as it is. */
export async function copied(bytes: Uint8Array, marks = MARKS): Promise<Buffer> {
  const folder = await temporaryFolder();
  const path = join(folder, 'side.wav');
  await writeFile(path, bytes);
  await withWav(path, (wav) => writeCueCopy(wav, join(folder, 'copy.wav'), marks));
  expect(await readFile(path)).toEqual(Buffer.from(bytes));
  expect(await readdir(folder)).toEqual(['copy.wav', 'side.wav']);
  return await readFile(join(folder, 'copy.wav'));
}

/** What the marks of a form say, but for the numbers that are their names. */
export function withoutNames(form: ReadForm) {
  return readCues(form).map(({ frame, length, label, note }) => ({ frame, length, label, note }));
}

/** A cue point by the letter. */
export function point(name: number, frame: number): Uint8Array {
  const bytes = Buffer.alloc(24);
  bytes.writeUInt32LE(name, 0);
  bytes.writeUInt32LE(frame, 4);
  bytes.write('data', 8);
  bytes.writeUInt32LE(frame, 20);
  return bytes;
}

/** A number of 32 bits under 256. */
export function count(value: number): Uint8Array {
  return Uint8Array.of(value, 0, 0, 0);
}
