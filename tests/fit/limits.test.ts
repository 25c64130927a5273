import { describe, expect, it } from 'vitest';
import { basePitchFor, withBasePitch } from '../../src/model/fit-base-pitch.js';
import { highestLevels } from '../../src/model/fit-highest.js';
import { judge } from '../../src/model/fit-judge.js';
import { levelRows } from '../../src/model/fit-levels.js';
import { limitingPassages } from '../../src/model/fit-limits.js';
import { headroom } from '../../src/model/level.js';
import { plannedSide } from '../../src/model/planned-side.js';
import type { Settings } from '../../src/settings.js';
import { INCH } from '../../src/units.js';
import { HARD_LATHE, hardProgram, measured, writeProgram } from '../support/fit-side.js';
import { RATE } from '../support/invented-program.js';
import { SOUND_SOURCE, settingsWith } from '../support/model-settings.js';
import { tones } from '../support/signals.js';
import { temporaryFolder } from '../support/temporary-folder.js';

/** Out-of-phase bass for 30 s, in some seconds louder. */
async function wideBass(louder: readonly (readonly [from: number, until: number, db: number])[]) {
  const bass = tones([{ hz: 55, amplitude: 0.1 }], 30 * RATE, RATE);
  const left = bass.map((value, frame) => {
    const passage = louder.find(([from, until]) => frame >= from * RATE && frame < until * RATE);
    return value * 10 ** ((passage?.[2] ?? 0) / 20);
  });
  const program = { left, right: left.map((value) => -value) };
  const path = await writeProgram(await temporaryFolder(), 'bass.wav', program);
  const settings = settingsWith({ executes: 'fixed', basePitch: 150e-6 });
  return plannedSide((await measured(path, settings)).motion, settings);
}

describe('limitingPassages', () => {
  it('says that seconds 4 dB louder than the rest cost 4 dB', async () => {
    const side = await wideBass([[12, 15, 4]]);
    const [first] = limitingPassages(side, 'fixed', SOUND_SOURCE);
    expect(first?.id).toBe('lift');
    // A quarter turn about the passage, and what a step of the level leaves in the chain.
    expect(first?.atSeconds).toBeWithin(12, 0.5);
    expect(first?.untilSeconds).toBeWithin(15, 1);
    expect((first?.withoutDb ?? 0) - (first?.levelDb ?? 0)).toBeWithin(4, 0.15);
    expect(first?.levelDb).toBe(headroom(side, 'fixed').traceDb);
  });

  it('goes on to the next passage, the costs adding up to that of both', async () => {
    const side = await wideBass([
      [8, 10, 3],
      [20, 22, 5],
    ]);
    const passages = limitingPassages(side, 'fixed', SOUND_SOURCE).slice(0, 2);
    expect(passages.map(({ atSeconds }) => atSeconds)).toBeWithin([20, 8], 0.5);
    const costs = passages.map(({ levelDb, withoutDb }) => withoutDb - levelDb);
    expect(costs).toBeWithin([2, 3], 0.15);
  });
});

/** The hard side on some lathe. */
async function hardSide(changes: Partial<Settings>) {
  const settings = settingsWith({ ...HARD_LATHE, ...changes });
  const path = await writeProgram(await temporaryFolder(), 'hard.wav', hardProgram());
  return plannedSide((await measured(path, settings)).motion, settings);
}

describe('basePitchFor', () => {
  it.each([null, 2e-6, 5e-6])(
    'gives a range whose ends hold and beyond which the next step does not, step %s',
    async (pitchStep) => {
      const side = await hardSide({ pitchStep, startDiameter: 0.1275, innerDiameter: 0.1226 });
      const level = -6;
      const { holds } = basePitchFor(side, 'fixed', level, SOUND_SOURCE);
      if (holds === null) throw new Error('no pitch holds');
      const faults = (pitch: number) =>
        judge(withBasePitch(side, pitch), 'fixed', level, SOUND_SOURCE).faults;
      const step = pitchStep ?? 1e-8;
      expect(faults(holds.tightest)).toEqual([]);
      expect(faults(holds.widest)).toEqual([]);
      expect(faults(holds.widest + step).map(({ id }) => id)).toContain('too-long');
      expect(faults(holds.tightest - step).map(({ id }) => id)).toContain('overcut');
      expect([holds.tightest / step, holds.widest / step]).toBeWithin(
        [Math.round(holds.tightest / step), Math.round(holds.widest / step)],
        1e-6,
      );
    },
  );

  it('ends where a wider pitch would take bends too far in, if that is sooner', async () => {
    const side = await hardSide({ baseWidth: 70e-6, innerDiameter: 0.11, pitchStep: 1e-6 });
    const { holds } = basePitchFor(side, 'fixed', -1, SOUND_SOURCE);
    if (holds === null) throw new Error('no pitch holds');
    const faults = (pitch: number) =>
      judge(withBasePitch(side, pitch), 'fixed', -1, SOUND_SOURCE).faults.map(({ id }) => id);
    expect(faults(holds.widest)).toEqual([]);
    expect(faults(holds.widest + 1e-6)).toEqual(['tight-bend']);
  });

  it('says what is missing where even the tightest pitch is too long', async () => {
    const side = await hardSide({ startDiameter: 0.1215 });
    const { holds, missing } = basePitchFor(side, 'fixed', -12, SOUND_SOURCE);
    expect(holds).toBe(null);
    expect(missing?.pitch).toBeWithin(INCH / 600, 1e-8);
    expect(missing?.faults.map(({ id }) => id)).toContain('too-long');
  });
});

describe('levelRows', () => {
  it('has a row for each half decibel from −6 to +6 dB, and what a forecast has at it', async () => {
    const side = await hardSide({});
    const rows = levelRows(side, ['machine', 'fixed'], SOUND_SOURCE);
    expect(rows.map(({ levelDb }) => levelDb)).toEqual(
      Array.from({ length: 25 }, (_, at) => (at - 12) / 2),
    );
    for (const at of [0, 12, 24]) {
      const row = rows[at];
      expect(row?.judgements[1]).toEqual(judge(side, 'fixed', row?.levelDb ?? 0, SOUND_SOURCE));
    }
  });

  it('keeps to the steps of a coarser control, and counts a finer one in half decibels', async () => {
    for (const [levelStep, levels] of [
      [1.5, [-6, -4.5, -3, -1.5, 0, 1.5, 3, 4.5, 6]],
      [4, [-4, 0, 4]],
      [0.2, Array.from({ length: 21 }, (_, at) => (at - 10) * 0.6)],
    ] as const) {
      const side = await hardSide({ levelStep });
      const found = levelRows(side, ['fixed'], SOUND_SOURCE).map(({ levelDb }) => levelDb);
      expect(found).toBeWithin(levels, 1e-12);
    }
  });
});

describe('highestLevels', () => {
  it('are those of the headroom', async () => {
    for (const planner of ['machine', 'turn-ahead', 'fixed'] as const) {
      const side = await hardSide({ startDiameter: 0.1265 });
      const { fillDb, traceDb } = headroom(side, planner);
      expect(highestLevels(side, planner)).toEqual({ fillDb, traceDb });
    }
  });
});
