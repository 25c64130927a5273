import { expect, test } from 'vitest';
import { designHighPass, filterBiquad } from '../../src/analysis/biquad.js';
import { settlingSeconds } from '../../src/analysis/settling.js';
import type { Settings } from '../../src/settings.js';
import { settingsWith } from './summary-of.js';

/** Low, so that what is left is the filters' and not their rounding. */
const RATE = 2000;

// A constant that begins at once is the worst that a part can begin with: 1, here.
test.each<Partial<Settings>>([
  { subsonicHz: 1 },
  { subsonicHz: 20 },
  { subsonicHz: 20, speedFactor: 0.5 },
  { subsonicHz: 20, ellipticalHz: 10, ellipticalOrder: 1 },
  { subsonicHz: 10, ellipticalHz: 10, ellipticalOrder: 2 },
  { subsonicHz: 2, ellipticalHz: 12, ellipticalOrder: 2, speedFactor: 0.5 },
])('after the settling a beginning has fallen by 190 dB: %o', (changes) => {
  const settings = settingsWith(changes);
  const settled = Math.ceil(settlingSeconds(settings) * RATE);
  const begun = new Float64Array(settled + RATE).fill(1);
  const high = filterBiquad(
    begun,
    designHighPass(2, settings.subsonicHz / settings.speedFactor, RATE),
  );
  const left =
    settings.ellipticalHz === null
      ? high
      : filterBiquad(
          high,
          designHighPass(
            settings.ellipticalOrder,
            settings.ellipticalHz / settings.speedFactor,
            RATE,
          ),
        );
  const most = (from: number) => Math.max(...left.subarray(from).map(Math.abs));
  expect(most(settled)).toBeLessThan(10 ** (-190 / 20));
  // It is not there at once, and the wait is not longer than a few times what is needed.
  expect(most(Math.floor(settled / 4))).toBeGreaterThan(10 ** (-190 / 20));
});
