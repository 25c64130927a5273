import { describe, expect, test } from 'vitest';
import { UsageError } from '../../src/errors.js';
import { parseRules } from '../../src/intake/read-rules.js';
import { NO_RULES, type Rules } from '../../src/intake/rules.js';
import { parseProfile } from '../../src/profile/profile-file.js';

async function rulesOf(text: string): Promise<Rules> {
  return await parseRules(parseProfile('house.json', text));
}

async function refusalOf(text: string): Promise<string> {
  const error = await rulesOf(text).catch((cause: unknown) => cause);
  if (error instanceof UsageError) return error.message;
  throw new Error('not refused', { cause: error });
}

describe('rules of a house', () => {
  test('are none where the file names none', async () => {
    expect(await rulesOf('{ /* nothing yet */ }')).toEqual(NO_RULES);
  });

  test('are read into SI, 33 being a third more', async () => {
    const rules = await rulesOf(`{
      "longest": [{ "disc": 12, "rpm": 33, "minutes": 22 }], // seconds inside
      "leastLand": "1mil", "mostVerticalLow": "20um", "headSilence": { "most": 2 },
    }`);
    expect(rules.longest).toEqual([{ disc: 12, rpm: 100 / 3, fromLevelDb: null, most: 1320 }]);
    expect(rules.leastLand).toBeWithin(25.4e-6, 0, 1e-12);
    expect(rules.mostVerticalLow).toBeWithin(20e-6, 0, 1e-12);
    expect(rules.headSilence).toEqual({ least: null, most: 2 });
  });

  test.each([
    [
      '{ "sampleRate": [1] }',
      'house.json:1: sampleRate: found an unknown field; the nearest is "sampleRates"',
    ],
    [
      '{\n "tailSilence": { "lest": 1 } }',
      'tailSilence.lest: found an unknown field; the nearest is "least"',
    ],
    [
      '{ "severity": { "overcutt": "note" } }',
      'severity.overcutt: found an unknown field; the nearest is "overcut"',
    ],
    ['{ "severity": { "rule-head": "mild" } }', 'expected ignore, note, caution or fault'],
    ['{ "severity": 3 }', 'expected severities by the ids'],
    ['{ "headSilence": {} }', 'expected "least", "most" or both'],
    ['{ "headSilence": { "least": 2, "most": 1 } }', 'expected "least" to be no more than "most"'],
    ['{ "bitDepths": [20] }', 'expected one of 8, 16, 24, 32, "float"'],
    ['{ "containers": ["MP3"] }', 'expected one of "WAV", "RIFF"'],
    ['{ "sampleRates": [] }', 'expected a list of sample rates'],
    ['{ "leastLand": 3 }', 'expected a length with its unit'],
    ['{ "name": "a(b" }', 'house.json:1: name: found "a(b", which is no regular expression of RE2'],
    ['{ "name": "(a)\\\\1" }', 'which is no regular expression of RE2'],
    ['{ "name": "a", "name": "b" }', '"name" is set twice'],
    ['{ "longest": [{ "disc": 11, "rpm": 33, "minutes": 3 }] }', 'expected one of 12, 10, 7'],
    ['[]', 'house.json:1: found [], expected { … } with rules in it'],
    ['{ "longest": [22] }', 'longest[0]: found 22, expected a list of longest sides'],
  ])('%s are refused with place, found and expected', async (text, message) => {
    expect(await refusalOf(text)).toContain(message);
  });
});

test('a number that is refused is told once, and not as out of order besides', async () => {
  expect(await refusalOf('{ "tailSilence": { "most": -1 } }')).toBe(
    'house.json:1: tailSilence.most: found -1, expected a number from 0 to 600',
  );
});

describe('the pattern of a name', () => {
  const matches = async (pattern: string, name: string) =>
    (await rulesOf(JSON.stringify({ name: pattern }))).name?.matches(name);

  test('must match the whole of it', async () => {
    expect(await matches('[A-Z]{3}-\\d+\\.wav', 'ABC-12.wav')).toBe(true);
    expect(await matches('[A-Z]{3}-\\d+\\.wav', 'ABC-12.wav.tmp')).toBe(false);
    expect(await matches('[A-Z]{3}-\\d+\\.wav', 'xABC-12.wav')).toBe(false);
  });

  test('matches letters in one piece and in two', async () => {
    expect(await matches('\u00e9t\u00e9', 'e\u0301te\u0301')).toBe(true);
    expect(await matches('e\u0301t\u00e9', '\u00e9te\u0301')).toBe(true);
  });

  test('takes no longer for a name that drives a backtracking matcher through 2^250 ways', async () => {
    expect(await matches('(a+)+b', 'a'.repeat(250))).toBe(false);
  });
});
