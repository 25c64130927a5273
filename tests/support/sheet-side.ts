import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { analysePart } from '../../src/analysis/analyse-part.js';
import { joinParts } from '../../src/analysis/join-parts.js';
import type { MotionSummary } from '../../src/analysis/motion.js';
import type { PartMotion } from '../../src/analysis/part-motion.js';
import { partsOf } from '../../src/analysis/parts.js';
import type { SampleFormat } from '../../src/analysis/sample-format.js';
import type { Stereo } from '../../src/analysis/stereo.js';
import { type OpenSide, type SideInput, withSide } from '../../src/open-side.js';
import type { ProgramSide } from '../../src/program/program-side.js';
import type { Settings } from '../../src/settings.js';
import { layOutSide } from '../../src/sheet/lay-out-side.js';
import { parseSheet } from '../../src/sheet/read-sheet.js';
import { framesOf, settingsWith } from '../analysis/summary-of.js';
import { chunk, formatChunk, riff } from './wav-writer.js';

/** Writes a program into a WAV file of a folder, or its first channel; gives the file's path. */
export async function writeWav(
  folder: string,
  name: string,
  program: Stereo,
  format: SampleFormat,
): Promise<string> {
  const path = join(folder, name);
  await writeFile(path, riff([formatChunk(format), chunk('data', framesOf(program, format))]));
  return path;
}

/** A side of a sheet that lies in a folder, its name left out or not, with its files looked at. */
export async function layOut(
  folder: string,
  side: object,
  settings: Settings = settingsWith(),
): Promise<ProgramSide> {
  const sheet = { format: 'furrow.sheet/1', sides: [{ name: 'A', ...side }] };
  const file = parseSheet(join(folder, 'sheet.json'), JSON.stringify(sheet));
  const laid = await layOutSide(file, 0, settings);
  if (!('side' in laid)) throw laid.failures[0];
  return laid.side;
}

/** The motion summary of a side, measured in parts of so many seconds. */
export async function summaryOfSide(
  input: SideInput,
  settings: Settings,
  partSeconds?: number,
): Promise<MotionSummary> {
  return await withSide(input, settings, async ({ source, analysed }) => {
    const { format, frames } = source;
    const parts: PartMotion[] = [];
    for (const part of partsOf(format, frames, analysed, partSeconds)) {
      parts.push(await analysePart(source, analysed, part));
    }
    return joinParts(parts, format, frames, analysed);
  });
}

/** All raw frames of a side's program, read in blocks of so many bytes. */
export async function framesOfSide(input: SideInput, blockBytes?: number): Promise<Buffer> {
  return await withSide(input, settingsWith(), async ({ source }: OpenSide) => {
    const blocks: Uint8Array[] = [];
    const range = blockBytes === undefined ? {} : { blockBytes };
    for await (const block of source.read(range)) blocks.push(block.slice());
    return Buffer.concat(blocks);
  });
}
