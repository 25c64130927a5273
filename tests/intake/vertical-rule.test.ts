import { describe, expect, test } from 'vitest';
import { intakeResult } from '../../src/intake/intake-result.js';
import { NO_RULES } from '../../src/intake/rules.js';
import { forecastSide } from '../../src/model/forecast-model.js';
import { emptyMotion } from '../support/empty-motion.js';
import { forecastedFile } from '../support/forecast-fixture.js';
import { SOUND_SOURCE, settingsWith } from '../support/model-settings.js';

/** A quiet side whose low band moves up and down by 4 µm at level 0 dB in one quarter turn. */
function judgedAt(levelDb: number, mostVerticalLow: number) {
  const motion = emptyMotion(9);
  motion.lowBand.verticalAmplitude[7] = 4e-6;
  const settings = settingsWith({});
  const request = { levelDb, planner: 'turn-ahead', source: SOUND_SOURCE } as const;
  const forecast = { ...forecastSide(motion, settings, request), findings: [] };
  const file = { ...forecastedFile({ settings }), forecast };
  return intakeResult('a.wav', file, { ...NO_RULES, mostVerticalLow }).findings;
}

describe("the house's rule on vertical bass", () => {
  test('is about the motion at the planned level: twice as loud is twice as far', () => {
    const twice = 20 * Math.log10(2);
    expect(judgedAt(twice, 8.01e-6)).toEqual([]);
    expect(judgedAt(twice, 7.99e-6)).toMatchObject([{ id: 'rule-vertical' }]);
    expect(judgedAt(-twice, 1.99e-6)).toMatchObject([{ id: 'rule-vertical' }]);
    expect(judgedAt(-twice, 2.01e-6)).toEqual([]);
  });

  test('names the quarter turn that moves most', () => {
    const turn = 60 / settingsWith({}).rpm;
    expect(judgedAt(0, 1e-6)[0]?.atSeconds).toBeWithin((7 * turn) / 4, 1e-9);
  });
});
