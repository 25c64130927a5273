import { describe, expect, test } from 'vitest';
import { FINDING_IDS, type Finding } from '../../src/model/forecast-types.js';
import { resolveProfile } from '../../src/profile/resolve-profile.js';
import { findingText } from '../../src/report/finding-text.js';
import { findingWith } from '../support/forecast-fixture.js';

const settings = resolveProfile();
const share: Partial<Finding> = { value: 0.0234, limit: 0.01, unit: 'ratio' };
const levels: Partial<Finding> = { value: 0.31, limit: 0, unit: 'decibel-full-scale' };
const whole: Partial<Finding> = { atSeconds: null, untilSeconds: null, frequency: null };

describe('says where, how much, against which limit, which channel and frequency', () => {
  test.each<[Partial<Finding>, readonly string[]]>([
    [
      { id: 'overcut', value: -6.31e-6, limit: 0 },
      ['03:12.4, turn 106', '-6.3 µm', 'left', '45 Hz'],
    ],
    [{ id: 'land-low' }, ['03:12.4', '8.2 µm', '12.7 µm', 'left', '45 Hz']],
    [{ id: 'lift', value: 12e-6, limit: 25.4e-6 }, ['too narrow', '12.0 µm', '25.4 µm', '45 Hz']],
    [{ id: 'lift', value: -1e-6, limit: 25.4e-6 }, ['leaves the lacquer', '-1.0 µm']],
    [{ id: 'too-deep', value: 130e-6, limit: 127e-6 }, ['130.0 µm', '127.0 µm']],
    [
      { id: 'too-long', severity: 'fault', value: 0.1181, limit: 0.12065 },
      ['118.1 mm', '120.7 mm'],
    ],
    [{ id: 'too-long', value: 0.1181, limit: 0.14 }, ['118.1 mm', '140.0 mm', 'house prefers']],
    [{ id: 'facet', ...share }, ['2.34 %', '0.70 of the groove speed', '1.00 %', 'left']],
    [{ id: 'facet', severity: 'fault', ...share }, ['1.00 of the groove speed']],
    [{ id: 'tight-bend', ...share }, ['2.34 %', '18.0 µm tip', '1.00 %']],
    [{ id: 'tight-bend', severity: 'fault', ...share }, ['8.0 µm tip']],
    [{ id: 'low-vertical', value: 8e-6, limit: 6e-6 }, ['8.0 µm', '6.0 µm', '45 Hz']],
    [{ id: 'echo-risk', value: 20e-6, limit: 25.4e-6 }, ['20.0 µm', '25.4 µm']],
    [{ id: 'pitch-limit', value: 600e-6, limit: 500e-6 }, ['open enough', '600.0 µm', '500.0 µm']],
    [
      { id: 'pitch-limit', value: 250e-6, limit: 164.7e-6, detail: 'ramp' },
      ['too soon', '250.0 µm', '164.7 µm'],
    ],
    [{ id: 'ultrasonic', ...levels, value: -50.1, limit: -60 }, ['-50.1 dBFS', '-60.0 dBFS']],
    [
      { id: 'clipped', value: 12, limit: 0, unit: 'count' },
      ['03:12.4, turn 106', '12 runs', 'the first of them here'],
    ],
    [
      {
        id: 'clipped',
        value: 1,
        limit: 0,
        unit: 'count',
        longest: { fromSeconds: 65.2, untilSeconds: 65.20125 },
      },
      ['1 run of', 'the longest lasts 1.25 ms, at 01:05.2'],
    ],
    [{ id: 'over-peak', ...levels }, ['+0.3 dBFS', '0.0 dBFS']],
    [
      { id: 'jump', ...levels, value: -12, limit: -36, wall: 'both', acceleration: 34_567.8 },
      ['both channels', '-12.0 dBFS', '-36.0 dBFS', 'at 192.440 s', '34568 m/s² at 0 dB'],
    ],
    [
      { id: 'jump', ...levels, wall: 'left', count: 57 },
      ['the left channel', 'of 57 in all the largest are told'],
    ],
    [
      {
        id: 'gap-inside',
        value: 31.25,
        limit: 0.1,
        unit: 'second',
        count: 6,
        spans: [1, 2, 3, 4, 5].map((at) => ({ fromSeconds: 60 * at, untilSeconds: 60 * at + 5 })),
      },
      ['6 stretches', '0.1 s or more', '31.3 s in all', '04:00.0 (5.0 s) and 2 more'],
    ],
    [{ id: 'dc-offset', ...share }, ['2.34 %', 'left channel', '1.00 %']],
    [{ id: 'silent', ...whole, ...levels, value: null, limit: -60 }, ['silent', '-60.0 dBFS']],
    [{ id: 'one-sided', ...whole, value: null }, ['Only the left channel carries sound.']],
    [{ id: 'mono', ...whole }, ['Both channels are the same']],
    [{ id: 'polarity', ...share, value: -0.83, limit: -0.3 }, ['-0.83', '-0.30']],
    [{ id: 'truncated', ...whole }, ['no valid length', 'breaks off']],
    [
      { id: 'off-standard', value: 0.1141, limit: 0.1192, detail: 'lead-out-room' },
      ['room for the lead-out', '114.1 mm', '119.2 mm', 'a turn at 6.4 mm'],
    ],
    [
      { id: 'too-long', value: 0.1111, limit: 0.1192, detail: 'lead-out-room' },
      ['room for the lead-out', '111.1 mm', '119.2 mm', 'a turn at 6.4 mm'],
    ],
    [
      { id: 'off-standard', ...whole, value: 9.7e-3, limit: 9.6e-3, detail: 'lead-out' },
      ['lead-out pitch of 9.7 mm, at most 9.6 mm'],
    ],
    [
      { id: 'off-standard', ...whole, value: 1.62e-3, limit: 1.5875e-3, detail: 'band' },
      ['marker band with a pitch of 1.62 mm, at most 1.59 mm'],
    ],
    [
      { id: 'off-standard', ...whole, value: 0.7e-3, limit: 0.8e-3, detail: 'lead-in' },
      ['lead-in pitch of 0.7 mm, at least 0.8 mm'],
    ],
    [{ id: 'rate-low', ...whole, value: 22_050, limit: 44_100, unit: 'hertz' }, ['22.1 kHz']],
  ])('%j', (changes, parts) => {
    const { message, remedy } = findingText(findingWith(changes), { settings, units: 'metric' });
    for (const part of parts) expect(message).toContain(part);
    expect(remedy).toMatch(/^[A-Z].{15,}\.$/);
  });

  test('every id has words of its own', () => {
    const texts = FINDING_IDS.map(
      (id) => findingText(findingWith({ id }), { settings, units: 'metric' }).message,
    );
    expect(new Set(texts).size).toBe(FINDING_IDS.length);
  });
});

describe('a value beside a limit that it would look like', () => {
  test.each<[Partial<Finding>, readonly string[]]>([
    [{ value: 12.68e-6 }, ['12.68 µm is left', '12.70 µm']],
    [{ value: 12.696e-6 }, ['12.696 µm is left', '12.700 µm']],
    [{ id: 'overcut', value: -0.02e-6, limit: 0 }, ['land -0.02 µm']],
    [{ id: 'too-long', value: 0.12066, limit: 0.12068 }, ['120.66 mm', '120.68 mm']],
    [{ id: 'facet', ...share, value: 0.010004 }, ['1.0004 %', '1.0000 %']],
    [{ id: 'over-peak', ...levels, value: 0.04 }, ['+0.04 dBFS', '0.00 dBFS']],
    [{ id: 'polarity', ...share, value: -0.501, limit: -0.5 }, ['-0.501', '-0.500']],
    [{ id: 'rate-low', value: 44_099, limit: 44_100, unit: 'hertz' }, ['44.099 kHz']],
    [{ id: 'pitch-limit', value: 500.02e-6, limit: 500e-6 }, ['500.02 µm', '500.00 µm']],
  ])('has digits enough to differ: %j', (changes, parts) => {
    const { message, remedy } = findingText(findingWith(changes), { settings, units: 'metric' });
    for (const part of parts) expect(message + remedy).toContain(part);
  });

  test('has no more than that, and none more if they are equal', () => {
    const told = (value: number) =>
      findingText(findingWith({ value }), { settings, units: 'metric' }).message;
    expect(told(12.6e-6)).toContain('12.6 µm is left, 12.7 µm');
    expect(told(12.7e-6)).toContain('12.7 µm is left, 12.7 µm');
  });
});

test('of a side too long without any modulation no lower level is advised', () => {
  const remedyOf = (detail: string | null) =>
    findingText(findingWith({ id: 'too-long', severity: 'fault', detail }), {
      settings,
      units: 'metric',
    }).remedy;
  expect(remedyOf(null)).toMatch(/^Lower the level, tighten/);
  expect(remedyOf('base-pitch')).toBe(
    'Tighten the base pitch or move a track to another side; a lower level is not enough.',
  );
});

test('mils for who works in mils', () => {
  const { message } = findingText(findingWith(), { settings, units: 'us' });
  expect(message).toContain('0.32 mil');
  expect(message).toContain('0.50 mil');
});

test('a pitch is told in lines per inch to who works in them', () => {
  const pitches = findingWith({ id: 'pitch-limit', value: 254e-6, limit: 127e-6 });
  const { message } = findingText(pitches, { settings, units: 'us' });
  expect(message).toContain('100 LPI is needed, the widest is 200 LPI');
});

test('a stretch has both its ends', () => {
  const { where } = findingText(findingWith({ untilSeconds: 195 }), {
    settings,
    units: 'metric',
  });
  expect(where).toBe('03:12.4–03:15.0, turn 106, left wall, 45 Hz');
});

test('at half speed the place is given in both clocks', () => {
  const half = resolveProfile({ flags: { speedFactor: 0.5 } });
  const { message } = findingText(findingWith(), { settings: half, units: 'metric' });
  expect(message).toContain('03:12.4 (lathe 06:24.9), turn 106');
  const { where } = findingText(findingWith({ untilSeconds: 195 }), {
    settings: half,
    units: 'metric',
  });
  expect(where).toContain('03:12.4–03:15.0 (lathe 06:24.9–06:30.0), turn 106');
});

describe('where a finding is, apart from what it is', () => {
  const told = (changes: Partial<Finding>) =>
    findingText(findingWith(changes), { settings, units: 'metric' });

  test('the message is the two of them', () => {
    const { where, what, message } = told({ wall: 'both' });
    expect(where).toBe('03:12.4, turn 106, both walls, 45 Hz');
    expect(message).toBe(`${where}: ${what}`);
    expect(what).not.toMatch(/03:12|wall|Hz/);
  });

  test('of the whole file there is no place, and the message begins with what it is', () => {
    const { where, what, message } = told({ id: 'mono', wall: null, ...whole });
    expect(where).toBe('');
    expect(message).toBe(what);
  });

  test('a channel of the file is named in what it is, not as a wall', () => {
    const { where, what } = told({ id: 'dc-offset', ...whole, value: 0.02 });
    expect(where).toBe('');
    expect(what).toContain('in the left channel');
  });
});
