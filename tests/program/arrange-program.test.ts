// The oracle is the sheet laid out anew with what was changed written into it.
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { arrangeProgram } from '../../src/program/arrange-program.js';
import type { ProgramSide } from '../../src/program/program-side.js';
import { timeShift } from '../../src/program/time-shift.js';
import { settingsWith } from '../support/model-settings.js';
import { layOut, writeWav } from '../support/sheet-side.js';

const RATES = [44_100, 48_000, 96_000, 50_000];
const GAPS = [0.3, 1, 0, 2.5];
const SETTINGS = settingsWith();
let folder: string;

/** Tracks of four rates; what is set by hand lies in its track, a marker in the gap before one. */
const TRACKS = RATES.map((rate, at) => ({
  name: `Track ${at + 1}`,
  file: `${rate}.wav`,
  basePitch: [{ fromSeconds: 0.1, pitch: `${150 + at}um` }],
}));

function inGaps(tracks: readonly object[], added: readonly number[] = []): object[] {
  return tracks.map((track, place) => ({
    ...track,
    gapSeconds: (GAPS[place] ?? 0) + (added[place] ?? 0),
    ...(place === 1 ? { marker: { seconds: 0.4 } } : {}),
  }));
}

async function laidOut(tracks: readonly object[]): Promise<ProgramSide> {
  return await layOut(folder, { tracks }, SETTINGS);
}

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'furrow-test-'));
  for (const [at, sampleRate] of RATES.entries()) {
    const row = new Float64Array(Math.round((0.5 + 0.3 * at) * sampleRate)).fill(0.1);
    const format = { encoding: 'pcm', bitDepth: 16, channels: 2, sampleRate } as const;
    await writeWav(folder, `${sampleRate}.wav`, { left: row, right: row }, format);
  }
});

afterAll(async () => await rm(folder, { recursive: true }));

/** Places as far as they can be told from rounded times. */
function expectSame(arranged: ProgramSide, sheet: ProgramSide): void {
  expect(arranged.tracks).toEqual(sheet.tracks);
  expect(arranged.frames).toBe(sheet.frames);
  expect(arranged.hand.tracks).toEqual(sheet.hand.tracks);
  for (const field of ['basePitch', 'bands'] as const) {
    const [own, expected] = [arranged.hand[field], sheet.hand[field]];
    expect(own.length).toBe(expected.length);
    expect(own.map(({ pitch }) => pitch)).toEqual(expected.map(({ pitch }) => pitch));
    expect(own.map(({ fromSeconds }) => fromSeconds)).toBeWithin(
      expected.map(({ fromSeconds }) => fromSeconds),
      1e-9,
    );
  }
}

describe('a side arranged otherwise', () => {
  it('is the sheet in that order with its gaps and markers where they were', async () => {
    const side = await laidOut(inGaps(TRACKS));
    for (const order of [
      [3, 1, 0, 2],
      [1, 0, 3, 2],
      [2, 3, 0, 1],
    ]) {
      const sheet = await laidOut(inGaps(order.map((at) => TRACKS[at] ?? {})));
      expectSame(arrangeProgram(side, { order, added: [] }), sheet);
    }
  });

  it('is the sheet with longer gaps, a marker in the middle of its own', async () => {
    const side = await laidOut(inGaps(TRACKS));
    const added = [0, 0.9, 0, 0.9];
    const sheet = await laidOut(inGaps(TRACKS, added));
    expectSame(arrangeProgram(side, { order: [0, 1, 2, 3], added }), sheet);
  });

  it('is the side itself where nothing is arranged', async () => {
    const side = await laidOut(inGaps(TRACKS));
    expectSame(arrangeProgram(side, { order: [0, 1, 2, 3], added: [] }), side);
  });
});

describe('a time', () => {
  it('comes back when the tracks do', async () => {
    const side = await laidOut(inGaps(TRACKS));
    const order = [3, 1, 0, 2];
    const { hand } = arrangeProgram(side, { order, added: [0, 0.9, 0, 0] });
    const there = timeShift(side.hand.tracks, hand.tracks, (at) => order.indexOf(at));
    const back = timeShift(hand.tracks, side.hand.tracks, (place) => order[place] ?? place);
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 3 }),
        fc.double({ min: 0, max: 0.999, noNaN: true }),
        (track, share) => {
          const placed = side.hand.tracks[track];
          if (placed === undefined) throw new Error(`no track ${track}`);
          const { fromSeconds, untilSeconds } = placed;
          const at = fromSeconds + share * (untilSeconds - fromSeconds);
          const later = at + there(at);
          expect(later + back(later)).toBeWithin(at, 1e-9);
        },
      ),
    );
  });
});
