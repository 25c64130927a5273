import { basename } from 'node:path';
import { createAnalyser } from './analysis/analyse.js';
import { badSample } from './analysis/convert-samples.js';
import { readEdgeWindow } from './analysis/edge-window.js';
import type { EdgeWindow, MotionSummary } from './analysis/motion.js';
import { readFrames } from './analysis/wav-blocks.js';
import { type OpenWav, type WavFile, withWav } from './analysis/wav-file.js';
import type { ForecastedFile, SourceFile } from './forecast-result.js';
import { forecastSide } from './model/forecast-model.js';
import type { HotSpot } from './model/forecast-types.js';
import { withSurvival } from './model/with-survival.js';
import type { Planner, Settings } from './settings.js';

/** How a side is to be forecast, beyond the profile. */
export interface Request {
  readonly levelDb: number;
  readonly planner: Planner;
  /** Hands the motion summary out with the forecast. */
  readonly keepMotion?: boolean;
}

/**
 * The forecast of one file as one side: decode → analyse → plan → verify.
 * Everything after the motion summary is arithmetic on it, but for a closer look at the hot spots.
 * @throws InputError if the file cannot be read or is not fit
 */
export async function forecastFile(
  path: string,
  settings: Settings,
  request: Request,
): Promise<ForecastedFile> {
  return await withWav(path, async (wav) => {
    const motion = await analyseWav(wav, settings);
    const { format, truncated } = wav.file;
    const source = { sampleRate: format.sampleRate, channels: format.channels, truncated };
    const forecast = forecastSide(motion, settings, { ...request, source });
    const windows = await readEdges(wav, settings, forecast.hotSpots);
    return {
      name: basename(path),
      sources: [sourceOf(wav.file)],
      settings,
      program: motion.program,
      forecast: withSurvival(forecast, motion, settings, windows),
      readFrom: 'audio',
      motion: request.keepMotion === true ? motion : null,
      audioSha256: null,
    };
  });
}

/** The edges around each hot spot: the one place where the audio is read a second time. */
async function readEdges(
  wav: OpenWav,
  settings: Settings,
  hotSpots: readonly HotSpot[],
): Promise<(EdgeWindow | null)[]> {
  const windows: (EdgeWindow | null)[] = [];
  for (const { atSeconds } of hotSpots) {
    windows.push(await readEdgeWindow(wav, settings, atSeconds));
  }
  return windows;
}

/** The motion summary of an open file. */
async function analyseWav(wav: OpenWav, settings: Settings): Promise<MotionSummary> {
  const { file } = wav;
  const analyser = await createAnalyser(file.format, file.frames, settings);
  for await (const block of readFrames(wav)) {
    const unfit = analyser.push(block);
    if (unfit >= 0) throw badSample(file, unfit);
  }
  return analyser.finish();
}

function sourceOf(file: WavFile): SourceFile {
  const { path, container, format, frames } = file;
  return { path, container, ...format, frames, durationSeconds: frames / format.sampleRate };
}
