import { beforeAll, describe, expect, it } from 'vitest';
import { createAnalyser } from '../../../../src/analysis/analyse.js';
import type { Histogram, MotionSummary, WallMotion } from '../../../../src/analysis/motion.js';
import { forecastSide } from '../../../../src/model/forecast-model.js';
import { htmlPage } from '../../../../src/report/html/html-page.js';
import { microscopePlaces } from '../../../../src/report/html/microscope-places.js';
import { bundlePage } from '../../../../src/report/html/page/bundle.mjs';
import { emptyMotion } from '../../../support/empty-motion.js';
import { forecastedFile } from '../../../support/forecast-fixture.js';
import { SOUND_SOURCE, settingsWith } from '../../../support/model-settings.js';
import { realRecordings, wordsOf } from '../../../support/real-recordings.js';
import { seeded } from '../../../support/signals.js';

const SECONDS = 40;
/** What a page may take that is sent by mail: 25 minutes in 1.5 MB. */
const MOST_BYTES = 1.5e6;
const LONGEST = 25 * 60;

let recorded: MotionSummary;

beforeAll(async () => {
  const words = wordsOf(await realRecordings(), 16, SECONDS);
  const format = { encoding: 'pcm', bitDepth: 32, channels: 2, sampleRate: 44_100 } as const;
  const analyser = await createAnalyser(format, words.length / 2, settingsWith());
  analyser.push(new Uint8Array(words.map((word) => word * 2 ** 16).buffer));
  recorded = analyser.finish();
}, 60_000);

describe('a page', () => {
  it('of 25 minutes of recordings takes at most 1.5 MB, ten places under the microscope and all', async () => {
    const motion = longMotion(recorded);
    const settings = settingsWith({ executes: 'fixed' });
    const request = { levelDb: 0, planner: 'turn-ahead', source: SOUND_SOURCE } as const;
    const forecast = forecastSide(motion, settings, request);
    const file = { ...forecastedFile({ settings, program: motion.program }), forecast, motion };
    const edges = microscopePlaces(file).map(({ atSeconds }) => randomEdges(atSeconds));
    const assets = await bundlePage();
    const html = htmlPage(file, edges, { units: 'metric', assets, version: '0.0.0' });
    expect(edges.length).toBe(10);
    expect(Buffer.byteLength(html)).toBeLessThan(MOST_BYTES);
    expect(Buffer.byteLength(html)).toBeGreaterThan(MOST_BYTES / 2);
  });
});

/**
 * The recorded quarters again and again until it is long enough, each number a little other than
 * before: what only repeats itself would pack far better than music.
 */
function longMotion(from: MotionSummary): MotionSummary {
  const motion = emptyMotion(LONGEST);
  const next = seeded(1);
  const used = from.quarterCount - 8;
  const fill = (row: Float64Array, by: Float64Array) => {
    const period = (used * row.length) / motion.quarterCount;
    for (const at of row.keys()) row[at] = (by[at % period] ?? 0) * (0.98 + 0.04 * next());
  };
  const fillHistogram = (row: Histogram, by: Histogram) => {
    for (const at of row.topClass.keys()) row.topClass[at] = by.topClass[at % used] ?? 0;
    for (const at of row.counts.keys()) {
      row.counts[at] = Math.round((by.counts[at % (24 * used)] ?? 0) * (0.95 + 0.1 * next()));
    }
  };
  const fillWall = (row: WallMotion, by: WallMotion) => {
    fill(row.velocityPeak, by.velocityPeak);
    fill(row.accelerationPeak, by.accelerationPeak);
    fill(row.velocityMeanSquare, by.velocityMeanSquare);
    fill(row.accelerationMeanSquare, by.accelerationMeanSquare);
    fillHistogram(row.edgeVelocityHistogram, by.edgeVelocityHistogram);
    fillHistogram(row.accelerationHistogram, by.accelerationHistogram);
  };
  const names = ['approach', 'lift', 'sink', 'lateral', 'outward', 'inward'] as const;
  for (const name of names) fill(motion[name], from[name]);
  for (const at of motion.approach.keys()) {
    motion.approachLoose[at] = (motion.approach[at] ?? 0) + 2e-6 * next();
  }
  fillWall(motion.left, from.left);
  fillWall(motion.right, from.right);
  fill(motion.lowBand.correlation, from.lowBand.correlation);
  fill(motion.lowBand.verticalShare, from.lowBand.verticalShare);
  fill(motion.lowBand.strongestFrequency, from.lowBand.strongestFrequency);
  fill(motion.lowBand.verticalAmplitude, from.lowBand.verticalAmplitude);
  fill(motion.lowBand.lateralAmplitude, from.lowBand.lateralAmplitude);
  return motion;
}

function randomEdges(atSeconds: number) {
  const next = seeded(2);
  const row = () => Float32Array.from({ length: 769 }, () => 1e-5 * next());
  const turn = (turnsFromSpot: -1 | 0 | 1) => ({ turnsFromSpot, inner: row(), outer: row() });
  return { atSeconds, secondsPerSample: 1 / 96_000, turns: [turn(-1), turn(0), turn(1)] };
}
