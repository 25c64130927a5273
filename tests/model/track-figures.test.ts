import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { BINS_PER_QUARTER, QUARTERS_PER_TURN } from '../../src/analysis/motion.js';
import { forecastSide } from '../../src/model/forecast-model.js';
import type { TrackFigures } from '../../src/model/forecast-types.js';
import { LENGTH_MARGIN } from '../../src/model/limits.js';
import { planSide } from '../../src/model/plan.js';
import { plannedSide } from '../../src/model/planned-side.js';
import { type HandSettings, NOTHING_BY_HAND } from '../../src/model/side-plan-input.js';
import { trackAt } from '../../src/model/track-at.js';
import { trackLevel } from '../../src/model/track-level.js';
import { emptyMotion } from '../support/empty-motion.js';
import { EXACT, SOUND_SOURCE, settingsWith } from '../support/model-settings.js';
import { randomMotion } from '../support/random-motion.js';

const ABOUT = { levelDb: 0, planner: 'turn-ahead', source: SOUND_SOURCE } as const;
/** What adding up thousands of pitches may cost, m. */
const SUM = 1e-12;

function handWith(
  times: readonly (readonly [number, number])[],
  bands: HandSettings['bands'] = [],
) {
  const tracks = times.map(([fromSeconds, untilSeconds], at) => ({
    name: `invented ${at + 1}`,
    fromSeconds,
    untilSeconds,
  }));
  return { ...NOTHING_BY_HAND, tracks, bands };
}

describe('first and last diameter of a track', () => {
  const settings = settingsWith({ ...EXACT, basePitch: 100e-6, startDiameter: 0.2926 });
  const hand = (bands: HandSettings['bands']) =>
    handWith(
      [
        [0, 60],
        [62.3, 100.1],
      ],
      bands,
    );

  test('at constant pitch are the start diameter less twice the pitch times the turns', () => {
    const { tracks = [] } = forecastSide(emptyMotion(101), settings, { ...ABOUT, hand: hand([]) });
    const at = (seconds: number) => 0.2926 - (2 * 100e-6 * seconds) / 1.8;
    expect(tracks.map(({ startDiameter }) => startDiameter)).toBeWithin([at(0), at(62.3)], SUM);
    expect(tracks.map(({ endDiameter }) => endDiameter)).toBeWithin([at(60), at(100.1)], SUM);
  });

  test('behind a marker band lie further in by what the band is wider, within one quarter too', () => {
    // The band ends at 62.25 s, the track begins at 62.3 s: both inside the quarter from 62.1 s on.
    const band = { fromSeconds: 61.25, untilSeconds: 62.25, pitch: 1.5e-3 };
    const { tracks = [] } = forecastSide(emptyMotion(101), settings, {
      ...ABOUT,
      hand: hand([band]),
    });
    const wider = (2 * (1.5e-3 - 100e-6)) / 1.8;
    const at = (seconds: number) => 0.2926 - (2 * 100e-6 * seconds) / 1.8;
    expect(tracks[0]?.endDiameter).toBeWithin(at(60), SUM);
    expect(tracks[1]?.startDiameter).toBeWithin(at(62.3) - wider, SUM);
    expect(tracks[1]?.endDiameter).toBeWithin(at(100.1) - wider, SUM);
  });
});

describe('the level of a track', () => {
  const settings = settingsWith();
  const reference = settings.referenceVelocity ** 2 / 4;

  /** Both walls' mean-square velocity in each quarter, re the reference; an octave's worth of ü. */
  function levelsOf(power: readonly number[], from: number, until: number, levelDb = 0) {
    const motion = emptyMotion(0.45 * power.length);
    for (const [quarter, each] of power.entries()) {
      for (const wall of [motion.left, motion.right]) {
        wall.velocityMeanSquare[quarter] = each * reference;
        wall.accelerationMeanSquare[quarter] = each * reference * (2 * Math.PI * 1000) ** 2;
      }
    }
    const side = plannedSide(motion, settings);
    const track = { name: 'invented', fromSeconds: from, untilSeconds: until };
    return trackLevel(side, planSide(side, 'fixed', levelDb), track);
  }

  test('is 0 dB for the sine that the level is set by, and follows the level', () => {
    const still = levelsOf([0, 1, 1, 1], 0.45, 1.8);
    expect(still.averageDb).toBeWithin(0, 1e-12);
    expect(still.loudestDb).toBeWithin(0, 1e-12);
    expect(still.meanFrequency).toBeWithin(1000, 1e-9);
    expect(levelsOf([0, 1, 1, 1], 0.45, 1.8, 3).averageDb).toBeWithin(3, 1e-12);
  });

  test('counts each quarter by how much of it belongs to the track', () => {
    // Half of a quarter of 4, all of one of 1: 3 in 1.5.
    expect(levelsOf([4, 1, 9], 0.225, 0.9).averageDb).toBeWithin(10 * Math.log10(2), 1e-9);
  });

  test('names the loudest quarter of its own, and where', () => {
    const { loudestDb, loudestAtSeconds } = levelsOf([50, 1, 2, 1, 50], 0.3, 2.0);
    expect(loudestDb).toBeWithin(10 * Math.log10(2), 1e-9);
    expect(loudestAtSeconds).toBeWithin(0.9, 1e-12);
  });

  test('is null in silence', () => {
    expect(levelsOf([0, 0], 0, 0.9)).toEqual({
      averageDb: null,
      loudestDb: null,
      loudestAtSeconds: null,
      meanFrequency: null,
    });
  });
});

describe('a side cut into tracks without gaps', () => {
  const parts = fc.tuple(
    randomMotion({ longestTurns: 6 }),
    fc.array(fc.integer({ min: 1, max: 99 }), { maxLength: 3 }),
    fc.constantFrom('machine', 'plan', 'fixed'),
  );

  test('has the least land, the worst bends and the ends of the side', () => {
    fc.assert(
      fc.property(parts, ([motion, percents, executes]) => {
        const { durationSeconds } = motion;
        const cuts = percents
          .toSorted((a, b) => a - b)
          .map((each) => (each / 100) * durationSeconds);
        const ends = [0, ...new Set(cuts), durationSeconds];
        const hand = handWith(ends.slice(1).map((until, at) => [ends[at] ?? 0, until]));
        const settings = settingsWith({ executes, rpm: 60 / motion.turnSeconds });
        const forecast = forecastSide(motion, settings, { ...ABOUT, hand });
        const { tracks = [] } = forecast;
        const report = forecast[executes];
        expect(tracks).toHaveLength(ends.length - 1);
        expect(tracks[0]?.startDiameter).toBe(settings.startDiameter);
        expect(tracks.at(-1)?.endDiameter).toBeWithin(report.endDiameter, SUM);
        for (const [at, { startDiameter }] of tracks.entries()) {
          const before = tracks[at - 1];
          if (before !== undefined) expect(startDiameter).toBe(before.endDiameter);
        }
        const place = report.landMinAtSeconds;
        if (place >= 0 && place < durationSeconds) {
          const least = Math.min(...tracks.map(({ landMin }) => landMin));
          expect(least).toBeWithin(report.landMin, LENGTH_MARGIN);
        }
        for (const tip of ['bendShareSpherical', 'bendShareLine'] as const) {
          const worst = Math.max(...tracks.map((track) => track[tip]));
          if (tracks.length === 1) expect(worst).toBe(report[tip]);
        }
        expect(weakest(tracks)).toBe(weakest(forecast.findings.filter(isPlaced(durationSeconds))));
      }),
      { numRuns: 60 },
    );
  });

  test('tells the track of every hot spot, and none in a gap', () => {
    fc.assert(
      fc.property(randomMotion({ longestTurns: 6 }), (motion) => {
        const { durationSeconds: lasts } = motion;
        const hand = handWith([
          [0, 0.4 * lasts],
          [0.6 * lasts, lasts],
        ]);
        const { hotSpots } = forecastSide(motion, settingsWith(), { ...ABOUT, hand });
        for (const { track, atSeconds } of hotSpots) {
          const [first, second] = [atSeconds < 0.4 * lasts, atSeconds >= 0.6 * lasts];
          const isInside = atSeconds >= 0 && atSeconds < lasts && (first || second);
          expect(track).toBe(isInside ? `invented ${first ? 1 : 2}` : null);
        }
      }),
      { numRuns: 30 },
    );
  });

  function isPlaced(durationSeconds: number) {
    return ({
      atSeconds,
      untilSeconds,
    }: {
      atSeconds: number | null;
      untilSeconds: number | null;
    }) => atSeconds !== null && atSeconds < durationSeconds && (untilSeconds ?? atSeconds) >= 0;
  }

  /** Severity and id of the worst. */
  function weakest(list: readonly (TrackFigures | { severity: string; id: string })[]) {
    const findings = list.flatMap((each) => ('worst' in each ? (each.worst ?? []) : each));
    return ['fault', 'caution', 'note'].find((severity) =>
      findings.some((finding) => finding.severity === severity),
    );
  }
});

test('a track that lies wholly inside one bin has the least land of that bin', () => {
  fc.assert(
    fc.property(randomMotion({ longestTurns: 3 }), fc.nat(), (motion, any) => {
      const settings = settingsWith({ rpm: 60 / motion.turnSeconds });
      const bin = motion.turnSeconds / QUARTERS_PER_TURN / BINS_PER_QUARTER;
      const at = (any % Math.floor(motion.durationSeconds / bin)) * bin;
      const hand = handWith([
        [at, at + bin],
        [at + 0.3 * bin, at + 0.7 * bin],
      ]);
      const { tracks = [] } = forecastSide(motion, settings, { ...ABOUT, hand });
      const [whole, inside] = tracks;
      expect(inside?.landMin).toBe(whole?.landMin);
      expect(inside?.landMinAtSeconds).toBe(whole?.landMinAtSeconds);
    }),
    { numRuns: 60 },
  );
});

test('a time belongs to the track that has begun and not ended', () => {
  const { tracks } = handWith([
    [0, 60],
    [62, 100],
  ]);
  const told = [-1, 0, 59.99, 60, 61, 62, 100].map(
    (at) => trackAt(tracks, at)?.name.at(-1) ?? null,
  );
  expect(told).toEqual([null, '1', '1', null, null, '2', null]);
});

test('a side of one file has no tracks to tell', () => {
  expect(forecastSide(emptyMotion(9), settingsWith(), ABOUT)).not.toHaveProperty('tracks');
});
