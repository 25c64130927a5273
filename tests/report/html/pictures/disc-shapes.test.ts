import { describe, expect, test } from 'vitest';
import { planSide } from '../../../../src/model/plan.js';
import { radiusUsed } from '../../../../src/model/plan-report.js';
import { plannedSide } from '../../../../src/model/planned-side.js';
import { pitchRings } from '../../../../src/report/html/page/pictures/disc/pitch-rings.js';
import { spiralPoints } from '../../../../src/report/html/page/pictures/disc/spiral-points.js';
import { emptyMotion } from '../../../support/empty-motion.js';
import { settingsWith } from '../../../support/model-settings.js';

describe('the rings of the program', () => {
  test('lie without gaps from the start diameter to where the program ends', () => {
    const settings = settingsWith();
    const side = plannedSide(emptyMotion(18 * 60), settings);
    const plan = planSide(side, 'turn-ahead', 0);
    const rings = pitchRings(side, plan, 0.4e-3);
    let outer = settings.startDiameter / 2;
    for (const ring of rings) {
      expect(ring.outer).toBeWithin(outer, 1e-12, 0);
      expect(ring.pitch).toBeWithin(settings.basePitch, 0, 1e-9);
      outer = ring.inner;
    }
    expect(outer).toBeWithin(settings.startDiameter / 2 - radiusUsed(side, plan), 1e-9, 0);
    expect(rings.length).toBeGreaterThan(50);
  });

  test('end at the centre where a side would go past it', () => {
    const side = plannedSide(emptyMotion(3600), settingsWith({ basePitch: 90e-6 }));
    const rings = pitchRings(side, planSide(side, 'fixed', 0), 0.4e-3);
    expect(rings.at(-1)?.inner).toBe(0);
  });
});

test('a spiral falls by its pitch a turn, against the clock as seen from above', () => {
  const points = spiralPoints(100, 96, 2);
  const radii = points.map(([x, y]) => Math.hypot(x, y));
  expect(radii[0]).toBeWithin(100, 1e-9, 0);
  expect(radii[60]).toBeWithin(98, 1e-9, 0);
  expect(radii.at(-1)).toBeWithin(96, 1e-9, 0);
  // y points down, so the first step up the picture is to negative y.
  expect(points[1]?.[1]).toBeLessThan(0);
  expect(spiralPoints(50, 60, 2)).toHaveLength(1);
});
