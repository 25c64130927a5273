import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createAnalyser } from '../../../../src/analysis/analyse.js';
import type { MotionSummary } from '../../../../src/analysis/motion.js';
import { forecastSide } from '../../../../src/model/forecast-model.js';
import type { Planner, Settings } from '../../../../src/settings.js';
import { emptyMotion } from '../../../support/empty-motion.js';
import { SOUND_SOURCE, settingsWith } from '../../../support/model-settings.js';
import { randomMotion } from '../../../support/random-motion.js';
import { realRecordings, wordsOf } from '../../../support/real-recordings.js';
import { roundedAsPage, throughPage, told } from '../support.js';

/** The page against the command on the same numbers; what rounding them costs is compared apart. */
const AGREES = 1e-9;
/** Half of the last digit that any output shows: 0.01 µm. */
const SHOWN = 0.005e-6;
const SECONDS = 40;

const LEVELS = fc.double({ min: -12, max: 6, noNaN: true });
const PLANNERS = fc.constantFrom<Planner>('fixed', 'machine', 'turn-ahead');
const CHANGES = fc.constantFrom<Partial<Settings>>(
  {},
  { executes: 'plan', landMin: 25e-6 },
  { executes: 'fixed', basePitch: 140e-6, baseWidth: 40e-6 },
  { depthTolerance: 0, pitchTolerance: 0, timingTolerance: 0 },
);

describe('the summary that a page keeps', () => {
  it('forecasts what the whole one does at any level, planner and setting', () => {
    const property = (
      motion: MotionSummary,
      levelDb: number,
      planner: Planner,
      changes: Partial<Settings>,
    ) => {
      const settings = settingsWith(changes);
      const forecast = forecastAt({ levelDb, planner });
      const kept = forecast(throughPage(motion, settings), settings);
      const whole = forecast(roundedAsPage(motion, settings), settings);
      // A pitch that opens as fast as on motion that no sound makes leaves only the first one sure.
      const sure = settings.executes === 'fixed' ? kept.hotSpots.length : 1;
      const page = told({ ...kept, hotSpots: kept.hotSpots.slice(0, sure) });
      const command = told({ ...whole, hotSpots: whole.hotSpots.slice(0, sure) });
      expect(page.words).toEqual(command.words);
      expect(page.numbers).toBeWithin(command.numbers, 1e-18, AGREES);
    };
    const motions = randomMotion({ longestTurns: 8 });
    fc.assert(fc.property(motions, LEVELS, PLANNERS, CHANGES, property), { numRuns: 100 });
  });

  it('has a hot spot that decides only what two others leave of a quarter', () => {
    const motion = emptyMotion(8 * 1.8);
    const [first, turn] = [3 * 64, 64];
    // The first two, 2 turns and 4 bins apart, leave bins 1 to 5 of the quarter in the middle: 3 is
    // the tightest of them, though on both sides of them are tighter ones.
    const asked = [
      [first + 1, 40],
      [first + 2 * turn + 5, 39],
      [first + turn, 30],
      [first + turn + 3, 20],
      [first + turn + 6, 30],
    ] as const;
    for (const [bin, micrometres] of asked) motion.approachLoose[bin] = micrometres * 1e-6;
    const settings = settingsWith({ executes: 'fixed' });
    const forecast = forecastAt({ levelDb: 0, planner: 'fixed' });
    const [whole, kept] = [roundedAsPage(motion, settings), throughPage(motion, settings)].map(
      (of) => forecast(of, settings).hotSpots.map(({ turn: at }) => 64 * at - first),
    );
    expect(whole).toEqual([1, 2 * turn + 5, turn + 3]);
    expect(kept).toEqual(whole);
  });

  describe('of real recordings', async () => {
    const { motion, settings } = await realMotion();
    const kept = throughPage(motion, settings);

    it.for([-12, -6.3, -3, 0, 1.5, 6])('has the same hot spots and causes at %d dB', (levelDb) => {
      for (const planner of ['fixed', 'machine', 'turn-ahead'] as const) {
        const asked = { ...settings, executes: 'plan' as const };
        const forecast = forecastAt({ levelDb, planner });
        const page = told(forecast(kept, asked));
        const command = told(forecast(roundedAsPage(motion, asked), asked));
        expect(page.words).toEqual(command.words);
        expect(page.numbers).toBeWithin(command.numbers, 1e-18, AGREES);
      }
    });

    it('costs less by its rounding than any output shows', () => {
      const request = { levelDb: 0, planner: 'turn-ahead', source: SOUND_SOURCE } as const;
      const page = forecastSide(kept.motion, settings, request);
      const command = forecastSide(motion, settings, request);
      for (const name of ['land', 'widthMin', 'widthMax', 'pitch'] as const) {
        expect(page.quarters[name]).toBeWithin(command.quarters[name], SHOWN / 10);
      }
      // The sum of all pitches before it, told to 1 µm at the finest.
      expect(page.quarters.radius).toBeWithin(command.quarters.radius, SHOWN);
    });
  });
});

function forecastAt(at: { readonly levelDb: number; readonly planner: Planner }) {
  return ({ motion, rows }: ReturnType<typeof throughPage>, settings: Settings) =>
    forecastSide(motion, settings, { ...at, source: SOUND_SOURCE, rows });
}

async function realMotion() {
  const settings = settingsWith({ basePitch: 60e-6, baseWidth: 45e-6 });
  const words = wordsOf(await realRecordings(), 16, SECONDS);
  const format = { encoding: 'pcm', bitDepth: 32, channels: 2, sampleRate: 44_100 } as const;
  const analyser = await createAnalyser(format, words.length / 2, settings);
  const loud = words.map((word) => word * 2 ** 16);
  analyser.push(new Uint8Array(loud.buffer));
  return { motion: analyser.finish(), settings };
}
