import { describe, expect, test } from 'vitest';
import { hasOutgrown, mattersAlone, worseBy } from '../../src/model/compare-margins.js';
import type { Finding } from '../../src/model/forecast-types.js';
import { findingWith } from '../support/forecast-fixture.js';

/** Land under 12.7 µm, unless said otherwise. */
const land = (value: number | null, more: Partial<Finding> = {}) => findingWith({ value, ...more });
const share = (value: number, more: Partial<Finding> = {}) =>
  findingWith({ id: 'facet', unit: 'ratio', value, limit: 0.01, ...more });
const late = (value: number, more: Partial<Finding> = {}) =>
  findingWith({ id: 'too-long', value, limit: 0.12, ...more });
const peak = (value: number) =>
  findingWith({ id: 'over-peak', unit: 'decibel-full-scale', value, limit: 0 });

describe('how much worse a finding is', () => {
  test.each([
    // A microscope: 1.5 µm. A rule: 0.1 mm. A level control: 0.5 dB. A share: a quarter of the larger.
    ['3 µm less land', land(8e-6), land(5e-6), 2],
    ['3 µm more land', land(5e-6), land(8e-6), -2],
    ['a diameter 0.2 mm further in', late(0.119), late(0.1188), 2],
    ['off a standard by 0.1 mm more', late(0.1201, { id: 'off-standard' }), late(0.1202), 1],
    ['a peak 1 dB higher', peak(1), peak(2), 2],
    ['half as much time again', share(0.02), share(0.03), 0.01 / (0.03 / 4)],
    ['half of the time', share(0.04), share(0.02), -0.02 / (0.04 / 4)],
    ['the same', land(8e-6), land(8e-6), 0],
    ['nothing to compare', land(null), land(8e-6), 0],
    ['nothing to compare with', land(8e-6), land(null), 0],
    ['no limit', land(8e-6, { limit: null }), land(5e-6), 0],
    ['another limit: how far past it counts', land(8e-6), land(18e-6, { limit: 22.7e-6 }), 0],
  ] as const)('%s', (_, before, after, margins) => {
    expect(worseBy(before, after)).toBeWithin(margins, 1e-9);
  });

  test('is beyond all margins where it is graver or less grave, whatever its values', () => {
    const grave = ['note', 'caution', 'fault'] as const;
    for (const [at, severity] of grave.entries()) {
      for (const [other, later] of grave.entries()) {
        const worse = worseBy(land(8e-6, { severity }), land(8e-6, { severity: later }));
        expect(worse).toBe(at === other ? 0 : (other - at) * Number.POSITIVE_INFINITY);
      }
    }
  });
});

describe('a finding has outgrown what it was', () => {
  test.each([
    ['by more than 1.5 µm of land', { value: 8e-6 }, land(6.49e-6), true],
    ['not by less', { value: 8e-6 }, land(6.51e-6), false],
    ['not the other way', { value: 8e-6 }, land(12e-6), false],
    ['by more than a quarter of a share', { value: 0.03 }, share(0.0401), true],
    ['not by less', { value: 0.03 }, share(0.0399), false],
    ['not the other way', { value: 0.04 }, share(0.02), false],
    ['whatever its limit was', { value: 8e-6 }, land(6e-6, { limit: 7e-6 }), true],
    ['not where there was no value', { value: null }, land(1e-6), false],
    ['nor where none is known', {}, land(1e-6), false],
    ['nor where there is none now', { value: 8e-6 }, land(null), false],
    ['nor without a limit', { value: 8e-6 }, land(1e-6, { limit: null }), false],
    ['where it is graver', { severity: 'note', value: 1e-6 }, land(8e-6), true],
    ['not where it is less grave', { severity: 'fault', value: 8e-6 }, land(1e-6), false],
    ['as grave, by its value', { severity: 'caution', value: 8e-6 }, land(6e-6), true],
    ['as grave and as far, not', { severity: 'caution', value: 8e-6 }, land(8e-6), false],
  ] as const)('%s', (_, was, is, expected) => {
    expect(hasOutgrown(was, is)).toBe(expected);
  });
});

describe('a finding that comes or goes matters', () => {
  const lift = (value: number | null) => findingWith({ id: 'low-vertical', value, limit: 6e-6 });

  test.each([
    ['from its margin on', lift(7.5e-6), true],
    ['not under it', lift(7.4e-6), false],
    ['where it has no value', lift(null), true],
    [
      'as a fault',
      findingWith({ id: 'lift', severity: 'fault', value: 6.1e-6, limit: 6e-6 }),
      true,
    ],
    ['as any land under landMin', land(12.6e-6), true],
    ['as a share over a quarter of itself past its limit', share(0.0134), true],
    ['not as one that is less', share(0.0133), false],
  ] as const)('%s', (_, finding, expected) => {
    expect(mattersAlone(finding)).toBe(expected);
  });
});
