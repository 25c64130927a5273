import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { readMicroscope } from '../../../../../src/analysis/read-microscope.js';
import { withWav } from '../../../../../src/analysis/wav-file.js';
import { wavFrames } from '../../../../../src/analysis/wav-frames.js';
import { forecastFile } from '../../../../../src/forecast-side.js';
import { resolveProfile } from '../../../../../src/profile/resolve-profile.js';
import { inventedProgram, RATE } from '../../../../support/invented-program.js';
import { sharedFolder } from '../../../../support/shared-folder.js';
import { wavBytes } from '../../../../support/wav-writer.js';
import type { HarnessData } from './harness-data.js';

/** The same for all tests of a file: measured once. */
export function sharedSide(): () => Promise<HarnessData> {
  const folder = sharedFolder();
  let side: Promise<HarnessData> | undefined;
  return () => {
    side ??= folder().then((path) => inventedSide(path));
    return side;
  };
}

/** Half a minute of an instrument that does not exist, on a 7-inch of one narrow pitch. */
export async function inventedSide(folder: string, seconds = 30): Promise<HarnessData> {
  const path = join(folder, 'invented.wav');
  const { left, right } = inventedProgram(seconds);
  const words = Float64Array.from({ length: 2 * left.length }, (_, word) => {
    const channel = word % 2 === 0 ? left : right;
    return 2 * (channel[word >> 1] ?? 0);
  });
  await writeFile(path, wavBytes({ encoding: 'float', bitDepth: 32, words, sampleRate: RATE }));
  const settings = resolveProfile({ flags: { disc: 7, executes: 'fixed' } });
  const request = { levelDb: 0, planner: 'turn-ahead', keepMotion: true } as const;
  const { forecast, motion } = await forecastFile(path, settings, request);
  if (motion === null) throw new Error('the motion was not kept');
  const microscope = await withWav(path, (wav) =>
    readMicroscope(wavFrames(wav), settings, forecast.hotSpots),
  );
  const source = { sampleRate: RATE, channels: 2, truncated: false } as const;
  return {
    name: '<img src=x onerror=alert(1)>.wav',
    settings,
    motion,
    source,
    levelDb: 0,
    planner: 'turn-ahead',
    units: 'metric',
    microscope,
  };
}
