// The tables of standard-table.test.ts, through the whole pass, from every source rate: steady
// in-phase sines, 5 cm/s lateral peak at 1 kHz. Source: IEC 60098; displacements v/(2πf).
import { beforeAll, describe, expect, test } from 'vitest';
import { createAnalyser } from '../../src/analysis/analyse.js';
import { quarterMaximum } from '../../src/analysis/motion.js';
import { resolveProfile } from '../../src/profile/resolve-profile.js';
import { interleavedBytes } from '../support/interleaved-bytes.js';

const TABLE: readonly (readonly [hz: number, db: number, um: number])[] = [
  [20, -19.274, 43.257],
  [50, -16.946, 22.622],
  [100, -13.088, 17.635],
  [315, -5.179, 13.917],
  [1000, 0, 7.958],
  [10_000, 13.734, 3.868],
  [20_000, 19.62, 3.809],
];
const SECONDS = 2;
/** Of a turn of 1.8 s: from 1.35 s on, when what the start has set off is gone. */
const QUARTER = 3;

interface Steady {
  /** Lateral peaks, of both walls moving alike. */
  readonly displacementUm: number;
  readonly velocityPeakDb: number;
  readonly velocityDb: number;
}

/** @param hz of a sine that is cut with 5 cm/s where the curve is 0 dB; dB are re 5 cm/s peak */
async function cutSine(hz: number, sampleRate: number): Promise<Steady> {
  const settings = resolveProfile({ flags: { referenceVelocity: '5cm/s', referenceDbfs: -12 } });
  const amplitude = 10 ** (-12 / 20);
  const sine = Float64Array.from({ length: SECONDS * sampleRate }, (_, frame) => {
    return amplitude * Math.sin((2 * Math.PI * hz * frame) / sampleRate);
  });
  const format = { encoding: 'float', bitDepth: 32, channels: 2, sampleRate } as const;
  const analyser = await createAnalyser(format, sine.length, settings);
  analyser.push(interleavedBytes({ left: sine, right: sine }));
  const { lateral, left } = analyser.finish();
  const lateralDb = (wall: number): number => 20 * Math.log10((Math.SQRT2 * wall) / 0.05);
  return {
    displacementUm: 1e6 * quarterMaximum(lateral, QUARTER),
    velocityPeakDb: lateralDb(left.velocityPeak[QUARTER]!),
    velocityDb: lateralDb(Math.sqrt(2 * left.velocityMeanSquare[QUARTER]!)),
  };
}

/** Second-order Butterworth at the profile's 20 Hz: what the chain's own high-pass takes, dB. */
const highPassDb = (hz: number): number => -10 * Math.log10(1 + (20 / hz) ** 4);

describe.each([44_100, 48_000, 88_200, 96_000, 176_400, 192_000])('from %i Hz', (rate) => {
  let steady: Steady[];
  beforeAll(async () => {
    steady = await Promise.all(TABLE.map(([hz]) => cutSine(hz, rate)));
  });

  test('the velocity is the table within 0.02 dB, band end included', () => {
    const expected = TABLE.map(([hz, db]) => db + highPassDb(hz));
    // 0.01 dB of the filter and 0.01 dB of the band's end.
    expect(steady.map(({ velocityDb }) => velocityDb)).toBeWithin(expected, 0.02);
  });

  test('the velocity peak is found between samples within 0.1 dB', () => {
    const expected = TABLE.map(([hz, db]) => db + highPassDb(hz));
    expect(steady.map(({ velocityPeakDb }) => velocityPeakDb)).toBeWithin(expected, 0.1);
  });

  test('the displacement peak is the table within 0.05 µm or 0.1 %', () => {
    const expected = TABLE.map(([hz, , um]) => um * 10 ** (highPassDb(hz) / 20));
    expect(steady.map(({ displacementUm }) => displacementUm)).toBeWithin(expected, 0.05, 0.001);
  });
});
