import { expect, test } from 'vitest';
import { forecastMotion } from '../../src/forecast-motion.js';
import { decodeMotion } from '../../src/motion-file/decode-motion.js';
import { encodeMotion } from '../../src/motion-file/encode-motion.js';
import { COLUMNS } from '../../src/motion-file/motion-columns.js';
import { resolveProfile } from '../../src/profile/resolve-profile.js';
import { sideToJson } from '../../src/report/side-json.js';
import { emptyMotion } from '../support/empty-motion.js';
import { savedMotion } from '../support/saved-motion.js';

test.each([
  ['the largest numbers', 1e60, 32_767],
  ['the lowest numbers', -1e60, -32_768],
  ['numbers next to nothing', 5e-324, 0],
] as const)('a motion that is nothing but %s still ends in a forecast', (_, number, integer) => {
  const motion = emptyMotion(20);
  for (const { of, type } of COLUMNS) {
    of(motion).fill(type === 'float64' ? number : type === 'int16' ? integer : 2 ** 32 - 1);
  }
  const saved = decodeMotion('', encodeMotion(savedMotion(motion)));
  const file = forecastMotion(saved, resolveProfile(), { levelDb: 0, planner: 'turn-ahead' });
  expect(sideToJson(file, { quarters: true }).durationSeconds).toBe(20);
});
