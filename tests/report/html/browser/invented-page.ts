import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { MotionSummary } from '../../../../src/analysis/motion.js';
import { withSound } from '../../../../src/analysis/open-sound.js';
import { readMicroscope } from '../../../../src/analysis/read-microscope.js';
import type { ForecastedFile } from '../../../../src/forecast-result.js';
import { forecastFile } from '../../../../src/forecast-side.js';
import { resolveProfile } from '../../../../src/profile/resolve-profile.js';
import { htmlPage } from '../../../../src/report/html/html-page.js';
import { microscopePlaces } from '../../../../src/report/html/microscope-places.js';
import { bundlePage } from '../../../../src/report/html/page/bundle.mjs';
import type { Settings } from '../../../../src/settings.js';
import { inventedProgram, RATE } from '../../../support/invented-program.js';
import { wavBytes } from '../../../support/wav-writer.js';

export interface InventedPage {
  readonly path: string;
  readonly settings: Settings;
  readonly file: ForecastedFile & { readonly motion: MotionSummary };
  readonly html: string;
}

/** A page of half a minute of an instrument that does not exist, on a 7-inch with narrow pitch. */
export async function inventedPage(
  folder: string,
  name = 'invented side.wav',
): Promise<InventedPage> {
  const path = join(folder, 'invented side.wav');
  const { left, right } = inventedProgram(30);
  const words = Float64Array.from({ length: 2 * left.length }, (_, word) => {
    const channel = word % 2 === 0 ? left : right;
    return 2 * (channel[word >> 1] ?? 0);
  });
  await writeFile(path, wavBytes({ encoding: 'float', bitDepth: 32, words, sampleRate: RATE }));
  const settings = resolveProfile({ flags: { disc: 7, executes: 'fixed' } });
  const request = { levelDb: 0, planner: 'turn-ahead', keepMotion: true } as const;
  const forecast = await forecastFile(path, settings, request);
  const { motion } = forecast;
  if (motion === null) throw new Error('the motion was not kept');
  const file = { ...forecast, name, motion };
  const edges = await withSound(path, ({ source }) =>
    readMicroscope(source, settings, microscopePlaces(file)),
  );
  const assets = await bundlePage();
  const html = htmlPage(file, edges, { units: 'metric', assets, version: '0.0.0' });
  return { path, settings, file, html };
}
