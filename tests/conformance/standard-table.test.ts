// Recording characteristic: IEC 60098 and RIAA (time constants 3180, 318 and 75 µs, 0 dB at 1 kHz).
// Tables: GOST 11157-87, amendment 1, table 7 (printed to 0.1 dB; 20 to 100 Hz as quoted), and the
// values of the formula to 0.001 dB. Displacements: v/(2πf) of those; 0.011 mm at 7 cm/s and 1 kHz
// is printed in Boden, Basic Disc Mastering, 1981 (as quoted).
import { describe, expect, test } from 'vitest';
import { recordingCurve } from '../../src/analysis/recording-curve.js';
import { recordingResponse } from '../support/measured-response.js';

const GOST_TABLE_7: readonly (readonly [hz: number, db: number])[] = [
  [20, -19.3],
  [25, -19.0],
  [31.5, -18.5],
  [40, -17.8],
  [50, -16.9],
  [63, -15.9],
  [80, -14.5],
  [100, -13.1],
];

const IEC_FORMULA: readonly (readonly [hz: number, db: number])[] = [
  [20, -19.274],
  [50, -16.946],
  [100, -13.088],
  [200, -8.219],
  [315, -5.179],
  [500, -2.648],
  [1000, 0],
  [2000, 2.589],
  [3150, 5.038],
  [5000, 8.21],
  [8000, 11.894],
  [10_000, 13.734],
  [12_500, 15.609],
  [15_000, 17.157],
  [20_000, 19.62],
];

/** Peak displacement of a constant program that is cut with 5 cm/s peak at 1 kHz, µm. */
const DISPLACEMENTS_UM: readonly (readonly [hz: number, um: number])[] = [
  [20, 43.257],
  [50, 22.622],
  [100, 17.635],
  [315, 13.917],
  [1000, 7.958],
  [10_000, 3.868],
  [20_000, 3.809],
];

const first = (row: readonly [number, number]): number => row[0];
const second = (row: readonly [number, number]): number => row[1];

test('the formula is the table of IEC 60098 to its last digit', () => {
  const levels = IEC_FORMULA.map(([hz]) => {
    const { re, im } = recordingCurve(hz);
    return 20 * Math.log10(Math.hypot(re, im));
  });
  expect(levels).toBeWithin(IEC_FORMULA.map(second), 0.0005);
});

describe.each([88_200, 96_000])('the digital filter at %i Hz', (rate) => {
  test('cuts velocities that are the table of GOST 11157-87 to its last digit', () => {
    const { db } = recordingResponse('velocity', rate, GOST_TABLE_7.map(first));
    expect(db).toBeWithin(GOST_TABLE_7.map(second), 0.05);
  });

  test('cuts velocities within 0.01 dB of the table of IEC 60098, 20 Hz to 20 kHz', () => {
    const { db } = recordingResponse('velocity', rate, IEC_FORMULA.map(first));
    expect(db).toBeWithin(IEC_FORMULA.map(second), 0.01);
  });

  // 0.02 dB are 0.23 %; the table's last digit is less.
  test('cuts displacements within 0.02 dB of the table', () => {
    const { db } = recordingResponse('displacement', rate, DISPLACEMENTS_UM.map(first), 0.05);
    const um = db.map((level) => 1e6 * 10 ** (level / 20));
    expect(um).toBeWithin(DISPLACEMENTS_UM.map(second), 0.0005, 10 ** (0.02 / 20) - 1);
  });

  test('moves 11.141 µm at 7 cm/s and 1 kHz, printed as 0.011 mm', () => {
    const { db } = recordingResponse('displacement', rate, [1000], 0.07);
    expect(1e6 * 10 ** (db[0]! / 20)).toBeWithin(11.141, 0.0005, 0.0003);
  });
});
