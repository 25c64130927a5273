import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  following,
  panned,
  zoomedAround,
  zoomedTo,
} from '../../../../src/report/html/page/pictures/along/view-span.js';

const WHOLE = { from: -1.8, until: 600 };
const place = fc.double({ min: -1.8, max: 600, noNaN: true });

test('a view is never shorter than the least, and lies within the whole', () => {
  fc.assert(
    fc.property(place, place, fc.double({ min: -900, max: 900, noNaN: true }), (one, other, by) => {
      for (const view of [
        zoomedTo(WHOLE, one, other, 1.8),
        panned(WHOLE, zoomedTo(WHOLE, one, other, 1.8), by),
        zoomedAround(WHOLE, zoomedTo(WHOLE, one, other, 1.8), one, 0.01, 1.8),
      ]) {
        expect(view.until - view.from).toBeGreaterThanOrEqual(1.8 - 1e-9);
        expect(view.from).toBeGreaterThanOrEqual(WHOLE.from - 1e-9);
        expect(view.until).toBeLessThanOrEqual(WHOLE.until + 1e-9);
      }
    }),
  );
});

test('a drag zooms to its two ends, whichever comes first', () => {
  expect(zoomedTo(WHOLE, 100, 200, 1.8)).toEqual({ from: 100, until: 200 });
  expect(zoomedTo(WHOLE, 200, 100, 1.8)).toEqual({ from: 100, until: 200 });
});

test('zooming around a place leaves it where it is on the screen', () => {
  const view = zoomedAround(WHOLE, { from: 100, until: 200 }, 130, 0.5, 1.8);
  expect((130 - view.from) / (view.until - view.from)).toBeWithin(0.3, 1e-12, 0);
  expect(view.until - view.from).toBeWithin(50, 1e-9, 0);
});

test('zooming out far enough shows the whole, and a side shorter than the least is the whole', () => {
  const out = zoomedAround(WHOLE, { from: 100, until: 200 }, 150, 99, 1.8);
  expect([out.from, out.until]).toBeWithin([-1.8, 600], 1e-9, 0);
  const short = { from: 0, until: 1 };
  expect(zoomedTo(short, 0.2, 0.3, 1.8)).toEqual(short);
  expect(zoomedAround(short, short, 0.5, 0.5, 1.8)).toEqual(short);
});

test('a cursor that leaves the view is followed, one inside it moves nothing', () => {
  const view = { from: 100, until: 110 };
  expect(following(WHOLE, view, 105)).toBe(view);
  expect(following(WHOLE, view, 300)).toEqual({ from: 295, until: 305 });
});
