import { describe, expect, test } from 'vitest';
import { forecastSide } from '../../src/model/forecast-model.js';
import { headLoad } from '../../src/model/head-load.js';
import { emptyMotion } from '../support/empty-motion.js';
import { SOUND_SOURCE, settingsWith } from '../support/model-settings.js';

describe('head load', () => {
  test('of a steady tone is its mean square, at any length of window', () => {
    const motion = emptyMotion(40);
    motion.left.accelerationMeanSquare.fill(2e6);
    const { left, right } = headLoad(motion, settingsWith({ headLimit: 4e6 }), 0);
    expect(left.oneSecond).toBeWithin(2e6, 1e-3);
    expect(left.tenSeconds).toBeWithin(2e6, 1e-3);
    expect(left.limitRatio).toBeWithin(0.5, 1e-9);
    expect(right).toEqual({ oneSecond: 0, tenSeconds: 0, limitRatio: 0 });
  });

  test('of one loud second is a tenth over ten', () => {
    const motion = emptyMotion(40);
    // Two quarters are the whole ones nearest to a second, 22 to ten.
    motion.right.accelerationMeanSquare.fill(2e6, 30, 32);
    const { right } = headLoad(motion, settingsWith(), 0);
    expect(right.oneSecond).toBeWithin(2e6, 1e-3);
    expect(right.tenSeconds).toBeWithin((2e6 * 2) / 22, 1e-3);
    expect(right.limitRatio).toBeNull();
  });

  test('goes with the square of the level, and with a sixteenth at half speed', () => {
    const motion = emptyMotion(40);
    motion.left.accelerationMeanSquare.fill(1e6);
    const loud = headLoad(motion, settingsWith(), 20 * Math.log10(3));
    expect(loud.left.oneSecond).toBeWithin(9e6, 1e-3);
    const half = headLoad(motion, settingsWith({ speedFactor: 0.5 }), 0);
    expect(half.left.tenSeconds).toBeWithin(1e6 / 16, 1e-3);
  });

  test('is in the forecast, at the planned level and against the limit', () => {
    const motion = emptyMotion(40);
    motion.right.accelerationMeanSquare.fill(1e6);
    const request = { levelDb: -20, planner: 'turn-ahead', source: SOUND_SOURCE } as const;
    const forecast = forecastSide(motion, settingsWith({ headLimit: 5e3 }), request);
    expect(forecast.headLoad.right.oneSecond).toBeWithin(1e4, 1e-5);
    expect(forecast.headLoad.right.limitRatio).toBeWithin(2, 1e-9);
    expect(forecast.headLoad.left.tenSeconds).toBe(0);
  });
});
