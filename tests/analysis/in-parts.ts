import { joinParts } from '../../src/analysis/join-parts.js';
import type { MotionSummary } from '../../src/analysis/motion.js';
import { createPartAnalyser } from '../../src/analysis/part-analyser.js';
import type { PartMotion } from '../../src/analysis/part-motion.js';
import { type Part, partsOf } from '../../src/analysis/parts.js';
import { frameBytes, type SampleFormat } from '../../src/analysis/sample-format.js';
import type { Settings } from '../../src/settings.js';

/** A program of raw frames that is to be measured in parts. */
export interface CutProgram {
  readonly bytes: Uint8Array;
  readonly format: SampleFormat;
  readonly settings: Settings;
  /** What a part lasts. */
  readonly partSeconds: number;
}

export function partsOfProgram({
  bytes,
  format,
  settings,
  partSeconds,
}: CutProgram): readonly Part[] {
  return partsOf(format, bytes.length / frameBytes(format), settings, partSeconds);
}

/** One part of it, pushed in blocks of so many frames. */
export async function partMotion(
  { bytes, format, settings }: CutProgram,
  part: Part,
  blockFrames = part.readUntil - part.readFrom,
): Promise<PartMotion> {
  const size = frameBytes(format);
  const analyser = await createPartAnalyser(format, bytes.length / size, part, settings);
  for (let frame = part.readFrom; frame < part.readUntil; frame += blockFrames) {
    const end = Math.min(frame + blockFrames, part.readUntil);
    const unfit = analyser.push(bytes.subarray(frame * size, end * size));
    if (unfit >= 0) throw new Error(`frame ${unfit} is unfit`);
  }
  return analyser.finish();
}

/** All parts, each measured for itself, joined. */
export async function summaryInParts(program: CutProgram): Promise<MotionSummary> {
  const parts: PartMotion[] = [];
  for (const part of partsOfProgram(program)) parts.push(await partMotion(program, part));
  return joined(program, parts);
}

export function joined(program: CutProgram, parts: readonly PartMotion[]): MotionSummary {
  const { bytes, format, settings } = program;
  return joinParts(parts, format, bytes.length / frameBytes(format), settings);
}
