import { joinParts } from '../analysis/join-parts.js';
import type { MotionSummary } from '../analysis/motion.js';
import type { PartMotion } from '../analysis/part-motion.js';
import { partsOf } from '../analysis/parts.js';
import type { FitPool } from '../fit-pool.js';
import type { SourceFile } from '../forecast-result.js';
import type { SourceFacts } from '../model/forecast-types.js';
import { type HandSettings, NOTHING_BY_HAND } from '../model/side-plan-input.js';
import { isMotionFile } from '../motion-file/is-motion.js';
import { type SideInput, withSide } from '../open-side.js';
import type { ProgramSide } from '../program/program-side.js';
import type { Settings } from '../settings.js';
import { type Measure, MeasuredSound } from './measured-sound.js';

/** A side as it was measured, and how more of it can be. */
export interface MeasuredSide {
  readonly name: string;
  readonly sources: readonly SourceFile[];
  readonly settings: Settings;
  readonly source: SourceFacts;
  readonly hand: HandSettings;
  readonly motion: MotionSummary;
  /** What the motion was joined from; none where it was saved. */
  readonly parts: readonly PartMotion[];
  /** The tracks of a sheet's side; null for a file. */
  readonly program: ProgramSide | null;
  /** Null where the motion was saved: there is no sound to change. */
  readonly sound: MeasuredSound | null;
  /** Some of its tracks have an elliptical filter of their own. */
  readonly isFiltered: boolean;
}

/**
 * Measures a side as it is.
 * @param settings for a file; a sheet's side has its own
 * @param progress where the bytes of sound that are done are added up
 * @throws InputError if a file cannot be read or is not fit
 */
export async function measureSide(
  input: SideInput,
  settings: Settings,
  pool: FitPool,
  progress: BigInt64Array,
): Promise<MeasuredSide> {
  if (typeof input === 'string' && (await isMotionFile(input))) {
    return await savedSide(input, settings);
  }
  const own = typeof input === 'string' ? settings : input.settings;
  const opened = await withSide(input, own, async ({ source, ...side }) => ({
    ...side,
    format: source.format,
    frames: source.frames,
  }));
  const { format, frames, analysed } = opened;
  const program = typeof input === 'string' ? null : input;
  const measure: Measure = async ({ program: arranged, ...measuring }) =>
    await pool.measure({ input: arranged ?? input, settings: own, progress, ...measuring });
  const measured = await Promise.all(
    partsOf(format, frames, analysed).map(async (part) => {
      const readings = [{ baked: {}, part }];
      return await measure({ readings, edits: [], program });
    }),
  );
  const parts = measured.flat();
  const motion = joinParts(parts, format, frames, analysed);
  return {
    name: opened.name,
    sources: opened.sources,
    settings: own,
    source: opened.facts,
    hand: opened.hand ?? NOTHING_BY_HAND,
    motion,
    parts,
    program,
    sound: new MeasuredSound(format, frames, analysed, { motion, program }, measure),
    isFiltered: analysed !== own,
  };
}

async function savedSide(path: string, settings: Settings): Promise<MeasuredSide> {
  const { readMotionFile } = await import('../motion-file/read-motion-file.js');
  const { forecastMotion } = await import('../forecast-motion.js');
  const saved = await readMotionFile(path);
  // Refuses what was measured with other settings.
  forecastMotion(saved, settings, { levelDb: 0, planner: 'machine' });
  const { sampleRate, channels } = saved.source;
  return {
    name: saved.name,
    sources: [saved.source],
    settings,
    source: { sampleRate, channels, truncated: saved.truncated },
    hand: NOTHING_BY_HAND,
    motion: saved.motion,
    parts: [],
    program: null,
    sound: null,
    isFiltered: false,
  };
}
