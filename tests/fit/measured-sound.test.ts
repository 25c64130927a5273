import { describe, expect, it } from 'vitest';
import type { Cut } from '../../src/fit/apply-remedies.js';
import type { MeasuredSound } from '../../src/fit/measured-sound.js';
import { NOTHING_BY_HAND } from '../../src/model/side-plan-input.js';
import { hardProgram, measured, writeProgram } from '../support/fit-side.js';
import { shifted } from '../support/invented-program.js';
import { settingsWith } from '../support/model-settings.js';
import { temporaryFolder } from '../support/temporary-folder.js';

const SETTINGS = settingsWith();
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

async function soundOf(name = 'hard.wav'): Promise<MeasuredSound> {
  const path = await writeProgram(await temporaryFolder(), name, hardProgram());
  const { sound } = await measured(path, SETTINGS);
  if (sound === null) throw new Error('no sound');
  return sound;
}

/** Every row of a summary, by name, in one order. */
function rowsOf(value: object, prefix = ''): [string, ArrayLike<number>][] {
  return Object.entries(value).flatMap(([name, row]): [string, ArrayLike<number>][] => {
    const path = `${prefix}${name}`;
    if (row instanceof Float64Array || row instanceof Int16Array) return [[path, row]];
    if (row instanceof Uint32Array) return [[path, row]];
    return row instanceof Object && name !== 'program' ? rowsOf(row, `${path}.`) : [];
  });
}

describe('a measured side', () => {
  it('has of an edited passage the rows that a whole pass of the edited side has', async () => {
    const sound = await soundOf();
    const cut: Cut = {
      ...CUT,
      edits: [
        { kind: 'level', fromSeconds: 5, untilSeconds: 7, gainDb: -2 },
        { kind: 'elliptical', fromSeconds: 12, untilSeconds: 14, corner: 100, order: 2 },
        { kind: 'bell', fromSeconds: 20, untilSeconds: 21.5, frequency: 7100, gainDb: -4 },
      ],
    };
    const spliced = rowsOf(await sound.motionOf(cut));
    const whole = new Map(rowsOf(await sound.rendered(cut)));
    const before = new Map(rowsOf(await sound.motionOf(CUT)));
    // Seven of bins, two walls of four and twice two, six of the low band.
    expect(spliced.length).toBe(7 + 2 * 8 + 6);
    for (const [name, row] of spliced) {
      // Where a flat top lies is known less exactly than its height, so 1e-7 and no less.
      const largest = Math.max(...Array.from(whole.get(name) ?? [], Math.abs));
      // A sample on the edge of a class may be counted in either.
      const margin = name.endsWith('counts') ? 1 : 1e-7 * largest;
      expect(row).toBeWithin(whole.get(name) ?? [], margin);
    }
    const changed = spliced.filter(([name, row]) =>
      Array.from(row).some((value, at) => value !== before.get(name)?.[at]),
    );
    expect(changed.length).toBe(spliced.length);
  });

  it('measures several ways in one read as each by itself', async () => {
    const sound = await soundOf();
    const ways = [
      { polarity: -1 } as const,
      { ellipticalHz: 150, ellipticalOrder: 2 } as const,
      { rpm: 45 },
    ];
    await sound.measureWhole(ways.map((baked) => ({ baked, program: null })));
    for (const baked of ways) {
      const together = rowsOf(await sound.motionOf({ ...CUT, baked }));
      const alone = new Map(rowsOf(await sound.rendered({ ...CUT, baked })));
      for (const [name, row] of together) expect(row).toEqual(alone.get(name));
    }
  });

  it('begins later as a file with half a turn of silence before it does', async () => {
    const folder = await temporaryFolder();
    const program = hardProgram();
    const here = await writeProgram(folder, 'here.wav', program);
    const later = await writeProgram(folder, 'later.wav', shifted(program, 0.9));
    const { sound } = await measured(here, SETTINGS);
    const delayed = await sound?.motionOf({ ...CUT, silence: 2 });
    const { motion } = await measured(later, SETTINGS);
    expect(delayed?.quarterCount).toBe(motion.quarterCount);
    expect(delayed?.durationSeconds).toBeWithin(motion.durationSeconds, 1e-9);
    for (const name of ['approach', 'approachLoose', 'lift', 'sink', 'lateral'] as const) {
      // What the band end rings before the program begins is a nanometre or two.
      expect(delayed?.[name] ?? []).toBeWithin(motion[name], 5e-9);
    }
    const counts = motion.left.accelerationHistogram.counts;
    const samples = (all: Uint32Array | undefined, quarter: number) =>
      (all ?? new Uint32Array()).subarray(24 * quarter, 24 * quarter + 24).reduce((a, b) => a + b);
    const own = delayed?.left.accelerationHistogram.counts;
    for (const quarter of [0, 1, 2, 30]) {
      expect(samples(own, quarter)).toBeWithin(samples(counts, quarter), 1);
    }
  });
});
