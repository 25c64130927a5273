import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { forecastSide } from '../../../src/model/forecast-model.js';
import { microscopePlaces } from '../../../src/report/html/microscope-places.js';
import { forecastedFile } from '../../support/forecast-fixture.js';
import { SOUND_SOURCE, settingsWith } from '../../support/model-settings.js';
import { randomMotion } from '../../support/random-motion.js';

describe('the places kept for the microscope', () => {
  it('begin with the hot spots of the forecast, hold each once, and are ten at most', () => {
    let further = 0;
    const settings = settingsWith({ executes: 'fixed' });
    const property = (motion: ReturnType<typeof forecastedFile>['motion']) => {
      if (motion === null) throw new Error('no motion');
      const request = { levelDb: 0, planner: 'turn-ahead', source: SOUND_SOURCE } as const;
      const forecast = forecastSide(motion, settings, request);
      const file = { ...forecastedFile({ settings }), forecast, motion };
      const places = microscopePlaces(file).map(({ atSeconds }) => atSeconds);
      const own = forecast.hotSpots.map(({ atSeconds }) => atSeconds);
      expect(places.slice(0, own.length)).toEqual(own);
      expect(new Set(places).size).toBe(places.length);
      expect(places.length).toBeLessThanOrEqual(10);
      further += places.length - own.length;
      const quieter = forecastSide(motion, settings, { ...request, levelDb: -3 }).hotSpots;
      const [worst] = quieter.map(({ atSeconds }) => atSeconds);
      if (worst !== undefined) expect(places).toContain(worst);
    };
    fc.assert(fc.property(randomMotion({ longestTurns: 12 }), property), { numRuns: 30 });
    expect(further).toBeGreaterThan(0);
  });
});
