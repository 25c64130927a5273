import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { FrameSource } from '../../src/analysis/frame-source.js';
import { withSound } from '../../src/analysis/open-sound.js';
import type { Stereo } from '../../src/analysis/stereo.js';
import type { SideFit } from '../../src/fit/fit-result.js';
import { type FitRequest, fitSide } from '../../src/fit/fit-side.js';
import { type MeasuredSide, measureSide } from '../../src/fit/measured-side.js';
import { inlineFitPool } from '../../src/fit-pool.js';
import { forecastFile } from '../../src/forecast-side.js';
import type { SideForecast } from '../../src/model/forecast-types.js';
import type { SideInput } from '../../src/open-side.js';
import type { Settings } from '../../src/settings.js';
import { inventedProgram, RATE } from './invented-program.js';
import { wavBytes } from './wav-writer.js';

/** A program as a file of 64-bit floats. */
export async function writeProgram(folder: string, name: string, program: Stereo): Promise<string> {
  const path = join(folder, name);
  const { left, right } = program;
  const words = new Float64Array(2 * left.length);
  for (const [frame, value] of left.entries()) words[2 * frame] = value;
  for (const [frame, value] of right.entries()) words[2 * frame + 1] = value;
  const format = { encoding: 'float', bitDepth: 64, sampleRate: RATE } as const;
  await writeFile(path, wavBytes({ ...format, words }));
  return path;
}

export async function measured(path: SideInput, settings: Settings): Promise<MeasuredSide> {
  const progress = new BigInt64Array(new SharedArrayBuffer(8));
  return await measureSide(path, settings, inlineFitPool(), progress);
}

export async function fitted(
  path: SideInput,
  settings: Settings,
  request: Partial<FitRequest> = {},
): Promise<SideFit> {
  const levelDb = request.levelDb ?? 0;
  return await fitSide(await measured(path, settings), {
    wantDb: levelDb,
    planner: 'turn-ahead',
    ...request,
    levelDb,
  });
}

/** The forecast of a file by itself. */
export async function forecastOf(
  path: SideInput,
  settings: Settings,
  levelDb = 0,
): Promise<SideForecast> {
  return (await forecastFile(path, settings, { levelDb, planner: 'turn-ahead' })).forecast;
}

/** Every frame of a source, by channel; 64-bit floats in two channels. */
export async function framesOf(
  source: FrameSource,
  firstFrame = 0,
  endFrame = source.frames,
  blockBytes = 2 ** 18,
): Promise<Stereo> {
  const both = new Float64Array(2 * (endFrame - firstFrame));
  let at = 0;
  for await (const block of source.read({ firstFrame, endFrame, blockBytes })) {
    const values = new Float64Array(block.slice().buffer);
    both.set(values, at);
    at += values.length;
  }
  return {
    left: both.filter((_, word) => word % 2 === 0),
    right: both.filter((_, word) => word % 2 === 1),
  };
}

export async function withFrames<T>(
  path: string,
  use: (source: FrameSource) => Promise<T>,
): Promise<T> {
  return await withSound(path, async ({ source }) => await use(source));
}

/** A program with three hard passages: wide bass, loud bass, loud treble. */
export function hardProgram(): Stereo {
  const program = inventedProgram(26, 3);
  addTone(program, { from: 5, lasts: 2, hertz: 55, amplitude: 0.36, sign: -1 });
  addTone(program, { from: 12, lasts: 2, hertz: 58.1, amplitude: 1.2 });
  addTone(program, { from: 20, lasts: 1.5, hertz: 7100, amplitude: 0.52 });
  return halved(program);
}

/** Adds a tone that swells and fades; it is in both channels, with `sign` −1 against each other. */
export function addTone(
  { left, right }: Stereo,
  tone: {
    readonly from: number;
    readonly lasts: number;
    readonly hertz: number;
    readonly amplitude: number;
    readonly sign?: -1;
  },
): void {
  const { from, lasts, hertz, amplitude, sign = 1 } = tone;
  for (let frame = 0; frame < lasts * RATE; frame++) {
    const place = Math.round(from * RATE) + frame;
    const loudness = Math.sin((Math.PI * frame) / (lasts * RATE));
    const value = amplitude * loudness * Math.sin((2 * Math.PI * hertz * frame) / RATE);
    left[place]! += value;
    right[place]! += sign * value;
  }
}

export function halved({ left, right }: Stereo): Stereo {
  return { left: left.map((value) => 0.5 * value), right: right.map((value) => 0.5 * value) };
}

/** A lathe of one narrow pitch near the end of a side, on which each of them is a fault. */
export const HARD_LATHE: Partial<Settings> = {
  executes: 'fixed',
  basePitch: 110e-6,
  startDiameter: 0.128,
};
