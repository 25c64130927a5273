import { withSound } from '../../../../src/analysis/open-sound.js';
import { readMicroscope } from '../../../../src/analysis/read-microscope.js';
import type { SideFit } from '../../../../src/fit/fit-result.js';
import { forecastFile } from '../../../../src/forecast-side.js';
import { htmlPage } from '../../../../src/report/html/html-page.js';
import { microscopePlaces } from '../../../../src/report/html/microscope-places.js';
import { bundlePage } from '../../../../src/report/html/page/bundle.mjs';
import { fitted, HARD_LATHE, hardProgram, writeProgram } from '../../../support/fit-side.js';
import { settingsWith } from '../../../support/model-settings.js';

/** The page of a fit: of a side with three hard passages, on a lathe on which each is a fault. */
export async function fitPage(
  folder: string,
  name: string,
): Promise<{ readonly fit: SideFit; readonly html: string }> {
  const path = await writeProgram(folder, 'invented hard side.wav', hardProgram());
  const settings = settingsWith(HARD_LATHE);
  const fit = { ...(await fitted(path, settings)), name };
  const request = { levelDb: 0, planner: 'turn-ahead', keepMotion: true } as const;
  const { motion, ...forecast } = await forecastFile(path, settings, request);
  if (motion === null) throw new Error('the motion was not kept');
  const file = { ...forecast, name, motion };
  const edges = await withSound(path, ({ source }) =>
    readMicroscope(source, settings, microscopePlaces(file)),
  );
  const assets = await bundlePage();
  const html = htmlPage(file, edges, { units: 'metric', assets, version: '0.0.0', fit });
  return { fit, html };
}
