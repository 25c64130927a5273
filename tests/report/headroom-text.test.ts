import { describe, expect, test } from 'vitest';
import type { Finding, Headroom } from '../../src/model/forecast-types.js';
import { clientSide } from '../../src/report/client-side.js';
import { headroomText } from '../../src/report/headroom-text.js';
import { findingWith, forecastedFile } from '../support/forecast-fixture.js';

const LAND: Headroom = {
  fillDb: -1.2,
  traceDb: -2.6,
  recommendedDb: -3,
  limitedBy: { id: 'overcut', atSeconds: 144.1 },
};
const ACCEPTED = { accepted: { reason: 'kisses' } };
const overcut = (changes: Partial<Finding> = {}) =>
  findingWith({ id: 'overcut', severity: 'fault', atSeconds: 143, untilSeconds: 145, ...changes });

const fileOf = (findings: readonly Finding[], headroom: Headroom) =>
  forecastedFile({}, { findings, headroom });
const told = (findings: readonly Finding[], headroom: Headroom) =>
  headroomText(fileOf(findings, headroom));

describe('what limits the level', () => {
  // A turn takes 1.8 s.
  test.each([
    ['a finding that counts', overcut(), false],
    ['an accepted one', overcut(ACCEPTED), true],
    ['one a turn further on', overcut({ ...ACCEPTED, atSeconds: 145.8, untilSeconds: 146 }), true],
    ['one elsewhere', overcut({ ...ACCEPTED, atSeconds: 147, untilSeconds: 148 }), false],
    ['one of another kind', overcut({ ...ACCEPTED, id: 'lift' }), false],
  ])('beside %s', (_, finding, isAccepted) => {
    const limit = isAccepted ? 'a finding that is accepted: land' : 'land';
    expect(told([finding], LAND)).toContain(`at most -3.0 dB, limited by ${limit} at 02:24.1`);
    expect(clientSide(fileOf([finding], LAND)).limitedBy).toBe(isAccepted ? null : 'overcut');
  });

  test('is accepted where the length of the whole side is', () => {
    const long = findingWith({ id: 'too-long', severity: 'fault', atSeconds: 900, ...ACCEPTED });
    const headroom: Headroom = { ...LAND, limitedBy: { id: 'too-long', atSeconds: null } };
    expect(told([long], headroom)).toContain('limited by a finding that is accepted: the room');
  });
});

describe('the level without a fault', () => {
  test.each([
    ['is that of the side where it fits so loud', -1.2, -2.6, '; without a fault up to -2.6 dB.'],
    [
      'is apart from its length where it does not',
      -2.6,
      12,
      '; apart from its length without a fault +12.0 dB or more (highest looked at).',
    ],
    [
      'is apart from its length where it fits nowhere',
      null,
      12,
      'Fits nowhere from -12 to +12 dB; apart from its length without',
    ],
  ])('%s', (_, fillDb, traceDb, expected) => {
    expect(told([], { ...LAND, fillDb, traceDb })).toContain(expected);
  });
});
