import fc from 'fast-check';
import { expect, test } from 'vitest';
import { simplified } from '../../../../src/report/html/page/pictures/paint/simplified.js';

test('a simplified line is nowhere further from the points than the tolerance', () => {
  const lines = fc.array(fc.double({ min: -50, max: 50, noNaN: true }), {
    minLength: 1,
    maxLength: 120,
  });
  fc.assert(
    fc.property(lines, fc.double({ min: 0.01, max: 20, noNaN: true }), (heights, tolerance) => {
      const points = heights.map((y, x) => [x * 0.7, y] as const);
      const kept = simplified(points, tolerance);
      expect(kept[0]).toBe(points[0]);
      expect(kept.at(-1)).toBe(points.at(-1));
      for (const [x, y] of points) {
        expect(heightAt(kept, x)).toBeWithin(y, tolerance + 1e-9, 0);
      }
    }),
  );
});

test('a straight line is two points, a bend a third', () => {
  const straight = Array.from({ length: 50 }, (_, x) => [x, 3 * x] as const);
  expect(simplified(straight, 0.1)).toEqual([
    [0, 0],
    [49, 147],
  ]);
  const bent = Array.from({ length: 51 }, (_, x) => [x, Math.abs(x - 25)] as const);
  expect(simplified(bent, 0.1)).toHaveLength(3);
});

function heightAt(line: readonly (readonly [number, number])[], x: number): number {
  const next = line.findIndex(([at]) => at >= x);
  const [to, before] = [line[next], line[next - 1]];
  if (to === undefined) return Number.NaN;
  if (before === undefined || to[0] === x) return to[1];
  return before[1] + ((to[1] - before[1]) * (x - before[0])) / (to[0] - before[0]);
}
