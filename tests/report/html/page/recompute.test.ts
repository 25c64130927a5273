import { inflateSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { MotionSummary } from '../../../../src/analysis/motion.js';
import { forecastSide } from '../../../../src/model/forecast-model.js';
import { pageData } from '../../../../src/report/html/data/page-data.js';
import { fromPrintable } from '../../../../src/report/html/data/printable.js';
import { type PageData, readPageData } from '../../../../src/report/html/data/read-page-data.js';
import { headroomOf, recompute } from '../../../../src/report/html/page/recompute.js';
import { asForecast, settingsOf, type WhatIf } from '../../../../src/report/html/page/what-if.js';
import { PLANNERS } from '../../../../src/settings.js';
import { forecastedFile } from '../../../support/forecast-fixture.js';
import { settingsWith } from '../../../support/model-settings.js';
import { randomMotion } from '../../../support/random-motion.js';
import { roundedAsPage, told } from '../support.js';

const SOURCE = { sampleRate: 96_000, channels: 2, truncated: false } as const;

/** A page's data as the page takes them out of the file. */
function dataOf(motion: MotionSummary): PageData {
  const settings = settingsWith({ rpm: 60 / motion.turnSeconds });
  const request = { levelDb: 0, planner: 'turn-ahead', source: SOURCE } as const;
  const forecast = forecastSide(motion, settings, request);
  const { program } = motion;
  const file = { ...forecastedFile({ settings, program }), forecast, motion };
  const packed = pageData(file, [], { units: 'metric' });
  return readPageData(new Uint8Array(inflateSync(fromPrintable(packed))));
}

const TRIES = fc.record({
  levelDb: fc.double({ min: -12, max: 6, noNaN: true }),
  planner: fc.constantFrom(...PLANNERS),
  basePitch: fc.double({ min: 45e-6, max: 200e-6, noNaN: true }),
  baseWidth: fc.double({ min: 26e-6, max: 120e-6, noNaN: true }),
  landMin: fc.double({ min: 0, max: 40e-6, noNaN: true }),
  depthTolerance: fc.double({ min: 0, max: 10e-6, noNaN: true }),
  timingTolerance: fc.nat(8),
  executes: fc.constantFrom('machine', 'plan', 'fixed'),
});

describe('what the page recomputes', () => {
  it('is what the command forecasts from the same summary, to 1e-9', () => {
    const property = (motion: MotionSummary, tries: Omit<WhatIf, 'units' | 'tried'>) => {
      const data = dataOf(motion);
      const begin = asForecast(data.head);
      const { levelDb, planner, ...tried } = tries;
      const whatIf = { ...begin, levelDb, planner, tried: { ...begin.tried, ...tried } };
      const { file, side } = recompute(data, whatIf, {
        headroom: headroomOf(data, whatIf),
      });
      const settings = settingsOf(data.head, whatIf);
      const known = roundedAsPage(motion, settings);
      const request = { levelDb, planner, source: SOURCE, rows: known.rows };
      const command = forecastSide(known.motion, settings, request);
      const without = { hotSpots: [] };
      const page = told({ ...file.forecast, ...without });
      const wanted = told({ ...command, ...without });
      expect(page.words).toEqual(wanted.words);
      expect(page.numbers).toBeWithin(wanted.numbers, 1e-18, 1e-9);
      const worst = file.forecast.hotSpots[0]?.land ?? null;
      expect(worst === null).toBe(command.hotSpots.length === 0);
      expect(worst ?? 0).toBeWithin(command.hotSpots[0]?.land ?? 0, 1e-18, 1e-9);
      expect(Math.min(...side.executed.land)).toBeWithin(
        file.forecast[file.forecast.executes].landMin,
        1e-18,
        1e-9,
      );
    };
    fc.assert(fc.property(randomMotion(), TRIES, property), { numRuns: 60 });
  });

  it('a headroom that is known is taken as it is', () => {
    const [motion] = fc.sample(randomMotion(), { numRuns: 1, seed: 1 });
    if (motion === undefined) throw new Error('no motion');
    const data = dataOf(motion);
    const headroom = { fillDb: 1, traceDb: 2, recommendedDb: 1, limitedBy: null };
    const { file } = recompute(data, asForecast(data.head), { headroom });
    expect(file.forecast.headroom).toBe(headroom);
  });
});
