/**
 * Discs, pitch and time. The time table and the limits of slope and curvature are calculated from
 * the formulas of the spiral; diameters are those of IEC 98:1987, 8.5, and RIAA. Worked examples:
 * Boden, Basic Disc Mastering, 1981, as quoted; a recording history; both from secondary texts.
 */
import { describe, expect, test } from 'vitest';
import { grooveSpeed } from '../../src/model/disc.js';
import { forecastSide } from '../../src/model/forecast-model.js';
import { bendRadius, edgeSlope } from '../../src/model/tracing.js';
import { emptyMotion } from '../support/empty-motion.js';
import { SOUND_SOURCE, settingsWith } from '../support/model-settings.js';

const INCH = 0.0254;
const TURN = 1.8;

/** A silent side at a fixed pitch. */
function silentSide(minutes: number, basePitch: number, startDiameter: number, turnSeconds = TURN) {
  const motion = emptyMotion(60 * minutes, turnSeconds);
  const settings = settingsWith({ basePitch, startDiameter });
  return forecastSide(motion, settings, {
    levelDb: 0,
    planner: 'fixed',
    source: SOUND_SOURCE,
  });
}

describe('a silent 12-inch side at 33⅓', () => {
  test.each([
    // minutes, pitch µm, LPI: calculated
    [20, 128.96, 197.0],
    [25, 103.17, 246.2],
    [30, 85.97, 295.4],
  ])('of %d minutes fills 292.6 to 120.65 mm at %d µm, %d LPI', (minutes, pitchUm, lpi) => {
    const { plan, turns } = silentSide(minutes, pitchUm * 1e-6, 0.2926);
    // Half a unit of the pitch's last digit over all turns, twice for a diameter; 85.975 was cut.
    expect(plan.endDiameter).toBeWithin(0.12065, turns * 0.0101e-6);
    expect(INCH / plan.pitchMean).toBeWithin(lpi, 0.05 + lpi * (0.005 / pitchUm));
  });
});

describe('worked examples', () => {
  test('23 minutes at 300 LPI from 11.5 inches end at 6.394 inches', () => {
    // The example counts 33.3 turns a minute.
    const { plan } = silentSide(23, INCH / 300, 11.5 * INCH, 60 / 33.3);
    expect(plan.endDiameter / INCH).toBeWithin(6.394, 0.0005);
  });

  test.each([
    // LPI, minutes, radius, source
    [223, 20, 0.076, 'Boden 1981, as quoted'],
    [234, 22, 3.125 * INCH, 'a recording text: 733 turns'],
  ])('%d LPI cut %d minutes in %d m (%s)', (lpi, minutes, radius) => {
    const { plan } = silentSide(minutes, INCH / lpi, 0.2926);
    // Lines per inch are given whole, and cut off rather than rounded in the second.
    expect(plan.radiusUsed).toBeWithin(radius, 0, 1 / lpi);
  });
});

describe('groove speed at 33⅓', () => {
  test.each([
    // diameter m, speed m/s, largest wall acceleration for an 18 µm sphere m/s²: calculated
    [0.2926, 0.5107, 14_490],
    [0.12065, 0.2106, 2464],
  ])('at %d m is %d m/s and bends an 18 µm sphere can follow end at %d m/s²', (d, v, a) => {
    const speed = grooveSpeed(d / 2, TURN);
    expect(speed).toBeWithin(v, 0.00005);
    // The limits were calculated from the speeds as given here.
    expect(bendRadius(a, v)).toBeWithin(18e-6, 0, 0.5 / 2464);
    // 45° facets: the edge may move as fast as the groove.
    expect(edgeSlope(v / Math.SQRT2, speed)).toBeWithin(1, 0.0003);
  });
});
