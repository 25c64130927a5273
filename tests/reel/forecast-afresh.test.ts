import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { ForecastedFile } from '../../src/forecast-result.js';
import { forecastFile } from '../../src/forecast-side.js';
import { forecastSide } from '../../src/model/forecast-model.js';
import { withSide } from '../../src/open-side.js';
import { reelOf } from '../../src/reel/reel.js';
import { writeReel } from '../../src/reel/write-reel.js';
import type { Settings } from '../../src/settings.js';
import { settingsWith } from '../analysis/summary-of.js';
import { inventedProgram, louderBetween, RATE } from '../support/invented-program.js';
import { writeWav } from '../support/sheet-side.js';
import { temporaryFolder } from '../support/temporary-folder.js';

/** Quarter turns of the reel begin elsewhere in the passage, and bins with them. */
const LAND = 0.4e-6;

function quartersOf({ motion, forecast }: ForecastedFile, settings: Settings, levelDb: number) {
  if (motion === null) throw new Error('no motion');
  const { headroom } = forecast;
  const source = { sampleRate: RATE, channels: 2, truncated: false } as const;
  const request = { levelDb, planner: 'fixed', source, headroom } as const;
  return forecastSide(motion, { ...settings, executes: 'fixed' }, request).quarters;
}

test.for(['machine', 'plan', 'fixed'] as const)(
  'each passage of the reel, forecast afresh at its pitch and width, leaves the land it promises (%s)',
  async (executes) => {
    const folder = await temporaryFolder();
    const settings = settingsWith({ executes, pitchStep: null });
    const program = louderBetween(inventedProgram(40, 5), 4, 12, 15);
    const format = { encoding: 'pcm', bitDepth: 24, channels: 2, sampleRate: RATE } as const;
    const path = await writeWav(folder, 'side.wav', program, format);
    const request = { levelDb: 1, planner: 'turn-ahead' } as const;
    const file = await forecastFile(path, settings, request);
    const reelPath = join(folder, 'reel.wav');
    await writeReel(path, file, reelPath, 'metric');
    const { passages } = await withSide(path, settings, async (side) => await reelOf(side, file));
    expect(passages.length).toBe(5);
    // The reel is measured once; pitch and width are asked of what moves.
    const afresh = await forecastFile(reelPath, settings, { ...request, keepMotion: true });
    for (const { place, cut, hard } of passages) {
      const byHand = { ...settings, basePitch: cut.pitch, baseWidth: cut.width };
      const { atSeconds, fixedLand, lift } = quartersOf(afresh, byHand, 1);
      const from = place.atFrame / RATE + (place.firstFrame === 0 ? 0 : 1.8);
      const until = (place.atFrame + place.endFrame - place.firstFrame) / RATE;
      const inside = [...atSeconds.keys()].filter(
        (quarter) => (atSeconds[quarter] ?? 0) > from && (atSeconds[quarter] ?? 0) + 0.45 < until,
      );
      const least = Math.min(...inside.map((quarter) => fixedLand[quarter] ?? 0));
      expect(least).toBeWithin(cut.least.land, LAND, 0);
      const [hardest] = hard;
      if (hardest?.look === 'width') {
        const most = Math.max(...inside.map((quarter) => lift[quarter] ?? 0));
        expect(cut.width - 2 * most).toBeWithin(hardest.predicted.widthMin, LAND, 0);
      }
      // The place with the least land of the side is as tight in the test as on the side.
      const spot = hardest?.spot ?? null;
      if (spot !== null) expect(hardest?.predicted.land).toBeWithin(spot.land, 1e-6, 0);
    }
  },
);
