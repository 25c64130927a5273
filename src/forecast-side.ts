import {
  analysePart,
  figuresOf,
  type MotionRows,
  type PartFigures,
} from './analysis/analyse-part.js';
import { changedWhileRead } from './analysis/changed-while-read.js';
import { readEdgeWindow } from './analysis/edge-window.js';
import { hashAudio } from './analysis/hash-audio.js';
import { joinFigures } from './analysis/join-parts.js';
import type { EdgeWindow, MotionSummary } from './analysis/motion.js';
import { rowsBetween, rowsOfSide, type SideRows } from './analysis/motion-rows.js';
import { type Part, partsOf } from './analysis/parts.js';
import { sharedMemory } from './analysis/row-memory.js';
import { readSoundEdges } from './analysis/sound-edges.js';
import type { InputError } from './errors.js';
import type { ForecastedFile } from './forecast-result.js';
import { forecastPlans, type SideRequest, tightestOf } from './model/forecast-model.js';
import type { HotSpot, SideForecast } from './model/forecast-types.js';
import { type PlannedRows, plannedRows } from './model/planned-rows.js';
import { withSurvival } from './model/with-survival.js';
import { isMotionFile } from './motion-file/is-motion.js';
import { type OpenSide, type SideInput, withSide } from './open-side.js';
import type { Planner, Settings } from './settings.js';

/** How a side is to be forecast, beyond the profile. */
export interface Request {
  readonly levelDb: number;
  readonly planner: Planner;
  /** Hands the motion summary out with the forecast. */
  readonly keepMotion?: boolean;
  /** Reads the audio once more for its hash. */
  readonly hashAudio?: boolean;
  /** Looks for the silent ends of the sound: the least level of a sample that is none, dBFS. */
  readonly silenceDbfs?: number;
  /** Looks for a running order of a sheet's tracks that bends less. */
  readonly order?: boolean;
}

/** A side whose parts are measured. */
export interface MeasuredParts {
  /** Of all parts, in their order. */
  readonly figures: readonly PartFigures[];
  /** Of the whole side: each part has filled in its own. */
  readonly rows: SideRows;
}

type Tightest = SideForecast['tightest'];

/**
 * The forecast of one side: decode → analyse → plan → verify.
 * Everything after the motion summary is arithmetic on it, but for a closer look at the hot spots.
 * @param input a WAV file, a file of saved motion, or the tracks of a sheet
 * @param settings of the side
 * @param onBytes told of the bytes of sound that are done since it was told last
 * @throws InputError if a file cannot be read or is not fit
 */
export async function forecastFile(
  input: SideInput,
  settings: Settings,
  request: Request,
  onBytes: (bytes: number) => void = () => {},
): Promise<ForecastedFile> {
  if (typeof input === 'string' && (await isMotionFile(input))) {
    // Few runs have such a file, and reading one takes a library that every thread would load.
    const { forecastMotionFile } = await import('./forecast-motion.js');
    return await forecastMotionFile(input, settings, request);
  }
  return await withSide(input, settings, async (side) => {
    const parts = partsOf(side.source.format, side.source.frames, side.analysed);
    const rows = rowsOfSide(parts, settings);
    const figures: PartFigures[] = [];
    for (const part of parts) {
      figures.push(
        await measureOpen(
          side,
          part,
          rowsBetween(rows, part.firstQuarter, part.endQuarter),
          onBytes,
        ),
      );
    }
    return await forecastOpen(side, settings, request, { figures, rows });
  });
}

/**
 * What one part of a side moves; see `forecastParts`.
 * @param rows the part's of the side's, to be filled in
 */
export async function measurePart(
  input: SideInput,
  settings: Settings,
  part: Part,
  rows: MotionRows,
  onBytes: (bytes: number) => void,
): Promise<PartFigures> {
  return await withSide(input, settings, async (side) => {
    if (part.readUntil > side.source.frames) throw changed(side, part.readUntil);
    return await measureOpen(side, part, rows, onBytes);
  });
}

/**
 * The forecast of a side whose parts are measured, the same as `forecastFile` makes.
 * @param tightest of the side, where it is known or known to come from elsewhere
 */
export async function forecastParts(
  input: SideInput,
  settings: Settings,
  request: Request,
  measured: MeasuredParts,
  tightest?: Tightest,
): Promise<ForecastedFile> {
  return await withSide(input, settings, async (side) => {
    refuseChanged(side, measured);
    // The result crosses threads: its columns need not be copied.
    const known = { memory: sharedMemory, ...(tightest === undefined ? {} : { tightest }) };
    return await forecastOpen(side, settings, request, measured, known);
  });
}

/** What of that forecast takes longest and hangs on nothing else in it. */
export async function tightestOfParts(
  input: SideInput,
  settings: Settings,
  { levelDb }: Request,
  measured: MeasuredParts,
): Promise<Tightest> {
  return await withSide(input, settings, async (side) => {
    refuseChanged(side, measured);
    const motion = joined(side, measured);
    const rows = rowsIn(measured, motion, settings);
    return tightestOf(motion, settings, { levelDb, rows, ...handOf(side) });
  });
}

function refuseChanged(side: OpenSide, { figures }: MeasuredParts): void {
  const frames = figures.at(-1)?.part.endFrame ?? 0;
  if (frames !== side.source.frames) throw changed(side, frames);
}

/** Each part opens the file anew: it may be another by then. */
function changed({ name, source, sources }: OpenSide, expected: number): InputError {
  const path = sources[0]?.path ?? name;
  return changedWhileRead(path, `${source.frames} frames`, `${expected} as when it was begun`);
}

async function measureOpen(
  { source, analysed, bytesPerFrame }: OpenSide,
  part: Part,
  rows: MotionRows,
  onBytes: (bytes: number) => void,
): Promise<PartFigures> {
  const told = (frames: number) => onBytes(Math.round(frames * bytesPerFrame));
  const motion = await analysePart(source, analysed, part, told, rows);
  return figuresOf(motion);
}

async function forecastOpen(
  side: OpenSide,
  settings: Settings,
  request: Request,
  measured: MeasuredParts,
  known: Pick<SideRequest, 'tightest' | 'memory'> = {},
): Promise<ForecastedFile> {
  const { source } = side;
  const motion = joined(side, measured);
  const planned = forecastPlans(motion, settings, {
    ...request,
    ...handOf(side),
    source: side.facts,
    rows: rowsIn(measured, motion, settings),
    ...known,
  });
  const windows = await readEdges(side, planned.forecast.hotSpots);
  return {
    name: side.name,
    sources: side.sources,
    settings,
    program: motion.program,
    forecast: withSurvival(planned, windows),
    readFrom: 'audio',
    motion: request.keepMotion === true ? motion : null,
    audioSha256: request.hashAudio === true ? await hashAudio(source) : null,
    ...handOf(side),
    ...(await soundEdgesOf(side, request)),
  };
}

function joined({ source, analysed }: OpenSide, { figures, rows }: MeasuredParts): MotionSummary {
  return joinFigures(figures, rows, source.format, source.frames, analysed);
}

/** What is planned of a side lies where it was measured. */
function rowsIn({ rows }: MeasuredParts, motion: MotionSummary, settings: Settings): PlannedRows {
  return plannedRows(motion, settings, undefined, rows.silentQuarters);
}

function handOf({ hand }: OpenSide): Pick<OpenSide, 'hand'> {
  return hand === undefined ? {} : { hand };
}

/** The edges around each hot spot: the one place where the audio is read a second time. */
async function readEdges(
  { source, analysed }: OpenSide,
  hotSpots: readonly HotSpot[],
): Promise<(EdgeWindow | null)[]> {
  const windows: (EdgeWindow | null)[] = [];
  for (const { atSeconds } of hotSpots) {
    windows.push(await readEdgeWindow(source, analysed, atSeconds));
  }
  return windows;
}

/** The silent ends, where they are asked for. */
async function soundEdgesOf(
  { source }: OpenSide,
  { silenceDbfs }: Request,
): Promise<Pick<ForecastedFile, 'soundEdges'>> {
  if (silenceDbfs === undefined) return {};
  return { soundEdges: await readSoundEdges(source, 10 ** (silenceDbfs / 20)) };
}
