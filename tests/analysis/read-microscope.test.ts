import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { HotSpotEdges } from '../../src/analysis/hot-spot-edges.js';
import { withSound } from '../../src/analysis/open-sound.js';
import { readMicroscope } from '../../src/analysis/read-microscope.js';
import { forecastFile } from '../../src/forecast-side.js';
import { settingsWith } from '../support/model-settings.js';
import { noise } from '../support/signals.js';
import { wavBytes } from '../support/wav-writer.js';

const RATE = 96_000;
const SECONDS = 9;
const SETTINGS = settingsWith({ executes: 'fixed' });
const TURN = 60 / SETTINGS.rpm;

/** Motion is known to 0.05 µm, physics.md's figure; what is compared here is the same filter. */
const SAME_FILTER = 1e-9;

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'furrow-microscope-'));
});
afterAll(async () => {
  await rm(folder, { recursive: true });
});

async function wavOf(left: Float64Array, right: Float64Array, sampleRate = RATE): Promise<string> {
  const path = join(folder, `${sampleRate}-${left[100]}.wav`);
  const words = Float64Array.from({ length: 2 * left.length }, (_, word) => {
    const channel = word % 2 === 0 ? left : right;
    return channel[word >> 1] ?? 0;
  });
  await writeFile(path, wavBytes({ encoding: 'float', bitDepth: 64, words, sampleRate }));
  return path;
}

async function look(path: string, atSeconds: number): Promise<HotSpotEdges> {
  const [edges] = await withSound(path, ({ source }) =>
    readMicroscope(source, SETTINGS, [{ atSeconds }]),
  );
  if (edges === undefined || edges === null) throw new Error('nothing was seen');
  return edges;
}

describe('the edges under the microscope', () => {
  it('1 kHz at the reference level swings by 11.141 µm and runs parallel from turn to turn', async () => {
    // 7 cm/s lateral peak at 1 kHz: 0.011 mm, Boden, Basic Disc Mastering, 1981, as quoted; the
    // digits are 7 cm/s over 2π·1 kHz. 1 kHz is a multiple of 5/9 Hz, so neighbours are parallel.
    const amplitude = 10 ** (SETTINGS.referenceDbfs / 20);
    const tone = Float64Array.from(
      { length: SECONDS * RATE },
      (_, frame) => amplitude * Math.sin((2 * Math.PI * 1000 * frame) / RATE),
    );
    const { turns } = await look(await wavOf(tone, tone), 2 * TURN);
    expect(turns.map(({ turnsFromSpot }) => turnsFromSpot)).toEqual([-1, 0, 1]);
    for (const { inner, outer } of turns) {
      expect(Math.max(...inner)).toBeWithin(11.141e-6, 0, 1e-3);
      expect(Math.min(...outer)).toBeWithin(-11.141e-6, 0, 1e-3);
    }
    expect([...(turns[0]?.inner ?? [])]).toBeWithin([...(turns[2]?.inner ?? [])], SAME_FILTER);
  });

  it('close in the most at the kept angle, by what the whole pass says of the bin', async () => {
    const left = noise(SECONDS * RATE, 1, 0.2);
    const path = await wavOf(left, noise(SECONDS * RATE, 2, 0.2));
    const request = { levelDb: 0, planner: 'turn-ahead', keepMotion: true } as const;
    const { forecast, motion } = await forecastFile(path, SETTINGS, request);
    expect(forecast.hotSpots.length).toBeGreaterThan(0);
    for (const { atSeconds } of forecast.hotSpots.filter((spot) => spot.atSeconds >= TURN)) {
      const { turns } = await look(path, atSeconds);
      const outer = turns.find(({ turnsFromSpot }) => turnsFromSpot === 0)?.outer ?? [];
      const inner = turns.find(({ turnsFromSpot }) => turnsFromSpot === -1)?.inner ?? [];
      const middle = (outer.length - 1) / 2;
      const closing = (outer[middle] ?? 0) - (inner[middle] ?? 0);
      const bin = Math.round((atSeconds / TURN) * 64);
      // Frames lie beside the peaks that the pass finds between them: of noise to 20 kHz at 96 kHz
      // at most 1 − cos(π·20/96), a fifth.
      expect(closing).toBeLessThanOrEqual((motion?.approach[bin] ?? 0) + SAME_FILTER);
      expect(closing).toBeWithin(motion?.approach[bin] ?? 0, 0.2e-6, 0.1);
    }
  });

  it('a turn that is not cut is left out', async () => {
    const path = await wavOf(noise(SECONDS * RATE, 3, 0.1), noise(SECONDS * RATE, 4, 0.1));
    const first = await look(path, -TURN);
    expect(first.turns.map(({ turnsFromSpot }) => turnsFromSpot)).toEqual([0, 1]);
    const last = await look(path, SECONDS + TURN / 2);
    expect(last.turns.map(({ turnsFromSpot }) => turnsFromSpot)).toEqual([-1, 0]);
  });

  it('is not looked at closer at a rate of neither family', async () => {
    const path = await wavOf(noise(60_000, 5, 0.1), noise(60_000, 6, 0.1), 30_000);
    const seen = await withSound(path, ({ source }) =>
      readMicroscope(source, SETTINGS, [{ atSeconds: 0 }]),
    );
    expect(seen).toEqual([null]);
  });
});
