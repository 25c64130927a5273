import { describe, expect, test } from 'vitest';
import { hotSpots } from '../../../../src/model/hot-spots.js';
import { planSide } from '../../../../src/model/plan.js';
import { plannedSide } from '../../../../src/model/planned-side.js';
import { verify } from '../../../../src/model/verify.js';
import type { HotSpotEdges } from '../../../../src/report/html/page/page-side.js';
import {
  grooveEdges,
  landBetween,
} from '../../../../src/report/html/page/pictures/microscope/groove-edges.js';
import { settingsWith } from '../../../support/model-settings.js';
import { type Displacement, motionOf } from '../../../support/motion-of.js';

const TURN = 1.8;
const left: Displacement = (at) => 8e-6 * Math.sin(2 * Math.PI * 71.3 * at);
const right: Displacement = (at) =>
  11e-6 * Math.sin(2 * Math.PI * 47.7 * at) * Math.exp(-((at - 6.1) ** 2));

/** What the microscope is told of a place: the two walls themselves, 96 000 times a second. */
function edgesAround(middle: number, reach: number): HotSpotEdges {
  const secondsPerSample = 1 / 96_000;
  const count = 2 * Math.round(reach / secondsPerSample) + 1;
  const atSeconds = middle - reach;
  const row = (wall: Displacement, turns: number) =>
    Float32Array.from({ length: count }, (_, sample) => {
      const at = atSeconds + sample * secondsPerSample + turns * TURN;
      return Math.SQRT2 * wall(at);
    });
  return {
    atSeconds,
    secondsPerSample,
    turns: ([0, -1, 1] as const).map((turnsFromSpot) => ({
      turnsFromSpot,
      inner: row(left, turnsFromSpot),
      outer: row(right, turnsFromSpot),
    })),
  };
}

describe.each([-3, 0, 3])('grooves under the microscope at %d dB', (levelDb) => {
  const settings = settingsWith({ speedTolerance: 0.001 });
  const { speedTolerance } = settings;
  const motion = motionOf({ turns: 6, turnSeconds: TURN, speedTolerance, left, right });
  const side = plannedSide(motion, settings);
  const executed = verify(side, planSide(side, 'turn-ahead', levelDb));
  const [spot] = hotSpots(side, executed.plan);
  const bin = TURN / 64;
  const middle = (spot?.atSeconds ?? 0) + bin / 2;
  // Wide enough that the tolerated edge knows what comes ± speedTolerance·T beside the bin.
  const edges = edgesAround(middle, bin / 2 + 2 * speedTolerance * TURN);
  const grooves = grooveEdges({ side, executed, motion, settings }, edges);
  const [outside, here, inside] = grooves.grooves;
  const inBin = [...Array(grooves.count).keys()].filter((sample) => {
    const at = grooves.atSeconds + sample * grooves.secondsPerSample;
    return Math.abs(at - middle) <= bin / 2;
  });

  test('lie from the outside in', () => {
    expect(grooves.grooves.map(({ turnsFromSpot }) => turnsFromSpot)).toEqual([-1, 0, 1]);
    for (const [at, edge] of (here?.outer ?? []).entries()) {
      expect(edge).toBeGreaterThan(here?.inner[at] ?? Number.NaN);
      expect(here?.inner[at]).toBeGreaterThan(inside?.outer[at] ?? Number.NaN);
    }
  });

  test('leave the land that the forecast tells for a perfect lathe', () => {
    if (outside === undefined || here === undefined) throw new Error('no grooves');
    const least = Math.min(...inBin.map((sample) => landBetween(outside, here, sample)));
    // The forecast takes the lesser end of a bin; what the advance changes inside it is that much.
    expect(least - (spot?.landNominal ?? Number.NaN)).toBeWithin(0.5e-6, 0.55e-6, 0);
  });

  test('leave the land of the hot spot where the tolerances bring the turn outside', () => {
    const { tolerated } = grooves;
    const least = Math.min(
      ...inBin.map((sample) => (tolerated?.[sample] ?? 0) - (here?.outer[sample] ?? 0)),
    );
    expect(least - (spot?.land ?? Number.NaN)).toBeWithin(0.5e-6, 0.6e-6, 0);
  });

  test('leave inside this turn what the next turn finds outside it', () => {
    const later = grooveEdges(
      { side, executed, motion, settings },
      edgesAround(middle + TURN, bin / 2),
    );
    const [thisTurn, next] = later.grooves;
    if (here === undefined || inside === undefined) throw new Error('no grooves');
    if (thisTurn === undefined || next === undefined) throw new Error('no grooves');
    const shift = Math.round((later.atSeconds - TURN - grooves.atSeconds) * 96_000);
    for (let sample = 0; sample < later.count; sample++) {
      const seen = landBetween(here, inside, sample + shift);
      // Float32 edges, read at places that are rounded to samples.
      expect(seen).toBeWithin(landBetween(thisTurn, next, sample), 0.1e-6, 0);
    }
  });

  test('have their tightest place where the land is least', () => {
    if (outside === undefined || here === undefined) throw new Error('no grooves');
    const all = [...Array(grooves.count).keys()].map((at) => landBetween(outside, here, at));
    expect(all[grooves.tightest]).toBe(Math.min(...all));
  });
});
