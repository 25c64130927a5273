import { describe, expect, test } from 'vitest';
import { basePitchFor, isOfThePitch, withBasePitch } from '../../src/model/fit-base-pitch.js';
import { highestLevels } from '../../src/model/fit-highest.js';
import { judge } from '../../src/model/fit-judge.js';
import { levelRows } from '../../src/model/fit-levels.js';
import { headroom } from '../../src/model/level.js';
import { plannedSide } from '../../src/model/planned-side.js';
import type { Settings } from '../../src/settings.js';
import { INCH } from '../../src/units.js';
import { findingWith } from '../support/forecast-fixture.js';
import { swayingMotion } from '../support/loud-passages.js';
import { EXACT, SOUND_SOURCE, settingsWith } from '../support/model-settings.js';

/** A side whose outer wall swings by 40 µm; base width 50.8 µm. */
function swayingSide(seconds: number, changes: Partial<Settings> = {}) {
  const settings = settingsWith({ ...EXACT, executes: 'fixed', basePitch: 120e-6, ...changes });
  return plannedSide(swayingMotion(seconds, 40e-6), settings);
}

const ids = (faults: readonly { readonly id: string }[]) => faults.map(({ id }) => id);

describe('a judgement', () => {
  test('has the room that is left, and the faults and nothing else', () => {
    const side = swayingSide(18);
    const quiet = judge(side, 'fixed', 0, SOUND_SOURCE);
    expect(quiet.faults).toEqual([]);
    // Ten turns of 120 µm.
    expect(quiet.endDiameter).toBeWithin(side.settings.startDiameter - 20 * 120e-6, 1e-12);
    const room = (side.settings.startDiameter - side.settings.innerDiameter) / 2;
    expect(quiet.spare).toBeWithin(room - 10 * 120e-6, 1e-12);
    // Twice the swing is more than 120 − 50.8 µm.
    const loud = judge(side, 'fixed', 20 * Math.log10(2), SOUND_SOURCE);
    expect(ids(loud.faults)).toEqual(['overcut']);
    expect(loud.levelDb).toBeWithin(6.0206, 1e-4);
  });
});

describe('level against spare', () => {
  test('is judged by each planner, in the order asked', () => {
    const side = swayingSide(18);
    const rows = levelRows(side, ['turn-ahead', 'fixed'], SOUND_SOURCE);
    expect(rows).toHaveLength(25);
    for (const { levelDb, judgements } of rows) {
      expect(judgements).toEqual([
        judge(side, 'turn-ahead', levelDb, SOUND_SOURCE),
        judge(side, 'fixed', levelDb, SOUND_SOURCE),
      ]);
    }
  });

  test.each([
    [0.5, Array.from({ length: 25 }, (_, at) => (at - 12) / 2)],
    [0.25, Array.from({ length: 25 }, (_, at) => (at - 12) / 2)],
    // Three steps of 0.2 dB are the fewest that make half a decibel.
    [0.2, Array.from({ length: 21 }, (_, at) => (at - 10) * 0.6)],
    [0.1, Array.from({ length: 25 }, (_, at) => (at - 12) / 2)],
    [1.5, [-6, -4.5, -3, -1.5, 0, 1.5, 3, 4.5, 6]],
    [4, [-4, 0, 4]],
  ])('has the steps of a control of %d dB, none finer than half a decibel', (levelStep, levels) => {
    const rows = levelRows(swayingSide(2, { levelStep }), ['fixed'], SOUND_SOURCE);
    expect(rows.map(({ levelDb }) => levelDb)).toBeWithin(levels, 1e-12);
    expect(rows.some(({ levelDb }) => Object.is(levelDb, -0))).toBe(false);
  });
});

test.each(['fixed', 'machine', 'turn-ahead'] as const)(
  'the highest levels of %s are those of its headroom',
  (planner) => {
    const side = swayingSide(18, { startDiameter: 0.1235, widthMin: 40e-6 });
    const { fillDb, traceDb } = headroom(side, planner);
    expect(highestLevels(side, planner)).toEqual({ fillDb, traceDb });
  },
);

describe('the base pitch for a level', () => {
  // 100 turns, and room for a pitch of 120.505 µm.
  const long = { startDiameter: 0.12065 + 2 * 12.0505e-3, pitchMax: 200e-6 };

  test.each([null, 1e-6, 3e-6])(
    'holds from the groove and its swing up to the room, step %j',
    (pitchStep) => {
      const { holds, missing, levelDb } = basePitchFor(
        swayingSide(180, { ...long, pitchStep }),
        'fixed',
        0,
        SOUND_SOURCE,
      );
      const step = pitchStep ?? 1e-8;
      expect(levelDb).toBe(0);
      expect(missing).toBeNull();
      // A groove of 50.8 µm and a swing of 40 leave no land.
      const [least, most] = [90.8e-6 - 5e-9, 120.505e-6];
      expect(holds?.tightest).toBeWithin(Math.ceil(least / step) * step, 1e-12);
      expect(holds?.widest).toBeWithin(Math.floor(most / step) * step, 1e-12);
    },
  );

  test('goes with the level', () => {
    const { holds } = basePitchFor(swayingSide(180, long), 'fixed', -6, SOUND_SOURCE);
    expect(holds?.tightest).toBeWithin(50.8e-6 + 40e-6 * 10 ** (-6 / 20), 2e-8);
  });

  test('ends at pitchMax where there is room for more', () => {
    const side = swayingSide(18, { pitchMax: 133.3e-6, pitchStep: 2e-6 });
    expect(basePitchFor(side, 'fixed', 0, SOUND_SOURCE).holds?.widest).toBeWithin(132e-6, 1e-12);
  });

  test('is missing where the tightest does not fit, and where none has land and room', () => {
    const short = { ...long, startDiameter: 0.12065 + 2 * 4e-3 };
    const tooShort = basePitchFor(swayingSide(180, short), 'fixed', 0, SOUND_SOURCE);
    expect(tooShort.holds).toBeNull();
    expect(tooShort.missing?.pitch).toBeWithin(INCH / 600, 1e-8);
    expect(ids(tooShort.missing?.faults ?? [])).toContain('too-long');
    // It fits up to 80 µm, and has land from 90.8 µm on.
    const tight = { ...long, startDiameter: 0.12065 + 2 * 8.0055e-3 };
    const noLand = basePitchFor(swayingSide(180, tight), 'fixed', 0, SOUND_SOURCE);
    expect(noLand.holds).toBeNull();
    expect(noLand.missing?.pitch).toBeWithin(80.05e-6, 1e-12);
    expect(ids(noLand.missing?.faults ?? [])).toEqual(['overcut']);
  });

  test('may be asked about some faults only', () => {
    const matters = ({ id }: { readonly id: string }) => id !== 'overcut';
    const side = swayingSide(180, { ...long, startDiameter: 0.12065 + 2 * 8.0055e-3 });
    const { holds } = basePitchFor(side, 'fixed', 0, SOUND_SOURCE, matters);
    expect(holds?.tightest).toBeWithin(INCH / 600, 1e-8);
    expect(holds?.widest).toBeWithin(80.05e-6, 1e-12);
  });

  test('does not mend silence, which is no fault of the pitch', () => {
    const motion = swayingMotion(18, 0);
    const program = { ...motion.program, samplePeak: [0, 0] as const };
    const side = plannedSide({ ...motion, program }, settingsWith(EXACT));
    expect(ids(judge(side, 'fixed', 0, SOUND_SOURCE).faults)).toEqual(['silent']);
    expect(basePitchFor(side, 'fixed', 0, SOUND_SOURCE).holds).not.toBeNull();
  });
});

test('a base pitch mends room and land, no other fault', () => {
  const mended = ['too-long', 'overcut', 'pitch-limit', 'lift', 'facet', 'silent'] as const;
  expect(mended.filter((id) => isOfThePitch(findingWith({ id })))).toEqual([
    'too-long',
    'overcut',
    'pitch-limit',
  ]);
});

test('a side of another base pitch is the same program on another lathe', () => {
  const side = swayingSide(18);
  const wider = withBasePitch(side, 140e-6);
  expect(wider.settings).toEqual({ ...side.settings, basePitch: 140e-6 });
  expect(wider.motion).toBe(side.motion);
  expect(judge(wider, 'fixed', 0, SOUND_SOURCE).endDiameter).toBeWithin(
    side.settings.startDiameter - 20 * 140e-6,
    1e-12,
  );
});
