// Each remedy's claim against a forecast of the remedied sound made afresh: the file is written with
// the remedy in it, or forecast with the control set, and read by the same pass as any other file.
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Stereo } from '../../src/analysis/stereo.js';
import { applyRemedies, type Cut } from '../../src/fit/apply-remedies.js';
import { editedFrames } from '../../src/fit/edited-frames.js';
import type { SideFit, WeighedRemedy } from '../../src/fit/fit-result.js';
import { forecastFile } from '../../src/forecast-side.js';
import { forecastSide } from '../../src/model/forecast-model.js';
import type { Finding, SideForecast } from '../../src/model/forecast-types.js';
import { NOTHING_BY_HAND } from '../../src/model/side-plan-input.js';
import {
  fitted,
  forecastOf,
  framesOf,
  HARD_LATHE,
  hardProgram,
  measured,
  withFrames,
  writeProgram,
} from '../support/fit-side.js';
import { shifted } from '../support/invented-program.js';
import { SOUND_SOURCE, settingsWith } from '../support/model-settings.js';

const SETTINGS = settingsWith(HARD_LATHE);
const PROGRAM = hardProgram();
const CUT: Cut = {
  settings: SETTINGS,
  hand: NOTHING_BY_HAND,
  levelDb: 0,
  baked: {},
  edits: [],
  silence: 0,
  program: null,
  order: [],
};

let fit: SideFit;
let folder: string;
/** A fit measures the side some dozens of times, ms. */
const LONG = 120_000;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'furrow-test-'));
  fit = await fitted(await writeProgram(folder, 'hard.wav', PROGRAM), SETTINGS);
}, LONG);
afterAll(async () => await rm(folder, { recursive: true }));

/** The forecast of the side with a remedy in its sound or its settings. */
async function afresh({ remedy }: WeighedRemedy): Promise<SideForecast> {
  const cut = applyRemedies(CUT, [remedy]);
  let program: Stereo = PROGRAM;
  if (cut.edits.length > 0) {
    const plain = await writeProgram(folder, 'plain.wav', program);
    program = await withFrames(plain, (source) =>
      framesOf(editedFrames(source, cut.edits, SETTINGS)),
    );
  }
  if (cut.silence > 0) program = shifted(program, 0.9);
  let { settings } = cut;
  if (remedy.kind === 'polarity') {
    const negative = (row: Float64Array) => row.map((value) => -value);
    program = { left: negative(program.left), right: negative(program.right) };
    settings = SETTINGS;
  }
  const path = await writeProgram(folder, 'remedied.wav', program);
  if (cut.hand === NOTHING_BY_HAND || cut.silence > 0) {
    return await forecastOf(path, settings, cut.levelDb);
  }
  const { motion } = await measured(path, settings);
  const request = { levelDb: cut.levelDb, planner: 'turn-ahead', source: SOUND_SOURCE } as const;
  return forecastSide(motion, settings, { ...request, hand: cut.hand });
}

/** Of each kind the mildest and the strongest. */
function firstAndLastOfKind(remedies: readonly WeighedRemedy[]): WeighedRemedy[] {
  const kinds = [...new Set(remedies.map(({ remedy }) => remedy.kind))];
  return kinds.flatMap((kind) => {
    const own = remedies.filter(({ remedy }) => remedy.kind === kind);
    return [...own.slice(0, 1), ...own.slice(1).slice(-1)];
  });
}

describe('what is claimed of a remedy', () => {
  it('is claimed of every kind, on a side with wide bass, loud bass and loud treble', () => {
    expect(fit.faults.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['overcut', 'lift', 'tight-bend']),
    );
    const kinds = new Set(fit.remedies.map(({ remedy }) => remedy.kind));
    expect([...kinds].sort()).toEqual([
      'base-pitch',
      'base-width',
      'bell-there',
      'elliptical',
      'elliptical-there',
      'level',
      'level-there',
      'pitch-there',
      'polarity',
      'rpm',
      'shelf-there',
      'silence',
      'width-there',
    ]);
  });

  it('is what a fresh forecast of the remedied side says, within 0.1 dB and 0.1 mm', async () => {
    const before = await forecastOf(await writeProgram(folder, 'before.wav', PROGRAM), SETTINGS);
    const own = fit.headrooms[fit.planners.indexOf('fixed')];
    expect(own).toEqual(before.headroom);
    for (const weighed of firstAndLastOfKind(fit.remedies)) {
      const forecast = await afresh(weighed);
      const spare = forecast.fixed.spare - before.fixed.spare;
      expect(weighed.spareGain).toBeWithin(spare, 0.1e-3);
      expect([weighed.fillDb ?? -99, weighed.traceDb ?? -99]).toBeWithin(
        [forecast.headroom.fillDb ?? -99, forecast.headroom.traceDb ?? -99],
        0.1,
      );
      const faults = forecast.findings.filter(({ severity }) => severity === 'fault');
      for (const index of weighed.mends) {
        const mended = fit.faults[index];
        const same = faults.some(
          ({ id, atSeconds }) => id === mended?.id && atSeconds === mended.atSeconds,
        );
        expect(same).toBe(false);
      }
      if (weighed.mends.length === fit.faults.length && weighed.brings.length === 0) {
        expect(faults).toEqual([]);
      }
    }
  });

  it('holds for the set: all its remedies rendered into one file leave nothing', async () => {
    const { leastSet } = fit;
    expect(leastSet?.left).toEqual([]);
    const cut = applyRemedies(CUT, leastSet?.remedies ?? []);
    const plain = await writeProgram(folder, 'plain.wav', PROGRAM);
    const program = await withFrames(plain, (source) =>
      framesOf(editedFrames(source, cut.edits, SETTINGS)),
    );
    const path = await writeProgram(folder, 'mended.wav', program);
    const { motion } = await measured(path, cut.settings);
    const forecast = forecastSide(motion, cut.settings, {
      levelDb: cut.levelDb,
      planner: 'turn-ahead',
      source: SOUND_SOURCE,
      hand: cut.hand,
    });
    expect(forecast.findings.filter(({ severity }) => severity === 'fault')).toEqual([]);
    expect(leastSet?.headroom).toEqual(forecast.headroom);
    expect(leastSet?.spare).toBeWithin(forecast.fixed.spare, 1e-9);
  });

  it('needs each of the set: without any one of them a fault is left', async () => {
    const { sound } = await measured(await writeProgram(folder, 'hard.wav', PROGRAM), SETTINGS);
    const remedies = fit.leastSet?.remedies ?? [];
    expect(remedies.length).toBeGreaterThan(1);
    for (const remedy of remedies) {
      const cut = applyRemedies(
        CUT,
        remedies.filter((other) => other !== remedy),
      );
      const motion = await sound?.motionOf(cut);
      if (motion === undefined) throw new Error('no sound');
      const { verdict } = forecastSide(motion, cut.settings, {
        levelDb: cut.levelDb,
        planner: 'turn-ahead',
        source: SOUND_SOURCE,
        hand: cut.hand,
      });
      expect(verdict).toBe('fault');
    }
  });
});

describe('level', () => {
  it('at +3 dB plans what the file made exactly 3 dB louder plans at 0 dB', async () => {
    const louder = (row: Float64Array) => row.map((value) => value * 10 ** (3 / 20));
    const { left, right } = PROGRAM;
    const path = await writeProgram(folder, 'louder.wav', {
      left: louder(left),
      right: louder(right),
    });
    const { forecast } = await forecastFile(path, SETTINGS, { levelDb: 0, planner: 'turn-ahead' });
    const row = fit.levels.find(({ levelDb }) => levelDb === 3);
    expect(row?.judgements.map(({ spare }) => spare) ?? []).toBeWithin(
      [forecast.machine.spare, forecast.plan.spare, forecast.fixed.spare],
      1e-9,
    );
    const faults = forecast.findings.filter(({ severity }) => severity === 'fault');
    const own = row?.judgements[2]?.faults ?? [];
    const places = (all: readonly Finding[]) =>
      all.map(({ id, atSeconds, untilSeconds }) => [id, atSeconds, untilSeconds]);
    expect(places(own)).toEqual(places(faults));
  });
});
