import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { MotionSummary } from '../../src/analysis/motion.js';
import { forecastSide } from '../../src/model/forecast-model.js';
import { planSide } from '../../src/model/plan.js';
import { plannedSide } from '../../src/model/planned-side.js';
import { NOTHING_BY_HAND } from '../../src/model/side-plan-input.js';
import { bendShares } from '../../src/model/worst-second.js';
import { emptyMotion } from '../support/empty-motion.js';
import { EXACT, SOUND_SOURCE, settingsWith } from '../support/model-settings.js';
import { fillHistogram } from '../support/motion-of.js';

/** A quarter turn, s. */
const Q = 0.45;
const SETTINGS = settingsWith({ ...EXACT, executes: 'fixed', basePitch: 400e-6, pitchMax: 500e-6 });

/** A track of so many quarters, all with the same spread of accelerations up to `bend`, m/s². */
interface Invented {
  readonly quarters: number;
  readonly bend: number;
  readonly isPinned?: boolean;
}

/** Tracks one after the other, each beginning with a quarter turn: two silent quarters between. */
function sideOf(tracks: readonly Invented[]) {
  const placed: { name: string; fromSeconds: number; untilSeconds: number; isPinned?: boolean }[] =
    [];
  let quarter = 0;
  for (const [at, { quarters, isPinned = false }] of tracks.entries()) {
    if (at > 0) quarter += 2;
    const fromSeconds = quarter * Q;
    quarter += quarters;
    placed.push({ name: `invented ${at}`, fromSeconds, untilSeconds: quarter * Q, isPinned });
  }
  const motion = emptyMotion(quarter * Q);
  for (const [at, { bend }] of tracks.entries()) {
    const { fromSeconds, untilSeconds } = placed[at]!;
    for (let each = fromSeconds / Q; each < untilSeconds / Q - 1e-6; each++) {
      fillQuarter(motion, Math.round(each), bend);
    }
  }
  return { motion, hand: { ...NOTHING_BY_HAND, tracks: placed } };
}

function fillQuarter(motion: MotionSummary, quarter: number, bend: number): void {
  const magnitudes = Array.from({ length: 40 }, (_, sample) => (bend * (sample + 1)) / 40);
  for (const wall of [motion.left, motion.right]) {
    fillHistogram(wall.accelerationHistogram, quarter, magnitudes);
    wall.accelerationPeak[quarter] = bend;
  }
}

function orderOf(tracks: readonly Invented[], order = true) {
  const { motion, hand } = sideOf(tracks);
  const request = { levelDb: 0, planner: 'fixed', source: SOUND_SOURCE, hand, order } as const;
  return forecastSide(motion, SETTINGS, request).order;
}

describe('the order that is suggested', () => {
  test('puts the track with the most treble outermost, and tells by how much that is better', () => {
    const [dull, bright] = [
      { quarters: 200, bend: 4000 },
      { quarters: 100, bend: 12_000 },
    ];
    const found = orderOf([dull, dull, bright]);
    expect(found?.order).toEqual([2, 0, 1]);
    expect(found?.bendShare).toBeLessThan(found?.bendShareBefore ?? 0);
    expect(found?.isExhaustive).toBe(true);
  });

  test('bends as much as it says, once the tracks are so cut', () => {
    const tracks = fc.array(
      fc.record({
        quarters: fc.integer({ min: 10, max: 60 }),
        bend: fc.integer({ min: 1, max: 30 }).map((thousands) => 1000 * thousands),
        isPinned: fc.boolean(),
      }),
      { minLength: 3, maxLength: 5 },
    );
    let told = 0;
    fc.assert(
      fc.property(tracks, (given) => {
        const found = orderOf(given);
        const free = given.filter(({ isPinned }) => !isPinned).length;
        if (free < 2) {
          expect(found).toBeNull();
          return;
        }
        if (found === null || found === undefined) throw new Error('no order');
        const unpinned = found.order.map((at) => ({ ...given[at]!, isPinned: false }));
        const cut = orderOf(unpinned);
        expect(cut?.bendShareBefore).toBeWithin(found.bendShare, 1e-9);
        if (found.bendShare < found.bendShareBefore) told += 1;
        for (const [at, { isPinned }] of given.entries()) {
          if (isPinned) expect(found.order[at]).toBe(at);
        }
      }),
      { numRuns: 40 },
    );
    expect(told).toBeGreaterThan(0);
  });

  test('counts the bends of the side itself as its verdict does', () => {
    // Both walls alike and no sound in the gap: the share of the side is that of its quarters.
    const { motion, hand } = sideOf([
      { quarters: 90, bend: 16_000 },
      { quarters: 70, bend: 24_000 },
    ]);
    const side = plannedSide(motion, SETTINGS, hand);
    const { own } = bendShares(side, planSide(side, 'fixed', 0), SETTINGS.playbackTip);
    const request = {
      levelDb: 0,
      planner: 'fixed',
      source: SOUND_SOURCE,
      hand,
      order: true,
    } as const;
    const { order } = forecastSide(motion, SETTINGS, request);
    const share = own.reduce((sum, each) => sum + each, 0) / 160;
    expect(share).toBeGreaterThan(0.01);
    expect(order?.bendShareBefore).toBeWithin(share, 1e-12);
  });

  test('is not looked for where nobody asked', () => {
    const track = { quarters: 20, bend: 5000 };
    expect(orderOf([track, track], false)).toBeUndefined();
    expect(orderOf([track])).toBeNull();
  });
});
