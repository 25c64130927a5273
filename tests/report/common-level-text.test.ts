import { Ajv2020 } from 'ajv/dist/2020.js';
import { Chalk } from 'chalk';
import stringWidth from 'string-width';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { commonLevel } from '../../src/model/common-level.js';
import type { Headroom } from '../../src/model/forecast-types.js';
import { stepLevelText } from '../../src/report/common-level-digits.js';
import { commonLevelToJson } from '../../src/report/common-level-json.js';
import { commonLevelSchema } from '../../src/report/common-level-schema.js';
import { commonLevelSide } from '../../src/report/common-level-side.js';
import { commonLevelText } from '../../src/report/common-level-text.js';
import { findingWith, forecastedFile } from '../support/forecast-fixture.js';

const OVERCUT = { id: 'overcut', atSeconds: 144.1234 } as const;

function sideOf(name: string, recommendedDb: number | null, levelStep = 0.5, silent = false) {
  const { settings, sources } = forecastedFile();
  const path = `sides/${name}`;
  const limitedBy = recommendedDb === 12 ? null : OVERCUT;
  const headroom: Headroom = { fillDb: 12, traceDb: recommendedDb, recommendedDb, limitedBy };
  const changes = {
    name,
    settings: { ...settings, levelStep },
    sources: sources.map((source) => ({ ...source, path })),
  };
  const findings = silent ? [findingWith({ id: 'silent', severity: 'fault' })] : [];
  return commonLevelSide(forecastedFile(changes, { headroom, findings }));
}

const ALBUM = [
  sideOf('a.wav', -1.5),
  sideOf('b.wav', 2),
  sideOf('c.wav', 12),
  sideOf('hush.wav', 12, 0.5, true),
];
const textOf = (sides: Parameters<typeof commonLevel>[0], failures = 0, ascii = false) =>
  commonLevelText(commonLevel(sides), { paint: new Chalk({ level: 0 }), failures, ascii });

describe('the common level in words', () => {
  test('names the level, who sets it and why, and what the others give away', () => {
    expect(textOf(ALBUM, 1)).toBe(
      [
        'Common level: -1.5 dB, set by a.wav (overcut at 02:24.1). --level -1.5 shows',
        '  every side at it.',
        '  side   fits up to  gives away',
        '> a.wav     -1.5 dB  0.0 dB',
        '  b.wav     +2.0 dB  3.5 dB',
        '  c.wav    +12.0 dB  13.5 dB or more',
        '  hush.wav is silent and left out.',
        '  1 could not be read and has no say.',
        '',
      ].join('\n'),
    );
  });

  test('names two that set it, and counts more', () => {
    const two = [sideOf('a.wav', 1), sideOf('b.wav', 1), sideOf('c.wav', 2)];
    expect(textOf(two).replaceAll(/\s+/g, ' ')).toContain(
      'set by a.wav (overcut at 02:24.1) and b.wav (overcut at 02:24.1). --level 1 shows',
    );
    const three = [sideOf('a.wav', -10), sideOf('b.wav', -10), sideOf('c.wav', -10)];
    expect(textOf(three)).toContain('-10.0 dB, set by 3 sides, marked >. --level -10 shows');
    expect(textOf(three).match(/^>/gm)).toHaveLength(3);
  });

  test('says where there is none, and why', () => {
    expect(textOf([sideOf('a.wav', null), sideOf('b.wav', 2)]).replaceAll(/\s+/g, ' ')).toContain(
      'No common level: a.wav (overcut at 02:24.1) holds at no level from -12 to +12 dB.',
    );
    expect(textOf([])).toBe('No common level: no side has sound.\n');
    expect(textOf([sideOf('a.wav', 12)])).toContain(
      'Common level: +12.0 dB, the highest looked at.',
    );
    expect(textOf([sideOf('a.wav', -0.7, 0.7), sideOf('b.wav', -11, Math.PI)])).toContain(
      'No common level: the level controls have no step in common that holds.',
    );
  });

  test('keeps to 80 columns and acts on no terminal, whatever the names', () => {
    const name = (end: string) => `${'a very long name '.repeat(6)}\u001b[2J静\u202e${end}.wav`;
    const text = textOf([sideOf(name('x'), -1.5), sideOf(name('y'), -1.5)], 2);
    expect(Math.max(...text.split('\n').map((line) => stringWidth(line)))).toBeLessThanOrEqual(80);
    expect(text.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\p{Bidi_Control}]/u);
    expect(textOf([sideOf('a'.repeat(90), -1.5)], 0, true)).toMatch(/^[\n -~]*$/);
  });
});

test.each([
  [1.5, 0.5, '+1.5 dB'],
  [-0.25, 0.25, '-0.25 dB'],
  [-0.375, 0.125, '-0.375 dB'],
  [-3, 1, '-3.0 dB'],
  [0, 0.25, '0.00 dB'],
])('%s dB of a control with steps of %s dB is %s', (level, step, text) => {
  expect(stepLevelText(level, step)).toBe(text);
});

describe('the common level in JSON', () => {
  test('holds the same, rounded, in the units of the keys', () => {
    expect(commonLevelToJson(commonLevel(ALBUM))).toEqual({
      levelDb: -1.5,
      setBy: [
        {
          name: 'a.wav',
          path: 'sides/a.wav',
          limitedBy: { id: 'overcut', atSeconds: 144.123 },
        },
      ],
      sides: [
        { name: 'a.wav', path: 'sides/a.wav', recommendedDb: -1.5, givesAwayDb: 0 },
        { name: 'b.wav', path: 'sides/b.wav', recommendedDb: 2, givesAwayDb: 3.5 },
        { name: 'c.wav', path: 'sides/c.wav', recommendedDb: 12, givesAwayDb: 13.5 },
      ],
      leftOut: [{ name: 'hush.wav', path: 'sides/hush.wav', reason: 'silent' }],
    });
  });

  test('keeps to its published schema, by ajv; a field more or less does not', () => {
    const ajv = new Ajv2020({ strict: true, strictTypes: false, allowUnionTypes: true });
    const validate = ajv.compile(z.toJSONSchema(commonLevelSchema));
    for (const sides of [ALBUM, [], [sideOf('a.wav', null)], [sideOf('a.wav', 12)]]) {
      const json = commonLevelToJson(commonLevel(sides));
      validate(json);
      expect(validate.errors).toBeNull();
      expect(validate({ ...json, more: 1 })).toBe(false);
      const { leftOut: _, ...less } = json;
      expect(validate(less)).toBe(false);
    }
  });
});
