import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { WeighedRemedy } from '../../src/fit/fit-result.js';
import { leastSet } from '../../src/fit/least-set.js';
import { patientOf } from '../../src/fit/patient.js';
import type { Remedy } from '../../src/fit/remedy.js';
import { REMEDY_COSTS, remedyCost } from '../../src/fit/remedy-costs.js';
import type { Patient } from '../../src/fit/trial.js';
import { HARD_LATHE, hardProgram, measured, writeProgram } from '../support/fit-side.js';
import { settingsWith } from '../support/model-settings.js';

let folder: string;
let patient: Patient;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'furrow-test-'));
  const path = await writeProgram(folder, 'hard.wav', hardProgram());
  patient = patientOf(await measured(path, settingsWith(HARD_LATHE)), 'fixed', 0);
}, 60_000);
afterAll(async () => await rm(folder, { recursive: true }));

/** The side's faults: narrow at 0:05, two overcuts at 0:13, bends at 0:20. */
const ALL = [0, 1, 2, 3];
const LOWER: Remedy = { kind: 'level', gainDb: -3.5 };
const WIDER: Remedy = { kind: 'width-there', fromSeconds: 5.35, untilSeconds: 6.8, width: 70e-6 };
const OPENED: Remedy = {
  kind: 'pitch-there',
  fromSeconds: 10.8,
  untilSeconds: 15.3,
  pitch: 120e-6,
};
const SOFTER: Remedy = { kind: 'level-there', fromSeconds: 19.3, untilSeconds: 22.1, gainDb: -1 };

/** A remedy with what is believed of it. */
function believed(remedy: Remedy, mends: readonly number[], cost?: number): WeighedRemedy {
  return {
    remedy,
    cost: cost ?? remedyCost(remedy),
    mends,
    brings: [],
    spareGain: 0,
    fillDb: 0,
    traceDb: 0,
    gainDb: 0,
  };
}

describe('leastSet', () => {
  it('has the faults that these tests are about', () => {
    expect(patient.faults.map(({ id }) => id)).toEqual([
      'lift',
      'overcut',
      'overcut',
      'tight-bend',
    ]);
  });

  it('leaves out what turns out to be needless beside the others', async () => {
    const set = await leastSet(patient, [believed(LOWER, [0, 3]), believed(OPENED, [1, 2])]);
    expect(set?.remedies).toEqual([LOWER]);
    expect(set?.left).toEqual([]);
  });

  it('goes on to a dearer set where a cheaper one does not do what is believed of it', async () => {
    const set = await leastSet(patient, [
      believed(SOFTER, ALL),
      believed(WIDER, [0]),
      believed(OPENED, [1, 2]),
      believed({ ...SOFTER, untilSeconds: 22.2 }, [3]),
    ]);
    expect(set?.left).toEqual([]);
    expect(set?.remedies.length).toBe(3);
  });

  it('says what is left where nothing clears everything', async () => {
    const set = await leastSet(patient, [believed(WIDER, [0]), believed(SOFTER, [3])]);
    expect(set?.remedies).toEqual([WIDER, SOFTER]);
    expect(set?.left.map(({ id }) => id)).toEqual(['overcut', 'overcut']);
  });

  it('never proposes what brings a fault', async () => {
    const brings = { ...believed(LOWER, ALL, 0.1), brings: patient.faults.slice(0, 1) };
    expect(await leastSet(patient, [brings])).toBe(null);
  });
});

describe('the costs', () => {
  it('are local before global, in each spacing before level before filtering, then the order', () => {
    const cost = (kinds: readonly (keyof typeof REMEDY_COSTS)[]) =>
      kinds.map((kind) => REMEDY_COSTS[kind].base);
    const spacing = cost(['pitch-there', 'width-there', 'gap']);
    const local = [...spacing, ...cost(['level-there', 'elliptical-there'])];
    const tones = cost(['bell-there', 'shelf-there']);
    const wide = cost(['silence', 'base-pitch', 'base-width', 'polarity', 'level', 'elliptical']);
    const inOrder = [...local, ...tones, ...wide, ...cost(['track-outward', 'order', 'rpm'])];
    expect(inOrder).toEqual([...inOrder].sort((a, b) => a - b));
    expect(new Set(inOrder).size).toBe(Object.keys(REMEDY_COSTS).length);
  });
});
