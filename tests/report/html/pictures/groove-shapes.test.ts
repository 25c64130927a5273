import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { grooveProfile } from '../../../../src/report/html/page/pictures/microscope/groove-profile.js';
import { roundLength } from '../../../../src/report/html/page/pictures/microscope/scale-bar.js';
import { seatedTip } from '../../../../src/report/html/page/pictures/microscope/seated-tip.js';

// Geometry of a sphere and an arc in a right-angled V; the least width that a sphere needs, √2·R, is
// the 25.4 µm that RIAA asks of an 18 µm tip (secondary source).

const widths = fc.double({ min: 1e-6, max: 200e-6, noNaN: true });
const radii = fc.double({ min: 2e-6, max: 25e-6, noNaN: true });

describe('the seated tip', () => {
  test('touches both walls and cuts into neither', () => {
    fc.assert(
      fc.property(widths, radii, (width, radius) => {
        const seat = seatedTip(width, radius);
        const { centre = Number.NaN, contact = Number.NaN, reach = Number.NaN } = seat ?? {};
        // The outer wall from its edge down: x + depth = w/2.
        expect(reach + contact).toBeWithin(width / 2, 1e-15, 1e-12);
        expect(Math.hypot(reach, centre + contact)).toBeWithin(radius, 1e-15, 1e-9);
        for (let depth = 0; depth <= width / 2; depth += width / 200) {
          const distance = Math.hypot(width / 2 - depth, centre + depth);
          expect(distance).toBeGreaterThan(radius - 1e-12);
        }
      }),
    );
  });

  test('comes to lie on the edges of a groove narrower than √2 of its radius', () => {
    const radius = 18e-6;
    expect(seatedTip(25.4e-6, radius)?.contact).toBe(0);
    expect(seatedTip(25.5e-6, radius)?.contact).toBeGreaterThan(0);
    expect(seatedTip(0, radius)).toBeNull();
    expect(seatedTip(-5e-6, radius)).toBeNull();
  });
});

describe('the profile of a groove', () => {
  test('runs at 45° from its edges to where the round bottom begins, smoothly', () => {
    const [inner, outer, bottom] = [-20e-6, 30e-6, 4e-6];
    const points = grooveProfile(inner, outer, bottom);
    const [, first = [0, 0]] = points;
    const last = points.at(-2) ?? [0, 0];
    expect(first[0] - inner).toBeWithin(-first[1], 1e-15, 1e-9);
    expect(outer - last[0]).toBeWithin(-last[1], 1e-15, 1e-9);
    // The walls would meet 25 µm deep; the bottom stays (√2 − 1)·ρ above that.
    const deepest = Math.min(...points.map(([, z]) => z));
    expect(deepest).toBeWithin(-(25e-6 - (Math.SQRT2 - 1) * bottom), 1e-12, 0);
  });

  test('is never above the surface and never wider than its edges, however narrow', () => {
    fc.assert(
      fc.property(widths, radii, (width, bottom) => {
        for (const [x, z] of grooveProfile(-width / 2, width / 2, bottom)) {
          expect(z).toBeLessThanOrEqual(0);
          expect(Math.abs(x)).toBeLessThanOrEqual(width / 2 + 1e-15);
        }
      }),
    );
  });

  test('of a cutter that has left the lacquer is nothing', () => {
    expect(grooveProfile(3e-6, 1e-6, 4e-6)).toEqual([]);
  });
});

test.each([
  [137e-6, 'metric', '100 µm', 100e-6],
  [99e-6, 'metric', '50 µm', 50e-6],
  [1.3e-3, 'metric', '1 mm', 1e-3],
  [137e-6, 'us', '5 mil', 127e-6],
  [30e-3, 'us', '1 in', 25.4e-3],
] as const)('a scale bar within %d m in %s units is %s', (longest, units, name, length) => {
  const bar = roundLength(longest, units);
  expect(bar.name).toBe(name);
  expect(bar.length).toBeWithin(length, 1e-12, 1e-12);
});
