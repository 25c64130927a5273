import { basename } from 'node:path';
import { analysePart, type PartMotion } from './analysis/analyse-part.js';
import { readEdgeWindow } from './analysis/edge-window.js';
import { hashAudio } from './analysis/hash-audio.js';
import { joinParts } from './analysis/join-parts.js';
import type { EdgeWindow } from './analysis/motion.js';
import { type Part, partsOf } from './analysis/parts.js';
import { frameBytes } from './analysis/sample-format.js';
import { type OpenWav, type WavFile, withWav } from './analysis/wav-file.js';
import { wavFrames } from './analysis/wav-frames.js';
import type { ForecastedFile, SourceFile } from './forecast-result.js';
import { forecastSide } from './model/forecast-model.js';
import type { HotSpot } from './model/forecast-types.js';
import type { LinearSolver } from './model/linear-program.js';
import { withSurvival } from './model/with-survival.js';
import { isMotionFile } from './motion-file/is-motion.js';
import type { Planner, Settings } from './settings.js';

/** How a side is to be forecast, beyond the profile. */
export interface Request {
  readonly levelDb: number;
  readonly planner: Planner;
  /** Hands the motion summary out with the forecast. */
  readonly keepMotion?: boolean;
  /** Reads the audio once more for its hash. */
  readonly hashAudio?: boolean;
}

/**
 * The forecast of one file as one side: decode → analyse → plan → verify.
 * Everything after the motion summary is arithmetic on it, but for a closer look at the hot spots.
 * A file of saved motion is taken as well.
 * @param onBytes told of the bytes of sound that are done since it was told last
 * @throws InputError if the file cannot be read or is not fit
 */
export async function forecastFile(
  path: string,
  settings: Settings,
  request: Request,
  onBytes: (bytes: number) => void = () => {},
): Promise<ForecastedFile> {
  if (await isMotionFile(path)) {
    // Few runs have such a file, and reading one takes a library that every thread would load.
    const { forecastMotionFile } = await import('./forecast-motion.js');
    return await forecastMotionFile(path, settings, request, await solverFor(request));
  }
  return await withWav(path, async (wav) => {
    const motions: PartMotion[] = [];
    for (const part of partsOf(wav.file.format, wav.file.frames, settings)) {
      motions.push(await measureOpen(wav, settings, part, onBytes));
    }
    return await forecastOpen(wav, settings, request, motions);
  });
}

/**
 * The parts in which a file can be measured by several threads; none of a file whose motion was
 * measured before.
 */
export async function partsOfFile(path: string, settings: Settings): Promise<readonly Part[]> {
  if (await isMotionFile(path)) return [];
  return await withWav(path, async ({ file }) => partsOf(file.format, file.frames, settings));
}

/** What one part of a file moves; see `forecastParts`. */
export async function measurePart(
  path: string,
  settings: Settings,
  part: Part,
  onBytes: (bytes: number) => void,
): Promise<PartMotion> {
  return await withWav(path, async (wav) => await measureOpen(wav, settings, part, onBytes));
}

/** The forecast of a file whose parts are measured, the same as `forecastFile` makes. */
export async function forecastParts(
  path: string,
  settings: Settings,
  request: Request,
  motions: readonly PartMotion[],
): Promise<ForecastedFile> {
  return await withWav(path, async (wav) => await forecastOpen(wav, settings, request, motions));
}

async function measureOpen(
  wav: OpenWav,
  settings: Settings,
  part: Part,
  onBytes: (bytes: number) => void,
): Promise<PartMotion> {
  const bytesPerFrame = frameBytes(wav.file.format);
  return await analysePart(wavFrames(wav), settings, part, (frames) =>
    onBytes(frames * bytesPerFrame),
  );
}

async function forecastOpen(
  wav: OpenWav,
  settings: Settings,
  request: Request,
  motions: readonly PartMotion[],
): Promise<ForecastedFile> {
  const { format, frames, truncated, path } = wav.file;
  const motion = joinParts(motions, format, frames, settings);
  const source = { sampleRate: format.sampleRate, channels: format.channels, truncated };
  const forecast = forecastSide(motion, settings, {
    ...request,
    ...(await solverFor(request)),
    source,
  });
  const windows = await readEdges(wav, settings, forecast.hotSpots);
  return {
    name: basename(path),
    sources: [sourceOf(wav.file)],
    settings,
    program: motion.program,
    forecast: withSurvival(forecast, motion, settings, windows),
    readFrom: 'audio',
    motion: request.keepMotion === true ? motion : null,
    audioSha256: request.hashAudio === true ? await hashAudio(wavFrames(wav)) : null,
  };
}

/** The edges around each hot spot: the one place where the audio is read a second time. */
async function readEdges(
  wav: OpenWav,
  settings: Settings,
  hotSpots: readonly HotSpot[],
): Promise<(EdgeWindow | null)[]> {
  const windows: (EdgeWindow | null)[] = [];
  for (const { atSeconds } of hotSpots) {
    windows.push(await readEdgeWindow(wavFrames(wav), settings, atSeconds));
  }
  return windows;
}

/** The solver, where a plan is asked for that needs one. */
async function solverFor({ planner }: Request): Promise<{ readonly solve?: LinearSolver }> {
  if (planner !== 'tightest') return {};
  const { loadLinearSolver } = await import('./linear-solver.js');
  return { solve: await loadLinearSolver() };
}

function sourceOf(file: WavFile): SourceFile {
  const { path, container, format, frames } = file;
  return { path, container, ...format, frames, durationSeconds: frames / format.sampleRate };
}
