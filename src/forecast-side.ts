import { basename } from 'node:path';
import { createAnalyser } from './analysis/analyse.js';
import { badSample } from './analysis/convert-samples.js';
import type { MotionSummary } from './analysis/motion.js';
import { readFrames } from './analysis/wav-blocks.js';
import { type OpenWav, type WavFile, withWav } from './analysis/wav-file.js';
import type { ForecastedFile, SourceFile } from './forecast-result.js';
import { forecastSide } from './model/forecast-model.js';
import type { Planner, Settings } from './settings.js';

/** How a side is to be forecast, beyond the profile. */
export interface Request {
  readonly levelDb: number;
  readonly planner: Planner;
}

/**
 * The forecast of one file as one side: decode → analyse → plan → verify.
 * The audio is read once; everything after the motion summary is arithmetic on it.
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
    return {
      name: basename(path),
      sources: [sourceOf(wav.file)],
      settings,
      program: motion.program,
      forecast,
    };
  });
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
