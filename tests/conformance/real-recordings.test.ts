// Recordings: the stereo ones of npm's supersonic-scsynth-samples (CC0). Resampling: sox. What is
// asserted are laws of the groove's geometry and of the file formats, not figures of a former run.
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { execa } from 'execa';
import { beforeAll, describe, expect, test } from 'vitest';
import { type ForecastSideJson, forecastJson } from '../support/forecast-json.js';
import { needProgram } from '../support/outside-program.js';
import { type Recording, realRecordings, wordsOf } from '../support/real-recordings.js';
import { sharedFolder } from '../support/shared-folder.js';
import { type WavOptions, wavBytes } from '../support/wav-writer.js';

let recordings: Recording[];
beforeAll(async () => {
  recordings = await realRecordings();
});

test('the package holds more than a hundred stereo recordings, some of 24 bits', () => {
  expect(recordings.length).toBeGreaterThan(100);
  expect(recordings.some(({ bitDepth }) => bitDepth === 24)).toBe(true);
});

describe('a side of real recordings', () => {
  const folder = sharedFolder();
  let side: ForecastSideJson;
  let quieter: ForecastSideJson;
  let seconds: number;
  beforeAll(async () => {
    const words = wordsOf(recordings, 24, 120);
    seconds = words.length / 2 / 44_100;
    const path = join(await folder(), 'side.wav');
    await writeFile(path, wavBytes({ bitDepth: 24, words }));
    [side] = await onlySide(forecastJson([path]));
    [quieter] = await onlySide(forecastJson([path], ['--level', '-6']));
  }, 120_000);

  test('has the length of its file', () => {
    expect(side.durationSeconds).toBeWithin(seconds, 0.0005);
    expect(side.turns).toBeWithin(seconds / 1.8, 0.0005);
    expect(side.quarters.landUm).toHaveLength(Math.ceil((4 * seconds) / 1.8));
  });

  test('speed tolerance brings the turns closer together, never apart', () => {
    const { approachUm, approachLooseUm } = side.quarters;
    for (const [quarter, approach] of approachUm.entries()) {
      expect(approachLooseUm[quarter]).toBeGreaterThanOrEqual(approach);
    }
  });

  test('needs no less radius than its turns at the base pitch of 300 LPI', () => {
    expect(side.plan.pitchMinUm).toBeGreaterThanOrEqual(84.66);
    expect(side.plan.radiusUsedMm).toBeGreaterThanOrEqual((side.turns * 25.4) / 300 - 0.001);
  });

  test('keeps the least land of 12.7 µm at −6 dB, as planned', () => {
    // The reported land is a lower bound, low by less than 1 µm (bins, not samples).
    expect(quieter.plan.landMinUm).toBeGreaterThan(11.7);
  });

  test('6 dB less move the groove by half, 10^(−6/20)', () => {
    const half = 10 ** (-6 / 20);
    for (const key of ['lateralUm', 'liftUm', 'sinkUm', 'approachUm'] as const) {
      // Both figures are rounded to 0.01 µm.
      const expected = side.quarters[key].map((um) => um * half);
      expect(quieter.quarters[key]).toBeWithin(expected, 0.01);
    }
  });
});

/** How the same 16-bit words look in each format. */
const FORMATS: readonly (readonly [name: string, factor: number, options: Partial<WavOptions>])[] =
  [
    ['16 bit', 1, { bitDepth: 16 }],
    ['24 bit', 2 ** 8, { bitDepth: 24 }],
    ['24 bit extensible', 2 ** 8, { bitDepth: 24, extensible: true }],
    ['24 bit in BW64', 2 ** 8, { bitDepth: 24, container: 'BW64' }],
    ['32 bit', 2 ** 16, { bitDepth: 32 }],
    ['float', 2 ** -15, { bitDepth: 32, encoding: 'float' }],
    ['double', 2 ** -15, { bitDepth: 64, encoding: 'float', extensible: true }],
  ];

describe('the same recordings in another format', () => {
  const folder = sharedFolder();
  let sides: ForecastSideJson[];
  let sixteenBit: string;
  beforeAll(async () => {
    const words = wordsOf(recordings, 16, 12);
    const paths: string[] = [];
    for (const [name, factor, options] of FORMATS) {
      const path = join(await folder(), `${name}.wav`);
      await writeFile(
        path,
        wavBytes({ ...options, words: Float64Array.from(words, (w) => w * factor) }),
      );
      paths.push(path);
    }
    sixteenBit = paths[0]!;
    sides = await forecastJson(paths);
  });

  test.each(FORMATS.map(([name], index) => [name, index] as const))(
    '%s cuts the same groove to the last digit',
    (_, index) => {
      expect(sides[index]).toEqual(sides[0]);
    },
  );

  test.for([
    [48_000, 24],
    [96_000, 24],
    [192_000, 32],
  ] as const)(
    'resampled to %i Hz, %i bit, has the same land within 0.1 µm',
    async ([rate, bits], context) => {
      needProgram('sox', context);
      const path = join(await folder(), `${rate}.wav`);
      await execa('sox', ['-D', sixteenBit, '-r', `${rate}`, '-b', `${bits}`, path, 'rate', '-v']);
      const [resampled] = await onlySide(forecastJson([path]));
      expect(resampled.quarters.landUm).toBeWithin(sides[0]!.quarters.landUm, 0.1);
      expect(resampled.plan.landMinUm).toBeWithin(sides[0]!.plan.landMinUm, 0.1);
    },
  );
});

async function onlySide(sides: Promise<ForecastSideJson[]>): Promise<[ForecastSideJson]> {
  const [side, ...others] = await sides;
  if (side === undefined || others.length > 0) throw new Error('expected one side');
  return [side];
}
