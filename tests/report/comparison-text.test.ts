import { describe, expect, test } from 'vitest';
import type { Comparison } from '../../src/model/compare-types.js';
import { resolveProfile } from '../../src/profile/resolve-profile.js';
import { earlierAmountText } from '../../src/report/comparison-amount.js';
import { comparisonToJson } from '../../src/report/comparison-json.js';
import { comparisonSchema } from '../../src/report/comparison-schema.js';
import { comparisonText } from '../../src/report/comparison-text.js';
import { findingText } from '../../src/report/finding-text.js';
import { sideToJson } from '../../src/report/side-json.js';
import { sideSchema } from '../../src/report/side-schema.js';
import { findingWith, forecastedFile } from '../support/forecast-fixture.js';

const settings = resolveProfile();
const context = { settings, units: 'metric' } as const;

const comparisonWith = (changes: Partial<Comparison> = {}): Comparison => ({
  name: 'old.wav',
  offsetSeconds: 0,
  verdict: { before: 'caution', after: 'caution' },
  durationSeconds: null,
  loudnessLufs: null,
  endDiameter: null,
  spare: null,
  recommendedDb: null,
  fillDb: null,
  traceDb: null,
  land: [],
  findings: [],
  ...changes,
});

const told = (changes: Partial<Comparison> = {}) =>
  comparisonText(comparisonWith(changes), context);
/** In one line, as if the terminal were endless. */
const flat = (text: string) => text.replace(/\s+/g, ' ').trim();

const LOST = {
  change: 'lost',
  atSeconds: 12,
  untilSeconds: 14.04,
  before: 25.4e-6,
  after: 4.126e-6,
} as const;

test('nothing that matters is one line', () => {
  expect(told()).toBe('  Against old.wav: nothing that matters has changed.');
  expect(told({ offsetSeconds: 0.8 })).toBe(
    '  Against old.wav: the program starts 0.8 s later; nothing else that matters has\n    changed.',
  );
});

test('a program that starts earlier, and one that is not alike, are told so', () => {
  expect(flat(told({ offsetSeconds: -2.04 }))).toContain('starts 2.0 s earlier');
  expect(flat(told({ offsetSeconds: null }))).toContain('no shift makes the two programs alike');
});

test('figures are told as they are and as they were', () => {
  const text = told({
    verdict: { before: 'clear', after: 'fault' },
    durationSeconds: { before: 1200, after: 1100 },
    loudnessLufs: { before: -14.24, after: null },
    endDiameter: { before: 0.1214, after: 0.1201 },
    spare: { before: 0.0004, after: -0.0003 },
    recommendedDb: { before: 0.5, after: -2.5 },
    fillDb: { before: null, after: 1 },
    traceDb: { before: 0.9, after: -2.04 },
  });
  expect(flat(text)).toBe(
    'Against old.wav: verdict fault, was clear; lasts 18:20.0, was 20:00.0; ' +
      'loudness none, was -14.2 LUFS; ends at 120.1 mm, was 121.4 mm; ' +
      'spare radius -0.3 mm, was 0.4 mm; recommended level -2.5 dB, was +0.5 dB; ' +
      'fits up to +1.0 dB, was none; without a fault up to -2.0 dB, was +0.9 dB.',
  );
});

test('land is told in time order among the findings, at most as the widest limit', () => {
  const finding = findingWith({ id: 'lift', atSeconds: 13, untilSeconds: 13 });
  const lines = told({
    land: [LOST],
    findings: [
      { change: 'new', atSeconds: null, before: null, after: findingWith({ atSeconds: null }) },
      { change: 'new', atSeconds: 13, before: null, after: finding },
    ],
  });
  const starts = lines.split('\n').filter((line) => /^ {4}\S/.test(line));
  expect(starts.map((line) => line.trim().split(/[ :]/).slice(0, 2).join(' '))).toEqual([
    'new caution',
    'land lost',
    'new caution',
  ]);
  expect(flat(lines)).toContain(
    'land lost from 00:12.0 to 00:14.0: 4.1 µm is left, was 25.4 µm or more.',
  );
});

// A turn takes 1.8 s; the land was lost from 12.0 to 14.04 s.
test.each([
  ['one that tells all of it', [['land-low', 13, 13.5]], false],
  ['one a turn before its end, which leaves the rest', [['overcut', 10.2, 12.2]], true],
  ['one that begins more than a turn behind it', [['land-low', 15.9, 17]], true],
  [
    'two that meet',
    [
      ['overcut', 10.5, 10.5],
      ['land-low', 14, 14],
    ],
    false,
  ],
  ['one of another thing', [['lift', 12, 14.04]], true],
] as const)('land is not told again beside a changed finding: %s', (_, found, isTold) => {
  const findings = found.map(([id, atSeconds, untilSeconds]) => ({
    change: 'new' as const,
    atSeconds,
    before: null,
    after: findingWith({ id, atSeconds, untilSeconds }),
  }));
  expect(told({ land: [LOST], findings }).includes('land lost')).toBe(isTold);
});

test('a finding that is gone tells of the land gained, in the new time', () => {
  const gained = { ...LOST, change: 'gained' } as const;
  const gone = findingWith({ atSeconds: 10, untilSeconds: 11 });
  const change = { change: 'gone', atSeconds: 13, before: gone, after: null } as const;
  const comparison = { land: [gained], findings: [change] };
  expect(told({ ...comparison, offsetSeconds: 3 })).not.toContain('land gained');
  expect(told({ ...comparison, offsetSeconds: -3 })).toContain('land gained');
});

describe('a finding', () => {
  const was = findingWith({ atSeconds: 100, untilSeconds: 101 });
  const at = (seconds: number) => ({ ...was, atSeconds: seconds, untilSeconds: seconds + 1 });

  test('that is gone is told by its place in the new time and its headline', () => {
    const gone = { change: 'gone', atSeconds: 120, before: was, after: null } as const;
    const changes = { offsetSeconds: 20, findings: [gone] };
    const { where, message } = findingText(at(120), context);
    expect(flat(told(changes))).toMatch(new RegExp(`gone caution: ${where}: Little land\\.$`));
    const all = comparisonText(comparisonWith(changes), { ...context, details: true });
    expect(flat(all)).toContain(`gone caution: ${message}`);
  });

  test('that is worse is told with what it was', () => {
    const is = { ...was, value: 2e-6 };
    const worse = { change: 'worse', atSeconds: 100, before: was, after: is } as const;
    expect(flat(told({ findings: [worse] }))).toContain(
      `worse caution: ${findingText(is, context).message} Before: 8.2 µm, 01:40.0 to 01:41.0.`,
    );
  });

  test.each([
    ['a place', { untilSeconds: null }, '8.2 µm, 01:40.0'],
    ['the whole side', { atSeconds: null, untilSeconds: null }, '8.2 µm'],
    ['mils', {}, '0.32 mil, 01:40.0 to 01:41.0'],
    ['a diameter', { id: 'too-long', value: 0.1201, untilSeconds: null }, '120.1 mm, 01:40.0'],
    [
      'a pitch',
      { id: 'pitch-limit', value: 0.0254 / 200, untilSeconds: null },
      '127.0 µm, 01:40.0',
    ],
    [
      'a share',
      { id: 'facet', unit: 'ratio', value: 0.0123, untilSeconds: null },
      '1.23 %, 01:40.0',
    ],
    [
      'a correlation',
      { id: 'polarity', unit: 'ratio', value: -0.6, untilSeconds: null },
      '-0.60, 01:40.0',
    ],
    [
      'a level',
      { unit: 'decibel-full-scale', value: 0.31, atSeconds: null, untilSeconds: null },
      '+0.3 dBFS',
    ],
    ['a count', { unit: 'count', value: 3, untilSeconds: null }, '3, 01:40.0'],
    ['no value', { value: null, unit: 'none', untilSeconds: null }, '01:40.0'],
  ] as const)('was, told in the units of the finding: %s', (what, changes, expected) => {
    const units = what === 'mils' ? 'us' : 'metric';
    expect(earlierAmountText({ ...was, ...changes }, units)).toBe(expected);
  });

  test('that was a caution and is a fault says so', () => {
    const fault = { ...was, severity: 'fault' } as const;
    const worse = { change: 'worse', atSeconds: 100, before: was, after: fault } as const;
    expect(flat(told({ findings: [worse] }))).toMatch(/Before: a caution, 8\.2 µm, 01:40\.0/);
  });

  test('that is another one now is told with the severity that it had', () => {
    const is = findingWith({ id: 'overcut', severity: 'fault', value: -2e-6, limit: 0 });
    const worse = { change: 'worse', atSeconds: 100, before: was, after: is } as const;
    expect(flat(told({ findings: [worse] }))).toMatch(/worse fault: .* It was a caution\.$/);
  });

  test('that the house has accepted is told as such', () => {
    const accepted = { ...was, accepted: { reason: 'known' } };
    const change = { change: 'new', atSeconds: 100, before: null, after: accepted } as const;
    expect(flat(told({ findings: [change] }))).toContain('new caution (accepted): ');
  });
});

test('of very many changes the first forty are shown, and how many more there are', () => {
  const findings = Array.from({ length: 45 }, (_, second) => ({
    change: 'new' as const,
    atSeconds: second,
    before: null,
    after: findingWith({ atSeconds: second, untilSeconds: second }),
  }));
  const lines = told({ findings });
  expect(lines.match(/new caution/g)).toHaveLength(40);
  expect(lines).toMatch(/\n {4}and 5 more \(--details: all of them\)$/);
  const all = comparisonText(comparisonWith({ findings }), { ...context, details: true });
  expect(all.match(/new caution/g)).toHaveLength(45);
  expect(all).not.toContain('more');
});

test('lines are as long as the terminal is wide', () => {
  const findings = [{ change: 'new' as const, atSeconds: 1, before: null, after: findingWith() }];
  const longest = (columns?: number) => {
    const width = columns === undefined ? {} : { columns };
    const text = comparisonText(comparisonWith({ findings, land: [LOST] }), {
      ...context,
      ...width,
    });
    return Math.max(...text.split('\n').map((line) => line.length));
  };
  expect(longest()).toBeLessThanOrEqual(80);
  expect(longest(100)).toBeLessThanOrEqual(100);
  expect(longest(100)).toBeGreaterThan(80);
});

test('a name cannot act on the terminal', () => {
  const text = comparisonText(comparisonWith({ name: '\u001b[2Jx\n.wav' }), context);
  expect(text).toContain('Against \\u{1b}[2Jx\\u{a}.wav: ');
});

test('the JSON keeps to its schema, rounded, and is part of the side only where asked for', () => {
  const comparison = comparisonWith({
    offsetSeconds: 0.80049,
    endDiameter: { before: 0.1214004, after: 0.1201 },
    spare: { before: 0.0004, after: Number.NaN },
    land: [LOST],
    findings: [{ change: 'new', atSeconds: 1, before: null, after: findingWith() }],
  });
  const json = comparisonSchema.parse(comparisonToJson(comparison, settings));
  expect(json).toMatchObject({
    offsetSeconds: 0.8,
    endDiameterMm: { before: 121.4, after: 120.1 },
    spareMm: { before: 0.4, after: null },
    land: [{ change: 'lost', atSeconds: 12, untilSeconds: 14.04, beforeUm: 25.4, afterUm: 4.13 }],
    findings: [{ change: 'new', before: null, after: { id: 'land-low', accepted: null } }],
  });
  const plain = sideToJson(forecastedFile(), { quarters: false });
  expect(plain).not.toHaveProperty('against');
  const side = sideToJson({ ...forecastedFile(), against: comparison }, { quarters: false });
  expect(sideSchema.parse(side).against).toEqual(json);
});
