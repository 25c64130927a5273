// What is claimed of longer gaps and other running orders, against the sheet changed by hand and
// forecast afresh.
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { BINS_PER_QUARTER } from '../../src/analysis/motion.js';
import { applyRemedies, type Cut } from '../../src/fit/apply-remedies.js';
import type { SideFit, WeighedRemedy } from '../../src/fit/fit-result.js';
import { leastSet } from '../../src/fit/least-set.js';
import type { MeasuredSide } from '../../src/fit/measured-side.js';
import { movedOrder } from '../../src/fit/order-remedies.js';
import { patientOf } from '../../src/fit/patient.js';
import type { Remedy } from '../../src/fit/remedy.js';
import { ALBUM, ALBUM_LATHE, albumSide, writeAlbum } from '../support/fit-album.js';
import { fitted, forecastOf, measured } from '../support/fit-side.js';
import { summaryOfSide } from '../support/sheet-side.js';

const GAP: Remedy = { kind: 'gap', place: 1, name: 'Chalk', quarters: 2 };
const OUTWARD = { kind: 'track-outward', name: 'Flint', from: 2, to: 0, order: [2, 0, 1] } as const;

/** Of the treble, so that it is no fault and still limits the level. */
const JUST_UNDER_DB = -0.35;

let folder: string;
let side: MeasuredSide;
let fit: SideFit;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'furrow-test-'));
  await writeAlbum(folder);
  const program = await albumSide(folder);
  side = await measured(program, program.settings);
  fit = await fitted(program, program.settings);
}, 60_000);
afterAll(async () => await rm(folder, { recursive: true }));

function cutWith(remedies: readonly Remedy[]): Cut {
  return applyRemedies(patientOf(side, 'fixed', 0).cut, remedies);
}

function weighedOf(kind: Remedy['kind']): WeighedRemedy {
  const weighed = fit.remedies.find(({ remedy }) => remedy.kind === kind);
  if (weighed === undefined) throw new Error(`no ${kind}`);
  return weighed;
}

/** The album with its tracks in an order, gaps where they are, one of them longer. */
function sheetOf(order: readonly number[], longer: readonly number[] = []): object[] {
  return order.map((track, place) => ({
    ...ALBUM[track],
    gapSeconds: (ALBUM[place]?.gapSeconds ?? 0) + (longer[place] ?? 0),
  }));
}

async function expectClaim({ mends, brings, ...claim }: WeighedRemedy, sheet: readonly object[]) {
  const before = await forecastOf(await albumSide(folder), ALBUM_LATHE);
  const after = await forecastOf(await albumSide(folder, sheet), ALBUM_LATHE);
  expect(claim.spareGain).toBeWithin(after.fixed.spare - before.fixed.spare, 0.1e-3);
  expect([claim.fillDb ?? -99, claim.traceDb ?? -99]).toBeWithin(
    [after.headroom.fillDb ?? -99, after.headroom.traceDb ?? -99],
    0.1,
  );
  const faults = after.findings.filter(({ severity }) => severity === 'fault');
  expect(faults.length).toBe(fit.faults.length - mends.length + brings.length);
  expect(mends.length).toBeGreaterThan(0);
}

describe('the album', () => {
  it('has an overcut at the start of its second track, and bends in its third', () => {
    expect(fit.faults.map(({ id }) => id)).toEqual(['overcut', 'tight-bend']);
  });
});

describe('half a turn more between two tracks', () => {
  it('does what a fresh forecast of the sheet with that gap says, within 0.1 dB and 0.1 mm', async () => {
    await expectClaim(weighedOf('gap'), sheetOf([0, 1, 2], [0, 0.9]));
  });

  it('gives, measured near the gap only, the rows of the whole side', async () => {
    const motion = await side.sound?.motionOf(cutWith([GAP]));
    const sheet = await albumSide(folder, sheetOf([0, 1, 2], [0, 0.9]));
    const whole = await summaryOfSide(sheet, ALBUM_LATHE);
    expect(motion?.quarterCount).toBe(whole.quarterCount);
    expect(motion?.durationSeconds).toBeWithin(whole.durationSeconds, 1e-9);
    for (const name of ['approach', 'approachLoose', 'lift', 'sink', 'lateral'] as const) {
      expect(whole[name].length).toBe(BINS_PER_QUARTER * whole.quarterCount);
      expect(motion?.[name] ?? []).toBeWithin(whole[name], 5e-9);
    }
    expect(motion?.left.accelerationPeak ?? []).toBeWithin(whole.left.accelerationPeak, 1e-3);
  });

  it('is not tried where no track faces another across the gap', () => {
    const gaps = fit.remedies.filter(({ remedy }) => remedy.kind === 'gap');
    expect(gaps.map(({ remedy }) => 'place' in remedy && remedy.place)).toEqual([1]);
  });
});

describe('a track moved outward', () => {
  it('does what a fresh forecast of the sheet in that order says, within 0.1 dB and 0.1 mm', async () => {
    const weighed = weighedOf('track-outward');
    expect(weighed.remedy).toEqual(OUTWARD);
    await expectClaim(weighed, sheetOf(OUTWARD.order));
  });

  it('is not tried of a track that is pinned', async () => {
    const [slate, chalk, flint] = ALBUM;
    const tracks = [slate ?? {}, chalk ?? {}, { ...flint, pinned: true }];
    const pinned = await fitted(await albumSide(folder, tracks), ALBUM_LATHE);
    expect(pinned.faults.map(({ id }) => id)).toEqual(['overcut', 'tight-bend']);
    const kinds = pinned.remedies.map(({ remedy }) => remedy.kind);
    expect(kinds).not.toContain('track-outward');
    expect(kinds).not.toContain('order');
  }, 20_000);

  it.each([
    [4, [0, 1, 2, 3], 3, 1, [0, 3, 1, 2]],
    [4, [0, 2, 3], 3, 0, [3, 1, 0, 2]],
    [5, [1, 4], 4, 1, [0, 4, 2, 3, 1]],
  ])(
    'of %d, %j of them free, from %d to %d leaves the order %j',
    (count, free, from, to, order) => {
      expect(movedOrder(count, free, from, to)).toEqual(order);
    },
  );
});

describe('another running order', () => {
  it('does what a fresh forecast of the sheet in that order says, where no track is at fault', async () => {
    const calm = (track: object | undefined, gapSeconds: number) => ({
      ...track,
      gapSeconds,
      ...(track === ALBUM[2] ? { trimDb: JUST_UNDER_DB } : {}),
    });
    const [slate, chalk, flint] = ALBUM;
    const program = await albumSide(folder, [calm(slate, 0), calm(chalk, 3), calm(flint, 2)]);
    const quiet = await fitted(program, program.settings);
    expect(quiet.faults).toEqual([]);
    const weighed = quiet.remedies.find(({ remedy }) => remedy.kind === 'order');
    expect(weighed?.remedy).toEqual({ kind: 'order', order: [2, 0, 1] });
    expect(weighed?.gainDb).toBeGreaterThan(0.1);
    const sheet = [calm(flint, 0), calm(slate, 3), calm(chalk, 2)];
    const after = await forecastOf(await albumSide(folder, sheet), ALBUM_LATHE);
    expect([weighed?.fillDb ?? -99, weighed?.traceDb ?? -99]).toBeWithin(
      [after.headroom.fillDb ?? -99, after.headroom.traceDb ?? -99],
      0.1,
    );
  }, 20_000);
});

/** A remedy with what is believed of it. */
function believed(remedy: Remedy, mends: readonly number[]): WeighedRemedy {
  const levels = { fillDb: 0, traceDb: 0, gainDb: 0 };
  return { remedy, cost: 1, mends, brings: [], spareGain: 0, ...levels };
}

describe('remedies together', () => {
  it('follow a passage to where its track then lies', () => {
    const quieter = { kind: 'level-there', fromSeconds: 21, untilSeconds: 23, gainDb: -1 } as const;
    const [edit] = cutWith([OUTWARD, quieter]).edits;
    // Flint begins at 18.5 s of the side, and then at its start.
    expect(edit?.fromSeconds).toBeWithin(2.5, 1e-3);
    expect(edit?.untilSeconds).toBeWithin(4.5, 1e-3);
  });

  it('are never a longer gap and another order: which gap is meant would be another', async () => {
    const patient = patientOf(side, 'fixed', 0);
    expect(await leastSet(patient, [believed(GAP, [0]), believed(OUTWARD, [1])])).toBe(null);
    const alone = await leastSet(patient, [believed(GAP, [0])]);
    expect(alone?.remedies).toEqual([GAP]);
  });

  it('clear everything as the whole changed side, measured anew, says', async () => {
    const quieter = {
      kind: 'level-there',
      fromSeconds: 21,
      untilSeconds: 23.6,
      gainDb: -1,
    } as const;
    const set = await leastSet(patientOf(side, 'fixed', 0), [
      believed(GAP, [0]),
      believed(quieter, [1]),
    ]);
    expect(set?.remedies).toEqual([GAP, quieter]);
    expect(set?.left).toEqual([]);
  });
});
