import { describe, expect, test } from 'vitest';
import { safePitchText } from '../../src/report/safe-pitch-text.js';
import { safeCorner } from '../../src/report/set-up.js';
import { setUpText } from '../../src/report/set-up-text.js';
import type { Settings } from '../../src/settings.js';
import { findingWith, forecastedFile } from '../support/forecast-fixture.js';

const MICROMETRE = 1e-6;

function textOf(
  changes: Partial<Settings>,
  levelDb = 0,
  recommendedDb: number | null = 12,
): string {
  const settings = { ...forecastedFile().settings, ...changes };
  const headroom = {
    fillDb: recommendedDb,
    traceDb: recommendedDb,
    recommendedDb,
    limitedBy: null,
  };
  return setUpText(forecastedFile({ settings }, { levelDb, headroom }), 'metric');
}

describe('the level to dial in', () => {
  test('has the digits of its step, so that a quarter of a decibel stays one', () => {
    expect(textOf({ levelStep: 0.25 }, 0, -1.25)).toContain('dial in level -1.25 dB,');
    expect(textOf({ levelStep: 0.5 }, 0, -1.5)).toContain('dial in level -1.5 dB,');
  });

  test('between two steps is the lower, and no headroom is blamed for it', () => {
    const text = textOf({ levelStep: 0.5 }, -3.2);
    expect(text).toContain('dial in level -3.5 dB');
    expect(text).toContain('The planned -3.2 dB is no step of the control.');
    expect(text).not.toContain('does not hold');
  });

  test('that only an accepted finding is in the way of is said to hold with it', () => {
    const limitedBy = { id: 'overcut', atSeconds: 10 } as const;
    const headroom = { fillDb: 3, traceDb: -2, recommendedDb: -2, limitedBy };
    const finding = { id: 'overcut', atSeconds: 10, untilSeconds: 10.1 } as const;
    const told = (accepted: { accepted?: { reason: string } }) =>
      setUpText(
        forecastedFile({}, { headroom, findings: [{ ...findingWith(finding), ...accepted }] }),
        'metric',
      );
    expect(told({ accepted: { reason: 'looked at' } })).toContain(
      'The planned 0.0 dB holds only with what is accepted.',
    );
    expect(told({})).toContain('The planned 0.0 dB does not hold.');
  });

  test('that does not hold is said to', () => {
    expect(textOf({}, 0, -2)).toContain('The planned 0.0 dB does not hold.');
  });
});

test('of a silent file there is nothing to dial in', () => {
  const file = forecastedFile({}, { findings: [findingWith({ id: 'silent' })] });
  expect(setUpText(file, 'metric')).toBe('nothing to dial in, since there is no sound to cut.');
});

test('a width outside the table of the depth meter is said to be', () => {
  const depthMeter = [
    { reading: 20, width: 40 * MICROMETRE },
    { reading: 30, width: 60 * MICROMETRE },
  ];
  expect(textOf({ depthMeter, baseWidth: 76 * MICROMETRE })).toContain(
    "outside the depth meter's table",
  );
  expect(textOf({ depthMeter, baseWidth: 50 * MICROMETRE })).toContain('depth meter 25');
});

describe('the pitch to dial in', () => {
  test('is told in the unit of its steps first, and how far it is from the plan', () => {
    const text = textOf({ basePitch: 84 * MICROMETRE, pitchStep: 5 * MICROMETRE });
    expect(text).toContain('base pitch 85 µm (298.8 LPI)');
    expect(text).toContain('the next step up takes more radius than is told here');
  });

  test('on a step needs no word more', () => {
    const text = textOf({ basePitch: 85 * MICROMETRE, pitchStep: 5 * MICROMETRE });
    expect(text).toContain('base pitch 85 µm (298.8 LPI), ');
    expect(text).not.toContain('step');
  });

  test('is never told tighter than it is, in either unit', () => {
    for (let lines = 100; lines <= 600; lines += 7) {
      const pitch = 0.0254 / (lines + 0.37);
      const [, told = '', length = ''] =
        /^(\S+) LPI \((\S+) µm\)$/.exec(safePitchText(pitch, null, 'metric')) ?? [];
      expect(0.0254 / Number(told)).toBeGreaterThanOrEqual(pitch);
      expect(Number(length) * MICROMETRE).toBeGreaterThanOrEqual(pitch);
      expect(Number(length) * MICROMETRE).toBeWithin(pitch, 0.1 * MICROMETRE);
    }
  });

  test('that is a round number stays one', () => {
    expect(safePitchText(0.0254 / 300, null, 'us')).toBe('300 LPI');
    expect(safePitchText(25.4e-6 * 4, 25.4e-6, 'us')).toBe('4 mil (250 LPI)');
  });
});

describe('the elliptical filter to dial in', () => {
  const steps = [150, 300, 90];

  test.each([
    [null, null],
    [90, 90],
    [91, 150],
    [300, 300],
    [301, 300],
  ])(
    'for a corner of %s Hz is %s Hz: the next position up, as long as there is one',
    (hz, told) => {
      expect(safeCorner(hz, steps)).toBe(told);
    },
  );

  test('without positions is as planned', () => {
    expect(safeCorner(123, null)).toBe(123);
    expect(textOf({ ellipticalHz: 123 })).toMatch(/elliptical 123 Hz\.$/);
  });

  test('is said to be another one than was forecast', () => {
    expect(textOf({ ellipticalHz: 100, ellipticalSteps: steps })).toContain(
      'elliptical 150 Hz. The elliptical was forecast at 100 Hz, which is no position of it.',
    );
  });
});

test('width is told in mil, and as the meter reads it where there is a table', () => {
  const depthMeter = [
    { reading: 20, width: 40 * MICROMETRE },
    { reading: 30, width: 60 * MICROMETRE },
  ];
  expect(textOf({ baseWidth: 50.8 * MICROMETRE, depthMeter })).toContain(
    'groove 2.00 mil (50.8 µm), depth meter 25.4, elliptical out.',
  );
});
