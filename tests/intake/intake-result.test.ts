import { describe, expect, test } from 'vitest';
import { intakeResult } from '../../src/intake/intake-result.js';
import { NO_RULES, type Rules } from '../../src/intake/rules.js';
import { intakeToJson } from '../../src/report/intake-json.js';
import { intakeFileSchema } from '../../src/report/intake-schema.js';
import { findingWith, forecastedFile, planWith } from '../support/forecast-fixture.js';

const PATH = 'in/side a.wav';
const overcut = findingWith({ id: 'overcut', severity: 'fault', value: -1e-6, limit: 0 });

function judged(
  rules: Partial<Rules> = {},
  forecast: Parameters<typeof forecastedFile>[1] = { findings: [] },
  file: Parameters<typeof forecastedFile>[0] = {},
) {
  return intakeResult(PATH, forecastedFile(file, forecast), { ...NO_RULES, ...rules });
}

function brokenBy(...given: Parameters<typeof judged>): string[] {
  return judged(...given).findings.map(({ id }) => id);
}

describe('the judgement of a file that arrived', () => {
  test("is the forecast's where the house has no rules", () => {
    const result = judged({}, { findings: [overcut, findingWith()] });
    expect(result).toMatchObject({ verdict: 'fault', worst: { id: 'overcut' }, ignored: 0 });
    expect(result.spare).toBe(5.6e-6);
    expect(result.recommendedDb).toBe(0.5);
  });

  test('counts a finding as grave as the house says', () => {
    const findings = [overcut];
    expect(judged({ severity: { overcut: 'note' } }, { findings }).verdict).toBe('clear');
    expect(judged({ severity: { mono: 'fault' } }, { findings: [] }).verdict).toBe('clear');
    const mono = findingWith({ id: 'mono', severity: 'note' });
    expect(judged({ severity: { mono: 'fault' } }, { findings: [mono] }).verdict).toBe('fault');
  });

  test('leaves out what the house ignores, and says how much that is', () => {
    const severity = { overcut: 'ignore', 'rule-rate': 'ignore' } as const;
    const result = judged({ severity, sampleRates: [44_100] }, { findings: [overcut] });
    expect(result).toMatchObject({ verdict: 'clear', worst: null, findings: [], ignored: 2 });
  });

  test("names the graver of the forecast's finding and the house's, of equals the forecast's", () => {
    const rules = { sampleRates: [44_100] };
    expect(judged(rules, { findings: [overcut] }).worst?.id).toBe('overcut');
    expect(judged(rules, { findings: [findingWith()] }).worst?.id).toBe('rule-rate');
  });

  test('names a file that breaks off before the jump at its end, and after what is graver', () => {
    const jump = findingWith({ id: 'jump', severity: 'caution' });
    const cut = findingWith({ id: 'truncated', severity: 'caution' });
    expect(judged({}, { findings: [jump, cut] }).worst?.id).toBe('truncated');
    expect(judged({}, { findings: [cut, overcut] }).worst?.id).toBe('overcut');
  });

  test('is written as the published schema has it', () => {
    const result = judged({ sampleRates: [44_100] }, { findings: [overcut] });
    expect(intakeFileSchema.parse(intakeToJson(result))).toMatchObject({
      path: PATH,
      verdict: 'fault',
      spareMm: 0.006,
      recommendedDb: 0.5,
      findings: [{ id: 'overcut' }, { id: 'rule-rate' }],
    });
  });
});

describe('a rule is broken by', () => {
  const twoSeconds = { headSeconds: 2, tailSeconds: 2 };
  const silent = { soundEdges: twoSeconds };
  const quarter = forecastedFile().forecast.quarters;
  test.each<[string, string[], Partial<Rules>]>([
    ['another rate', ['rule-rate'], { sampleRates: [44_100, 48_000] }],
    ['no rate of the list', [], { sampleRates: [44_100, 96_000] }],
    ['another depth', ['rule-depth'], { bitDepths: [16, 'float'] }],
    ['no depth of the list', [], { bitDepths: [24] }],
    ['another container', ['rule-container'], { containers: ['FLAC', 'AIFF'] }],
    ['no container of the list', [], { containers: ['RIFF'] }],
    ['no kind of WAV', [], { containers: ['WAV'] }],
    ['less land than is to be left', ['rule-land'], { leastLand: 8.25e-6 }],
    ['not as much land as is to be left', [], { leastLand: 8.24e-6 }],
    ['more vertical bass than allowed', ['rule-vertical'], { mostVerticalLow: 3.9e-6 }],
    ['not as much vertical bass as allowed', [], { mostVerticalLow: 4e-6 }],
  ])('%s', (_, expected, rules) => {
    expect(brokenBy(rules)).toEqual(expected);
  });

  test('vertical bass is told where it is largest', () => {
    const [finding] = judged({ mostVerticalLow: 1e-6 }).findings;
    expect(finding?.atSeconds).toBe(quarter.atSeconds[1]);
  });

  test("the least land is that of what the lathe executes, not of the plan's", () => {
    const forecast = { findings: [], executes: 'plan', plan: planWith({ landMin: 2e-6 }) } as const;
    expect(brokenBy({ leastLand: 5e-6 }, forecast)).toEqual(['rule-land']);
    expect(brokenBy({ leastLand: 5e-6 }, { ...forecast, executes: 'machine' })).toEqual([]);
  });

  test.each<[string, string[], Partial<Rules>]>([
    ['too little silence in front', ['rule-head'], { headSilence: { least: 2.1, most: null } }],
    ['too much silence in front', ['rule-head'], { headSilence: { least: null, most: 1.9 } }],
    ['too much silence behind', ['rule-tail'], { tailSilence: { least: 0, most: 1.9 } }],
    ['neither at its limits', [], { headSilence: { least: 2, most: 2 } }],
  ])('%s', (_, expected, rules) => {
    expect(brokenBy(rules, { findings: [] }, silent)).toEqual(expected);
  });

  test('silence that was not looked for is not judged, and that is said', () => {
    const rules = { headSilence: { least: 2.1, most: null } };
    expect(judged(rules)).toMatchObject({ findings: [], notJudged: ['rule-head'] });
    const silence = findingWith({ id: 'silent', severity: 'fault' });
    const allSilent = judged(rules, { findings: [silence] }, { soundEdges: null });
    expect(allSilent).toMatchObject({ findings: [{ id: 'silent' }], notJudged: [] });
  });

  test('all of a program that is not silent but nowhere loud enough to be its sound', () => {
    const most = { least: null, most: 10 };
    const quiet = { soundEdges: null };
    const rules = { headSilence: most, tailSilence: most, silenceDbfs: -20 };
    const { findings } = judged(rules, { findings: [], durationSeconds: 11 }, quiet);
    expect(findings).toMatchObject([
      { id: 'rule-head', found: 11, atSeconds: 0 },
      { id: 'rule-tail', found: 11, atSeconds: 0 },
    ]);
    expect(brokenBy(rules, { findings: [], durationSeconds: 10 }, quiet)).toEqual([]);
  });

  describe('a side that is too long', () => {
    const rpm = 100 / 3;
    const any = { disc: 12, rpm, fromLevelDb: null, most: 1300 };
    const loud = { disc: 12, rpm, fromLevelDb: 2, most: 1100 };
    test.each([
      ['no rule of its disc', [{ ...any, disc: 7, most: 100 }], 0, []],
      ['no rule of its speed', [{ ...any, rpm: 45, most: 100 }], 0, []],
      ['a rule of its format', [{ ...any, most: 1199 }], 0, ['rule-longest']],
      ['a rule of about its speed', [{ ...any, rpm: 33.5, most: 1199 }], 0, ['rule-longest']],
      ['no rule for louder ones', [any, loud], 1.9, []],
      ['a rule for loud ones', [any, loud], 2, ['rule-longest']],
    ])('for %s', (_, longest, levelDb, expected) => {
      expect(brokenBy({ longest }, { findings: [], levelDb })).toEqual(expected);
    });
  });
});
