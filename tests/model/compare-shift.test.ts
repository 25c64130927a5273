import { describe, expect, test } from 'vitest';
import { programShift } from '../../src/model/compare-shift.js';
import { emptyMotion } from '../support/empty-motion.js';
import { forecastedFile } from '../support/forecast-fixture.js';

type Music = (atSeconds: number) => number;

/** A bin and a quarter turn at 33⅓ rpm, s. */
const BIN = 1.8 / 64;
const QUARTER = 1.8 / 4;

/** Invented music: how far the groove moves, in swells of a quarter second to twenty seconds. */
function music(seed: number): Music {
  const swells = Array.from({ length: 60 }, (_, at) => {
    const angle = seed * 977 + at * at * 2.399963;
    return { hertz: 0.05 * 80 ** (at / 60), phase: angle % (2 * Math.PI) };
  });
  return (at) =>
    swells.reduce(
      (sum, { hertz, phase }) => sum + 1 + Math.cos(2 * Math.PI * hertz * at + phase),
      0,
    );
}

const MUSIC = music(1);
const OTHER = music(2);
const STILL: Music = () => 0;

/** A program whose groove moves by these, with its summary. */
function program(lateral: Music, lift: Music, seconds = 100, rpm = 100 / 3) {
  const bin = 60 / rpm / 64;
  const row = (of: Music) =>
    Float64Array.from({ length: Math.round(seconds / bin) }, (_, at) => of(at * bin));
  const file = forecastedFile();
  return {
    ...file,
    settings: { ...file.settings, rpm },
    motion: { ...emptyMotion(1), lateral: row(lateral), lift: row(lift) },
  };
}

/** The same music so much later. */
const later =
  (of: Music, seconds: number): Music =>
  (at) =>
    of(40 + at - seconds);

function shiftOf(seconds: number, of: Music, longSeconds = 100) {
  const before = program(later(of, 0), STILL, longSeconds);
  return programShift(before, program(later(of, seconds), STILL, longSeconds));
}

describe('the shift of a program', () => {
  test.each([0.06, 1.234, -7.89, 29.7, -29.7])(
    '%d s later is found to a tenth of a bin',
    (late) => {
      expect(shiftOf(late, MUSIC) ?? Number.NaN).toBeWithin(late, BIN / 10);
    },
  );

  test('is the same by lateral and by vertical motion, at another level and the other way', () => {
    const [before, after] = [later(MUSIC, 0), later(MUSIC, 2.5)];
    const louder: Music = (at) => 3 * after(at);
    const byLift = programShift(program(STILL, before), program(STILL, louder));
    expect(byLift ?? Number.NaN).toBeWithin(2.5, BIN / 10);
    const back = programShift(program(louder, STILL), program(before, STILL));
    expect(back ?? Number.NaN).toBeWithin(-2.5, BIN / 10);
  });

  test('is in seconds at any speed', () => {
    const at45 = (late: number) => program(later(MUSIC, late), STILL, 100, 45);
    expect(programShift(at45(0), at45(3.3)) ?? Number.NaN).toBeWithin(3.3, BIN / 10);
  });

  test('under a twentieth of a second is none', () => {
    expect(shiftOf(0.045, MUSIC)).toBe(0);
    expect(shiftOf(-0.045, MUSIC)).toBe(0);
    expect(shiftOf(0, MUSIC)).toBe(0);
  });

  test('is not known beyond half a minute, nor where the files share less than half', () => {
    expect(shiftOf(31, MUSIC)).toBeNull();
    expect(shiftOf(19, MUSIC, 40) ?? Number.NaN).toBeWithin(19, BIN / 10);
    expect(shiftOf(21, MUSIC, 40)).toBeNull();
    expect(shiftOf(-21, MUSIC, 40)).toBeNull();
  });

  test('is found in a file that is longer, and in one that is cut', () => {
    const [long, short] = [
      program(later(MUSIC, 0), STILL, 100),
      program(later(MUSIC, 4), STILL, 30),
    ];
    expect(programShift(long, short) ?? Number.NaN).toBeWithin(4, BIN / 10);
    expect(programShift(short, long) ?? Number.NaN).toBeWithin(-4, BIN / 10);
  });

  test('of other music is not known, of music with a little of another in it is', () => {
    expect(programShift(program(MUSIC, STILL), program(OTHER, STILL))).toBeNull();
    // Of as much variance each, the correlation is 1/√(1 + share²): 0.94 and 0.64.
    const mixed = (share: number): Music => {
      const [one, other] = [later(MUSIC, 5), later(OTHER, 0)];
      return (at) => one(at) + share * other(at);
    };
    const before = program(later(MUSIC, 0), STILL);
    expect(programShift(before, program(mixed(0.35), STILL)) ?? Number.NaN).toBeWithin(5, BIN);
    expect(programShift(before, program(mixed(1.2), STILL))).toBeNull();
  });

  test('of what repeats itself is the shortest', () => {
    // A whole number of the steps of the first search, four bins each.
    const loop: Music = (at) => MUSIC(((at % 8.1) + 8.1) % 8.1);
    for (const [late, shortest] of [
      [0, 0],
      [2.025, 2.025],
      [5.0625, -3.0375],
      [-16.2, 0],
    ] as const) {
      expect(shiftOf(late, loop) ?? Number.NaN).toBeWithin(shortest, BIN / 4);
    }
  });

  test('of steady tones is none, and not known beside music', () => {
    const steady: Music = (at) => 1 + 0.005 * Math.sin(at);
    expect(programShift(program(steady, steady), program(steady, STILL))).toBe(0);
    expect(programShift(program(STILL, STILL), program(MUSIC, STILL))).toBeNull();
  });
});

test('without summaries a shift of slow music is known by quarter turns', () => {
  const slow: Music = (at) => 2 + Math.sin(at / 2.1) + Math.sin(at / 3.7) + Math.sin(at / 0.9 + 1);
  const quarters = (late: number) => {
    const file = forecastedFile();
    const row = Float64Array.from({ length: 200 }, (_, at) => slow(at * QUARTER - late));
    const still = row.map(() => 0);
    const columns = { ...file.forecast.quarters, lateral: row, lift: still };
    return forecastedFile({ motion: null }, { quarters: columns });
  };
  expect(programShift(quarters(0), quarters(2.7)) ?? Number.NaN).toBeWithin(2.7, 0.05);
  // One summary is of no use without the other.
  const measured = program(MUSIC, STILL);
  expect(programShift(quarters(0), { ...quarters(-1.8), motion: measured.motion })).toBeWithin(
    -1.8,
    0.05,
  );
});
