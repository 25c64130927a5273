import { describe, expect, test } from 'vitest';
import { limitingPassages } from '../../src/model/fit-limits.js';
import { plannedSide } from '../../src/model/planned-side.js';
import type { Settings } from '../../src/settings.js';
import { type Passage, swayingMotion } from '../support/loud-passages.js';
import { EXACT, SOUND_SOURCE, settingsWith } from '../support/model-settings.js';

/** What base pitch leaves beside an unmodulated groove, m. */
const FREE = 150e-6 - 50.8e-6;
/** How near to its limit a level is searched, dB. */
const SEARCH = 0.01;
/** A quarter turn, s. */
const QUARTER = 0.45;

/** A swing that takes all of FREE at a level, so that a little more is an overcut. */
const takingAllAt = (levelDb: number) => FREE / 10 ** (levelDb / 20);
const loud = (from: number, until: number, levelDb: number): Passage => ({
  from,
  until,
  outward: takingAllAt(levelDb),
});

/** What limits a side of a minute that traces up to `quietDb` but for its passages. */
function limitsOf(quietDb: number, passages: readonly Passage[], changes: Partial<Settings> = {}) {
  const lathe = { ...EXACT, executes: 'fixed', basePitch: 150e-6 } as const;
  const settings = settingsWith({ ...lathe, ...changes });
  const side = plannedSide(swayingMotion(60, takingAllAt(quietDb), passages), settings);
  return limitingPassages(side, 'fixed', SOUND_SOURCE);
}

describe('the passages that limit the level', () => {
  test('are told where they lie and with what they cost, the loudest first', () => {
    const found = limitsOf(9, [loud(18, 21.6, 4), loud(36, 37.8, 1), loud(50.4, 52.2, 6)]);
    expect(found.map(({ id }) => id)).toEqual(['overcut', 'overcut', 'overcut']);
    expect(found.map(({ levelDb }) => levelDb)).toBeWithin([1, 4, 6], SEARCH);
    expect(found.map(({ withoutDb }) => withoutDb)).toBeWithin([4, 6, 9], SEARCH);
    expect(found.map(({ atSeconds }) => atSeconds)).toBeWithin([36, 18, 50.4], 1e-9);
    expect(found.map(({ untilSeconds }) => untilSeconds)).toBeWithin([37.8, 21.6, 52.2], 1e-9);
  });

  test('are none where the whole side is as loud, and none where nothing limits', () => {
    expect(limitsOf(13, [])).toEqual([]);
    expect(limitsOf(-13, [])).toEqual([]);
  });

  test('go up to the highest level that is looked at', () => {
    const [only, ...others] = limitsOf(15, [loud(18, 21.6, 4)]);
    expect(others).toEqual([]);
    expect(only?.withoutDb).toBe(12);
  });

  test('within two seconds of each other are one, further apart they are two', () => {
    const apart = (seconds: number) => [loud(18, 19.8, 3), loud(19.8 + seconds, 21.6 + seconds, 4)];
    const [one] = limitsOf(8, apart(1.8));
    expect(one?.atSeconds).toBeWithin(18, 1e-9);
    expect(one?.untilSeconds).toBeWithin(23.4, 1e-9);
    expect(one?.withoutDb).toBeWithin(8, SEARCH);
    const two = limitsOf(8, apart(2.7)).slice(0, 2);
    expect(two.map(({ atSeconds }) => atSeconds)).toBeWithin([18, 22.5], 1e-9);
    expect(two.map(({ untilSeconds }) => untilSeconds)).toBeWithin([19.8, 24.3], 1e-9);
  });

  test('cost a tenth of a decibel, or are not told', () => {
    const costing = (db: number) => limitsOf(8, [loud(9, 10.8, 5), loud(36, 37.8, 5 - db)]);
    expect(costing(0.11)[0]?.atSeconds).toBeWithin(36, 1e-9);
    // It is left out all the same, so that what limits next is found.
    const [next] = costing(0.09);
    expect(next?.atSeconds).toBeWithin(9, 1e-9);
    expect(next?.levelDb).toBeWithin(5, SEARCH);
    expect(next?.withoutDb).toBeWithin(8, SEARCH);
  });

  test('are as long as what is too loud, in one piece or with quiet of two seconds inside', () => {
    const [long] = limitsOf(9, [loud(18, 36, 4)]);
    expect(long?.atSeconds).toBeWithin(18, 1e-9);
    expect(long?.untilSeconds).toBeWithin(36, 1e-9);
    expect(long?.withoutDb).toBeWithin(9, SEARCH);
    const [parted] = limitsOf(9, [loud(18, 27, 4), loud(28.8, 36, 5)]);
    expect(parted?.atSeconds).toBeWithin(18, 1e-9);
    expect(parted?.untilSeconds).toBeWithin(36, 1e-9);
    // The louder one last: it is found first, and what lies before it belongs to it.
    const [reversed] = limitsOf(9, [loud(18, 27, 5), loud(28.35, 36, 4)]);
    expect(reversed?.atSeconds).toBeWithin(18, 1e-9);
    expect(reversed?.untilSeconds).toBeWithin(36, 1e-9);
  });

  test('are of the level alone, whether the side fits or not', () => {
    const tooLong = { innerDiameter: 0.2921 - 0.001 };
    expect(limitsOf(9, [loud(18, 36, 4)], tooLong)).toEqual(limitsOf(9, [loud(18, 36, 4)]));
  });

  test('are four at most', () => {
    const many = [1, 2, 3, 4, 5].map((at) => loud(9 * at, 9 * at + 1.8, at));
    expect(limitsOf(9, many).map(({ withoutDb }) => withoutDb)).toBeWithin([2, 3, 4, 5], SEARCH);
  });

  test('are at least a quarter turn long', () => {
    const [one] = limitsOf(9, [loud(18.1, 18.2, 3)]);
    expect((one?.untilSeconds ?? 0) - (one?.atSeconds ?? 0)).toBeWithin(QUARTER, 1e-9);
    expect(one?.atSeconds).toBeWithin(18, 1e-9);
  });
});
