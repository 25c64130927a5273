import { describe, expect, test } from 'vitest';
import { findingChanges } from '../../src/model/compare-findings.js';
import type { Finding } from '../../src/model/forecast-types.js';
import { findingWith } from '../support/forecast-fixture.js';

const TURN = 1.8;

const low = (from: number, until: number, value = 6e-6, more: Partial<Finding> = {}) =>
  findingWith({ atSeconds: from, untilSeconds: until, value, ...more });
const overcut = (from: number, until: number, value = -4e-6) =>
  low(from, until, value, { id: 'overcut', severity: 'fault', limit: 0 });

function changes(before: readonly Finding[], after: readonly Finding[], offset = 0) {
  return findingChanges(before, after, offset, TURN).map(
    ({ change, before: was, after: is }) =>
      [change, was?.value ?? null, is?.value ?? null] as const,
  );
}

test('a finding within two turns is the same one, beyond them one is gone and one new', () => {
  expect(changes([low(10, 11)], [low(14.59, 15)])).toEqual([]);
  expect(changes([low(10, 11)], [low(14.61, 15)])).toEqual([
    ['gone', 6e-6, null],
    ['new', null, 6e-6],
  ]);
});

test('of two in reach the nearest is the same one; the other is new', () => {
  expect(changes([low(10, 11)], [low(8, 9, 5e-6), low(12.5, 13, 4e-6)])).toEqual([
    ['new', null, 4e-6],
  ]);
});

test('a shift of the program is taken off first, and what is gone is told in the new time', () => {
  expect(changes([low(10, 11)], [low(30, 31)], 20)).toEqual([]);
  const [gone] = findingChanges([low(10, 11)], [], 20, TURN);
  expect(gone).toMatchObject({ change: 'gone', atSeconds: 30, before: { atSeconds: 10 } });
});

describe('one finding that becomes two', () => {
  const long = [low(10, 30, 3e-6)];
  const parts = (first: number, second: number) => [low(10, 19, first), low(21, 30, second)];

  test.each([
    ['both as bad or less', 3e-6, 6e-6, []],
    ['both less', 6e-6, 7e-6, [['better', 3e-6, 6e-6]]],
    ['one of them worse', 6e-6, 1e-6, [['worse', 3e-6, 1e-6]]],
  ] as const)('%s', (_, first, second, expected) => {
    expect(changes(long, parts(first, second))).toEqual(expected);
  });

  test('and back: the same with worse for better', () => {
    expect(changes(parts(6e-6, 7e-6), long)).toEqual([['worse', 6e-6, 3e-6]]);
  });
});

test('little land that becomes an overcut is worse, not gone and new', () => {
  expect(changes([low(10, 11)], [overcut(10.2, 10.6)])).toEqual([['worse', 6e-6, -4e-6]]);
  expect(changes([overcut(10, 11)], [low(10, 11)])).toEqual([['better', -4e-6, 6e-6]]);
});

test('findings of other ids, or of another detail, are others', () => {
  const ramp = low(10, 11, 2e-4, { id: 'pitch-limit', detail: 'ramp', limit: 1e-4 });
  expect(changes([ramp], [{ ...ramp, detail: 'pitch-max' }]).map(([change]) => change)).toEqual([
    'new',
    'gone',
  ]);
});

test('where a side gets too long may move by minutes', () => {
  const long = (atSeconds: number, value: number) =>
    low(atSeconds, atSeconds, value, { id: 'too-long', severity: 'fault', limit: 0.12065 });
  expect(changes([long(1000, 0.1201)], [long(1100, 0.12015)])).toEqual([]);
  expect(changes([long(1000, 0.1201)], [long(1100, 0.1203)])).toEqual([['better', 0.1201, 0.1203]]);
});

test('too little room at the end is one thing, whatever it is called and wherever the end is', () => {
  const room = { detail: 'lead-out-room', limit: 0.1192 } as const;
  const note = low(1000, 1000, 0.1141, { ...room, id: 'off-standard', severity: 'note' });
  const caution = low(1090, 1090, 0.1111, { ...room, id: 'too-long', severity: 'caution' });
  expect(changes([note], [caution])).toEqual([['worse', 0.1141, 0.1111]]);
  const long = (detail: string | null, value: number) =>
    low(900, 900, value, { id: 'too-long', severity: 'fault', limit: 0.12065, detail });
  expect(changes([long(null, 0.12)], [long('base-pitch', 0.11)])).toEqual([['worse', 0.12, 0.11]]);
});

describe('only what matters is told', () => {
  const share = { id: 'tight-bend', unit: 'ratio', limit: 0.01 } as const;
  const bass = { id: 'low-vertical', limit: 6e-6 } as const;
  const peak = { id: 'over-peak', severity: 'note', unit: 'decibel-full-scale', limit: 0 } as const;
  test.each([
    ['land by less than 1.5 µm', low(10, 11, 6e-6), low(10, 11, 4.6e-6), null],
    ['land by more than 1.5 µm', low(10, 11, 6e-6), low(10, 11, 4.4e-6), 'worse'],
    ['a share by less than a quarter', low(1, 2, 0.03, share), low(1, 2, 0.039, share), null],
    ['a share by more than a quarter', low(1, 2, 0.03, share), low(1, 2, 0.041, share), 'worse'],
    ['peaks by less than 0.5 dB', low(1, 2, 0.3, peak), low(1, 2, 0.7, peak), null],
    ['peaks by more than 0.5 dB', low(1, 2, 1.3, peak), low(1, 2, 0.7, peak), 'better'],
    ['a caution just past its limit that is new', null, low(10, 11, 7e-6, bass), null],
    ['a caution clearly past its limit that is new', null, low(10, 11, 8e-6, bass), 'new'],
    ['land just under landMin that is new', null, low(10, 11, 12.69e-6), 'new'],
    ['land just under landMin that is gone', low(10, 11, 12.69e-6), null, 'gone'],
    ['any fault that is new', null, overcut(10, 11, -1e-8), 'new'],
    ['any fault that is gone', overcut(10, 11, -1e-8), null, 'gone'],
    [
      'another severity',
      low(1, 2, 0.03, share),
      low(1, 2, 0.011, { ...share, severity: 'fault' }),
      'worse',
    ],
  ] as const)('%s', (_, was, is, expected) => {
    const told = changes(was === null ? [] : [was], is === null ? [] : [is]);
    expect(told.map(([change]) => change)).toEqual(expected === null ? [] : [expected]);
  });

  test('what has no value is new or gone, never worse', () => {
    const mono = findingWith({
      id: 'mono',
      severity: 'note',
      atSeconds: null,
      untilSeconds: null,
      value: null,
      limit: null,
      unit: 'none',
    });
    expect(changes([mono], [mono])).toEqual([]);
    expect(changes([], [mono]).map(([change]) => change)).toEqual(['new']);
  });
});

test('echo risks are compared only where the quarter turns of both files are the same', () => {
  const risk = low(10, 11, 9e-6, { id: 'echo-risk', severity: 'note', limit: 25.4e-6 });
  for (const [quarters, count] of [
    [0, 1],
    [3, 1],
    [-2.08, 1],
    [2.5, 0],
    [-0.2, 0],
  ] as const) {
    expect(findingChanges([risk], [], (quarters * TURN) / 4, TURN)).toHaveLength(count);
    expect(findingChanges([], [risk], (quarters * TURN) / 4, TURN)).toHaveLength(count);
  }
});

test('changes are in time order, what is about the whole side first', () => {
  const whole = findingWith({ id: 'dc-offset', atSeconds: null, untilSeconds: null });
  const order = findingChanges([low(50, 51), low(5, 6)], [low(20, 21), whole], 0, TURN);
  expect(order.map(({ atSeconds }) => atSeconds)).toEqual([null, 5, 20, 50]);
});
