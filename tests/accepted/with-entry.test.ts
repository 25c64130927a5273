import { describe, expect, test } from 'vitest';
import type { AcceptedEntry } from '../../src/accepted/accepted-schema.js';
import { entryOf } from '../../src/accepted/entry-of.js';
import { findingsMeant, secondsOf } from '../../src/accepted/findings-meant.js';
import { parseAccepted } from '../../src/accepted/parse-accepted.js';
import { withEntry } from '../../src/accepted/with-entry.js';
import { findingWith } from '../support/forecast-fixture.js';

const PATH = 'furrow.accepted.json';
const entry = (changes: Partial<AcceptedEntry> = {}): AcceptedEntry => ({
  id: 'overcut',
  side: 'a.wav',
  fromSeconds: 10,
  untilSeconds: 12,
  reason: 'new',
  audioSha256: 'a'.repeat(64),
  ...changes,
});
const fileOf = (text: string) => ({ path: PATH, text, entries: parseAccepted(PATH, text) });
const textOf = (list: string) =>
  `{\n  // ours\n  "format": "furrow.accepted/1",\n  "accepted": ${list}\n}\n`;
const B = JSON.stringify(entry({ side: 'b.wav', reason: 'old' }));

test('the first entry makes a file that can be read, with a comment on what it is', () => {
  const text = withEntry(null, entry());
  expect(text).toMatch(/^\/\/ Findings that the house knows/);
  expect(parseAccepted(PATH, text)).toEqual([entry()]);
});

test('names and reasons cannot turn the reading direction of the list', () => {
  const turning = entry({ side: 'ev\u202egnp.wav', reason: 'kisses\u001b[2J\u2028' });
  const later = { ...turning, reason: 'again\u202e' };
  const first = withEntry(null, turning);
  const replaced = withEntry(fileOf(first), later);
  const appended = withEntry(fileOf(first), { ...turning, id: 'lift' });
  for (const text of [first, replaced, appended]) {
    for (const acts of ['\u001b', '\u202e', '\u2028']) expect(text).not.toContain(acts);
    expect(text).toContain('"ev\\u202egnp.wav"');
  }
  expect(parseAccepted(PATH, first)).toEqual([turning]);
  expect(parseAccepted(PATH, replaced)).toEqual([later]);
  expect(parseAccepted(PATH, appended)).toHaveLength(2);
});

describe('a further entry goes behind what there is, which stays as it was written', () => {
  test.each([
    ['an entry', `[\n    ${B}\n  ]`],
    ['an entry and a comment behind it', `[ // why\n    ${B} // b is known\n  ]`],
    ['an entry, a comma and comments', `[\n    ${B}, // b, is known\n    /* , */\n  ]`],
    ['a comment with a comma but no comma', `[\n    ${B} /* , */\n  ]`],
    ['entries in one line', `[${B}, ${B.replace('b.wav', 'c.wav')}]`],
    ['nothing', '[]'],
    ['a comment alone', '[ // none yet\n  ]'],
  ])('%s', (_, list) => {
    const before = textOf(list);
    const after = withEntry(fileOf(before), entry());
    expect(parseAccepted(PATH, after)).toEqual([...fileOf(before).entries, entry()]);
    for (const line of before.match(/\/\/.*|\/\*.*\*\/|\{"id".*?\}/g) ?? []) {
      expect(after).toContain(line);
    }
    // Whatever was said behind an entry is still right behind it.
    if (list.includes('// b is known')) expect(after).toMatch(/\}, \/\/ b is known\n/);
  });

  test('with the line ends of the file', () => {
    const before = textOf(`[\n    ${B}\n  ]`).replaceAll('\n', '\r\n');
    const after = withEntry(fileOf(before), entry());
    expect(after.replaceAll('\r\n', '')).not.toContain('\n');
  });

  test('without its byte order mark', () => {
    expect(withEntry(fileOf(`\ufeff${textOf('[]')}`), entry())).toMatch(/^\{/);
  });
});

describe('an entry for the same finding is replaced', () => {
  const old = `[\n    ${B},\n    { // heard\n      "side": "a.wav", "id": "overcut", "fromSeconds": 11,
      "untilSeconds": 20 /* long */, "reason": "old", "audioSha256": "${'b'.repeat(64)}" }\n  ]`;

  test('in its place, field by field, with its comments', () => {
    const after = withEntry(fileOf(textOf(old)), entry());
    expect(parseAccepted(PATH, after)).toEqual([JSON.parse(B), entry()]);
    expect(after).toContain('{ // heard\n      "side": "a.wav"');
    expect(after).toContain('"untilSeconds": 12 /* long */,');
  });

  test('and what it did not say yet, how bad it was, is added', () => {
    const said = entry({ severity: 'fault', value: -2.7e-7 });
    const after = withEntry(fileOf(textOf(old)), said);
    expect(parseAccepted(PATH, after)).toEqual([JSON.parse(B), said]);
    expect(after).toContain('{ // heard\n      "side": "a.wav"');
  });

  test('and of several older ones one is left', () => {
    const several = [9, 11.5, 12].map((fromSeconds) =>
      JSON.stringify(entry({ fromSeconds, untilSeconds: fromSeconds + 1, reason: 'old' })),
    );
    const text = textOf(`[\n    ${[several[0], B, several[1], several[2]].join(',\n    ')}\n  ]`);
    expect(parseAccepted(PATH, withEntry(fileOf(text), entry()))).toEqual([entry(), JSON.parse(B)]);
  });

  test.each([
    ['of another file', { side: 'A.wav' }],
    ['of another id', { id: 'lift' }],
    ['of another stretch', { fromSeconds: 12.001, untilSeconds: 13 }],
    ['of the whole side', { fromSeconds: null, untilSeconds: null }],
  ] as const)('but not one %s', (_, changes) => {
    const there = entry({ ...changes, reason: 'old' });
    const after = withEntry(fileOf(textOf(`[${JSON.stringify(there)}]`)), entry());
    expect(parseAccepted(PATH, after)).toEqual([there, entry()]);
  });

  test('for the whole side by one for the whole side', () => {
    const whole = entry({ id: 'too-long', fromSeconds: null, untilSeconds: null });
    const after = withEntry(
      fileOf(textOf(`[${JSON.stringify({ ...whole, reason: 'old' })}]`)),
      whole,
    );
    expect(parseAccepted(PATH, after)).toEqual([whole]);
  });
});

describe('the entry of a finding', () => {
  const acceptance = { side: 'a.wav', reason: 'new', audioSha256: 'a'.repeat(64) };
  const spanOf = (changes: Parameters<typeof findingWith>[0]) => {
    const { fromSeconds, untilSeconds } = entryOf(findingWith(changes), acceptance);
    return [fromSeconds, untilSeconds];
  };

  test('has its stretch to a millisecond, and none where it is about the whole side', () => {
    expect(spanOf({ atSeconds: 1.23456, untilSeconds: 7.6543 })).toEqual([1.235, 7.654]);
    expect(spanOf({ atSeconds: -0.4506, untilSeconds: null })).toEqual([-0.451, -0.451]);
    expect(spanOf({ id: 'mono', atSeconds: null, untilSeconds: null })).toEqual([null, null]);
    expect(spanOf({ id: 'too-long', atSeconds: 900, untilSeconds: null })).toEqual([null, null]);
  });
});

test('the entry of a finding says how bad it was', () => {
  const acceptance = { side: 'a.wav', reason: 'new', audioSha256: 'a'.repeat(64) };
  const of = (value: number | null) =>
    entryOf(findingWith({ severity: 'fault', value }), acceptance);
  expect(of(-2.71828182e-7)).toMatchObject({ severity: 'fault', value: -2.71828e-7 });
  expect(of(null)).toMatchObject({ value: null });
});

describe('the findings meant', () => {
  const at = (atSeconds: number, untilSeconds: number | null) =>
    findingWith({ atSeconds, untilSeconds });
  const findings = [at(10, 11), at(20, null), findingWith({ id: 'lift', atSeconds: 20 })];

  test.each([
    [null, [10, 20]],
    [10.5, [10]],
    [9.95, [10]],
    [9.94, []],
    [11.05, [10]],
    [20.05, [20]],
    [20.06, []],
  ] as const)('at %s: those that begin at %s', (time, expected) => {
    const meant = findingsMeant(findings, 'land-low', time);
    expect(meant.map(({ atSeconds }) => atSeconds)).toEqual(expected);
  });

  test('what is about the whole side is there at any time', () => {
    const clipped = findingWith({ id: 'clipped', atSeconds: 300, untilSeconds: null });
    expect(findingsMeant([clipped], 'clipped', 5)).toEqual([clipped]);
  });
});

test.each([
  ['02:14.3', 134.3],
  ['134.3', 134.3],
  ['-00:00.4', -0.4],
  ['100:00', 6000],
  ['0', 0],
  ['2:60', null],
  ['1:02:03', null],
  ['', null],
  ['soon', null],
  ['1e3', null],
] as const)('a time written %j is %s s', (text, expected) => {
  expect(secondsOf(text)).toBe(expected);
});
