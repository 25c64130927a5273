import { describe, expect, test } from 'vitest';
import type { EdgeWindow } from '../../src/analysis/motion.js';
import { turnAdvance } from '../../src/model/disc.js';
import { forecastPlans, forecastSide, type SideRequest } from '../../src/model/forecast-model.js';
import type { SideForecast } from '../../src/model/forecast-types.js';
import { planSide } from '../../src/model/plan.js';
import { plannedSide } from '../../src/model/planned-side.js';
import { verify } from '../../src/model/verify.js';
import { withSurvival } from '../../src/model/with-survival.js';
import type { Settings } from '../../src/settings.js';
import { emptyMotion } from '../support/empty-motion.js';
import { EXACT, SOUND_SOURCE, settingsWith } from '../support/model-settings.js';
import { motionOf } from '../support/motion-of.js';

const T = 1.8;
const AMPLITUDE = 30e-6;
const RATE = 96_000;
/** 100 Hz, where neighbouring turns run parallel as long as the speed is right. */
const wall = (at: number) =>
  at < 0 || at > 3 * T ? 0 : (AMPLITUDE / Math.SQRT2) * Math.sin(2 * Math.PI * 100 * at);
const MOTION = motionOf({ turns: 3, turnSeconds: T, left: wall, right: wall });

/** The edges at level 0 dB for 40 ms from a place, with 1 % of a turn on either side. */
function edgesFrom(atSeconds: number): EdgeWindow {
  const margin = Math.round(0.01 * T * RATE);
  const frames = Math.round(0.04 * RATE);
  const edge = (from: number, count: number) =>
    Float64Array.from({ length: count }, (_, n) => Math.SQRT2 * wall(from + n / RATE));
  return {
    rate: RATE,
    startSeconds: atSeconds,
    outer: edge(atSeconds, frames),
    inner: edge(atSeconds - T - margin / RATE, frames + 2 * margin),
    margin,
  };
}

function forecastAt(basePitch: number, changes: Partial<Settings> = {}) {
  const settings = settingsWith({ ...EXACT, basePitch, executes: 'fixed', ...changes });
  const request = { levelDb: 0, planner: 'fixed', source: SOUND_SOURCE } as const;
  return forecastPlans(MOTION, settings, request);
}

/** A forecast whose hot spots are all looked at in one window. */
function lookedAt(
  settings: Settings,
  request: Omit<SideRequest, 'source'>,
  window: EdgeWindow,
): SideForecast {
  const planned = forecastPlans(MOTION, settings, { ...request, source: SOUND_SOURCE });
  const windows = planned.forecast.hotSpots.map(() => window);
  return withSurvival(planned, windows);
}

describe('a speed error', () => {
  test('of a tone that runs parallel is survived until 2A·|sin πfδ| takes the land', () => {
    const basePitch = 110e-6;
    const settings = settingsWith({ ...EXACT, basePitch, executes: 'fixed' });
    // In the second turn, wherever the hot spot is: the first and last face silence.
    const { hotSpots } = lookedAt(settings, { levelDb: 0, planner: 'fixed' }, edgesFrom(2.7));
    const free = basePitch - settings.baseWidth;
    const shift = Math.asin(free / (2 * AMPLITUDE)) / (Math.PI * 100);
    expect(hotSpots[0]?.survives?.speed).toBeWithin(shift / T, 1 / RATE / T + 1e-6);
  });

  test('is survived always where the walls cannot meet, and not at all in an overcut', () => {
    const wide = forecastAt(200e-6);
    const windows = wide.forecast.hotSpots.map(() => edgesFrom(2.7));
    const told = withSurvival(wide, windows);
    for (const { survives } of told.hotSpots) expect(survives?.speed).toBeNull();

    const narrow = forecastAt(70e-6);
    const places = narrow.forecast.hotSpots.map(({ atSeconds }) => edgesFrom(atSeconds));
    const spots = withSurvival(narrow, places).hotSpots;
    expect(spots[0]!.landNominal).toBeLessThan(0);
    expect(spots[0]!.survives).toEqual({ speed: 0, depth: 0, delay: 0 });
  });

  test('is of the planned level: half the motion at double the level', () => {
    const basePitch = 110e-6;
    const settings = settingsWith({ ...EXACT, basePitch, executes: 'fixed' });
    const speedAt = (levelDb: number, scale: number) => {
      const edges = edgesFrom(2.7);
      const window = {
        ...edges,
        outer: edges.outer.map((u) => u * scale),
        inner: edges.inner.map((u) => u * scale),
      };
      const { hotSpots } = lookedAt(settings, { levelDb, planner: 'fixed' }, window);
      return hotSpots[0]!.survives!.speed;
    };
    expect(speedAt(20 * Math.log10(2), 0.5)).toBe(speedAt(0, 1));
  });

  test.each([
    ['later', 7, 7],
    ['earlier', -11, 11],
    ['beyond what was looked at', 25, null],
  ])('finds an inner edge that lies %s than a turn ago', (_, frames, survived) => {
    const planned = forecastAt(110e-6);
    const [outer, inner] = [new Float64Array(60), new Float64Array(100)];
    const margin = 20;
    outer[30] = 40e-6;
    inner[margin + 30 + frames] = -40e-6;
    const window = { rate: RATE, startSeconds: 2.7, outer, inner, margin };
    const [spot] = withSurvival(planned, [window]).hotSpots;
    if (survived === null) expect(spot?.survives?.speed).toBeNull();
    else expect(spot?.survives?.speed).toBeWithin(survived / RATE / T, 1e-12);
  });

  test('is that of the plan that is executed', () => {
    const settings = settingsWith({
      ...EXACT,
      basePitch: 110e-6,
      landMin: 60e-6,
      executes: 'fixed',
    });
    const fixed = lookedAt(settings, { levelDb: 0, planner: 'turn-ahead' }, edgesFrom(2.7));
    const asPlan = { ...settings, executes: 'plan' } as const;
    const same = lookedAt(asPlan, { levelDb: 0, planner: 'fixed' }, edgesFrom(2.7));
    const wider = lookedAt(asPlan, { levelDb: 0, planner: 'turn-ahead' }, edgesFrom(2.7));
    expect(fixed.hotSpots[0]?.survives?.speed).toBeGreaterThan(0);
    expect(same.hotSpots).toEqual(fixed.hotSpots);
    expect(wider.hotSpots[0]?.survives?.speed ?? null).toBeNull();
  });

  test('is null where no audio was looked at', () => {
    const { forecast } = forecastAt(110e-6);
    expect(forecast.hotSpots[0]?.survives?.speed).toBeNull();
    expect(forecast.hotSpots[0]?.survives?.depth).toBeGreaterThan(0);
  });
});

test('a half-width error of the survived depth takes the nominal land to zero', () => {
  const { side, forecast } = forecastAt(110e-6);
  const { settings } = side;
  const [spot] = forecast.hotSpots;
  const deeper = { ...settings, baseWidth: settings.baseWidth + 2 * spot!.survives!.depth! };
  const cut = plannedSide(MOTION, deeper);
  const { landNominal } = verify(cut, planSide(cut, 'fixed', 0));
  expect(Math.min(...landNominal.subarray(4))).toBeWithin(0, 1e-12);
});

describe('a delay', () => {
  // Two silent turns: a pitch that comes late begins late, at base pitch.
  const settings = settingsWith({
    ...EXACT,
    executes: 'plan',
    timingTolerance: 1,
    landMin: 5e-6,
    silentTurns: 2,
  });
  const { hotSpots } = forecastSide(MOTION, settings, {
    levelDb: 6,
    planner: 'turn-ahead',
    source: SOUND_SOURCE,
  });

  test('of the timing tolerance at least is survived by turn-ahead', () => {
    expect(hotSpots.length).toBeGreaterThan(1);
    for (const { survives } of hotSpots) {
      expect(survives!.delay ?? Number.POSITIVE_INFINITY).toBeGreaterThanOrEqual(T / 4);
    }
  });

  test('beyond two turns is not told: it holds for all that matters', () => {
    // Six turns that need the same advance: the pitch is as wide that long before the last of them.
    const motion = emptyMotion(12 * T);
    for (let turn = 4; turn < 10; turn++) {
      motion.approach[turn * 64 + 20] = 60e-6;
      motion.approachLoose[turn * 64 + 20] = 60e-6 + turn * 1e-9;
    }
    const request = { levelDb: 0, planner: 'turn-ahead', source: SOUND_SOURCE } as const;
    const spots = forecastSide(motion, settings, request).hotSpots;
    const delays = spots.map(({ survives }) => survives!.delay);
    expect(delays.filter((delay) => delay === null).length).toBeGreaterThan(1);
    const told = delays.filter((delay) => delay !== null);
    expect(Math.max(...told)).toBeGreaterThan(T);
    expect(Math.max(...told)).toBeLessThanOrEqual(2 * T);
  });

  test('of what is survived takes the land to zero, and a little less does not', () => {
    const side = plannedSide(MOTION, settings);
    const plan = planSide(side, 'turn-ahead', 6);
    const spot = hotSpots.find(({ survives }) => survives!.delay !== null)!;
    const bin = Math.round((spot.atSeconds / (T / 4) + side.lead) * 16);
    const need = (edge: number) => {
      const quarter = Math.floor(bin / 16);
      const share = edge / 16 - quarter;
      const facing =
        plan.facing[quarter]! + share * (plan.facing[quarter + 1]! - plan.facing[quarter]!);
      return facing + plan.gain * side.approach[bin]!;
    };
    // A(t − d) by integrating the pitch finely, base pitch before the planned quarters.
    const advanceLate = (edge: number, delay: number) => {
      const end = edge / 16 - delay / (T / 4);
      const steps = 40_000;
      let sum = 0;
      for (let step = 0; step < steps; step++) {
        const at = Math.floor(end - 4 + (4 * (step + 0.5)) / steps);
        sum += plan.pitch[at] ?? settings.basePitch;
      }
      return sum / steps;
    };
    const left = (delay: number) =>
      Math.min(...[bin, bin + 1].map((edge) => advanceLate(edge, delay) - need(edge)));
    expect(left(spot.survives!.delay!)).toBeWithin(0, 0.01e-6);
    expect(left(spot.survives!.delay! - 0.02)).toBeGreaterThan(0);
    expect(turnAdvance(plan.pitch, settings.basePitch)).toBeWithin(plan.advance, 0);
  });
});
