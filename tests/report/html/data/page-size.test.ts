import { spawnSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { createAnalyser } from '../../../../src/analysis/analyse.js';
import type { Histogram, MotionSummary, WallMotion } from '../../../../src/analysis/motion.js';
import { forecastSide } from '../../../../src/model/forecast-model.js';
import { htmlPage } from '../../../../src/report/html/html-page.js';
import { microscopePlaces } from '../../../../src/report/html/microscope-places.js';
import { bundlePage } from '../../../../src/report/html/page/bundle.mjs';
import type { Settings } from '../../../../src/settings.js';
import { emptyMotion } from '../../../support/empty-motion.js';
import { forecastedFile } from '../../../support/forecast-fixture.js';
import { SOUND_SOURCE, settingsWith } from '../../../support/model-settings.js';
import { needProgram, needSongs, SONGS_FOLDER } from '../../../support/outside-program.js';
import { realRecordings, wordsOf } from '../../../support/real-recordings.js';
import { seeded } from '../../../support/signals.js';

const SECONDS = 40;
/** What a page may take that is sent by mail: 25 minutes in 1.5 MB. */
const MOST_BYTES = 1.5e6;
const LONGEST = 25 * 60;

const RATE = 44_100;

describe('a page of 25 minutes takes at most 1.5 MB, eight places under the microscope and all', () => {
  // At least what the songs take, end to end, with all their findings: 1.13 and 1.37 MB.
  it.for([
    [100 / 3, 1.13e6],
    [45, 1.37e6],
  ] as const)('of noise louder than any song, at %d rpm', async ([rpm, least]) => {
    const settings = settingsWith({ executes: 'fixed', rpm });
    const bytes = await pageBytes(await measured(loudNoise(), settings), settings);
    expect(bytes).toBeLessThan(MOST_BYTES);
    expect(bytes).toBeGreaterThan(least);
  });

  it('of a loud song, at 45 rpm', async (context) => {
    needSongs(context);
    needProgram('ffmpeg', context);
    const settings = settingsWith({ executes: 'fixed', rpm: 45 });
    const bytes = await pageBytes(await measured(songWords(), settings), settings);
    expect(bytes).toBeLessThan(MOST_BYTES);
    expect(bytes).toBeGreaterThan(MOST_BYTES / 2);
  });

  it('of recordings', async () => {
    const settings = settingsWith({ executes: 'fixed' });
    const words = wordsOf(await realRecordings(), 16, SECONDS);
    const bytes = await pageBytes(await measured(words, settings), settings);
    expect(bytes).toBeLessThan(MOST_BYTES);
    expect(bytes).toBeGreaterThan(MOST_BYTES / 3);
  });
});

/** A passage of a song, and the guitar that is played to it, as the game mixes them. */
function songWords(): Int32Array {
  const tracks = ['song', 'guitar'].flatMap((name) => [
    '-ss',
    '30',
    '-t',
    String(SECONDS),
    '-i',
    `${SONGS_FOLDER}/Metal madness/${name}.ogg`,
  ]);
  const mixed = ['-filter_complex', 'amix=normalize=0,volume=6dB', '-ar', String(RATE), '-ac', '2'];
  const { stdout, status } = spawnSync(
    'ffmpeg',
    ['-v', 'error', ...tracks, ...mixed, '-f', 's16le', '-'],
    {
      maxBuffer: 2 ** 26,
    },
  );
  expect(status).toBe(0);
  return Int32Array.from({ length: stdout.length / 2 }, (_, word) => stdout.readInt16LE(2 * word));
}

async function measured(words: Int32Array, settings: Settings): Promise<MotionSummary> {
  const format = { encoding: 'pcm', bitDepth: 32, channels: 2, sampleRate: RATE } as const;
  const analyser = await createAnalyser(format, words.length / 2, settings);
  analyser.push(new Uint8Array(words.map((word) => word * 2 ** 16).buffer));
  return analyser.finish();
}

/** Bytes of the page of a motion that goes on for 25 minutes. */
async function pageBytes(from: MotionSummary, settings: Settings): Promise<number> {
  const motion = longMotion(from);
  const request = { levelDb: 0, planner: 'turn-ahead', source: SOUND_SOURCE } as const;
  const forecast = forecastSide(motion, settings, request);
  const file = { ...forecastedFile({ settings, program: motion.program }), forecast, motion };
  const edges = microscopePlaces(file).map(({ atSeconds }) => randomEdges(atSeconds));
  expect(edges.length).toBeGreaterThan(7);
  const assets = await bundlePage();
  const html = htmlPage(file, edges, { units: 'metric', assets, version: '0.0.0' });
  return Buffer.byteLength(html);
}

/**
 * Bursts of brown and white noise in two channels that have nothing in common, of 16 bits, each of
 * its own level and length: no quarter turn is like another, and nothing in one foretells another.
 */
function loudNoise(): Int32Array {
  const next = seeded(7);
  const words = new Int32Array(2 * RATE * SECONDS);
  for (const channel of [0, 1]) {
    let [until, level, brown] = [0, 0, 0];
    for (let frame = 0; frame < RATE * SECONDS; frame++) {
      if (frame >= until) {
        until = frame + RATE * (0.02 + 0.2 * next());
        level = 10 ** (-1.2 * next());
      }
      brown = 0.995 * brown + 0.06 * (next() - 0.5);
      const sample = level * (brown + 0.5 * (next() - 0.5));
      words[2 * frame + channel] = Math.round(32_767 * Math.max(-1, Math.min(1, sample)));
    }
  }
  return words;
}

/**
 * The recorded quarters again and again until it is long enough, each number a little other than
 * before: what only repeats itself would pack far better than music.
 */
function longMotion(from: MotionSummary): MotionSummary {
  const motion = emptyMotion(LONGEST, from.turnSeconds);
  const next = seeded(1);
  const used = from.quarterCount - 8;
  const fill = (row: Float64Array, by: Float64Array) => {
    const period = (used * row.length) / motion.quarterCount;
    for (const at of row.keys()) row[at] = (by[at % period] ?? 0) * (0.9 + 0.2 * next());
  };
  const fillHistogram = (row: Histogram, by: Histogram) => {
    for (const at of row.topClass.keys()) row.topClass[at] = by.topClass[at % used] ?? 0;
    for (const at of row.counts.keys()) {
      row.counts[at] = Math.round((by.counts[at % (24 * used)] ?? 0) * (0.8 + 0.4 * next()));
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
