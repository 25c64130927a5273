import { describe, expect, test } from 'vitest';
import { headLoad } from '../../src/model/head-load.js';
import { emptyMotion } from '../support/empty-motion.js';
import { settingsWith } from '../support/model-settings.js';

describe('head load', () => {
  test('of a steady tone is its mean square, at any length of window', () => {
    const motion = emptyMotion(40);
    motion.left.accelerationMeanSquare.fill(2e6);
    const { left, right } = headLoad(motion, settingsWith({ headLimit: 4e6 }), 0);
    expect(left.oneSecond).toBeWithin(2e6, 1e-3);
    expect(left.tenSeconds).toBeWithin(2e6, 1e-3);
    expect(left.share).toBeWithin(0.5, 1e-9);
    expect(right).toEqual({ oneSecond: 0, tenSeconds: 0, share: 0 });
  });

  test('of one loud second is a tenth over ten', () => {
    const motion = emptyMotion(40);
    // Two quarters are the whole ones nearest to a second, 22 to ten.
    motion.right.accelerationMeanSquare.fill(2e6, 30, 32);
    const { right } = headLoad(motion, settingsWith(), 0);
    expect(right.oneSecond).toBeWithin(2e6, 1e-3);
    expect(right.tenSeconds).toBeWithin((2e6 * 2) / 22, 1e-3);
    expect(right.share).toBeNull();
  });

  test('goes with the square of the level, and with a sixteenth at half speed', () => {
    const motion = emptyMotion(40);
    motion.left.accelerationMeanSquare.fill(1e6);
    const loud = headLoad(motion, settingsWith(), 20 * Math.log10(3));
    expect(loud.left.oneSecond).toBeWithin(9e6, 1e-3);
    const half = headLoad(motion, settingsWith({ speedFactor: 0.5 }), 0);
    expect(half.left.tenSeconds).toBeWithin(1e6 / 16, 1e-3);
  });
});
