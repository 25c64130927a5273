import { describe, expect, test } from 'vitest';
import type { AcceptedEntry } from '../../src/accepted/accepted-schema.js';
import { applyAccepted, openSeverities } from '../../src/accepted/apply-accepted.js';
import type { Finding } from '../../src/model/forecast-types.js';
import { findingWith, forecastedFile } from '../support/forecast-fixture.js';

const SOUND = 'a'.repeat(64);
const OTHER = 'b'.repeat(64);
/** A quarter turn at 33⅓ rpm, s. */
const QUARTER = 0.45;

const overcut = (from: number, until: number | null): Finding =>
  findingWith({ id: 'overcut', severity: 'fault', atSeconds: from, untilSeconds: until });

const accepts = (changes: Partial<AcceptedEntry> = {}): AcceptedEntry => ({
  id: 'overcut',
  side: 'invented-side.wav',
  fromSeconds: 10,
  untilSeconds: 12,
  reason: 'kisses, heard on the test cut',
  audioSha256: SOUND,
  ...changes,
});

function applied(
  findings: readonly Finding[],
  entries: readonly AcceptedEntry[],
  audioSha256: string | null = SOUND,
) {
  const file = forecastedFile({ audioSha256 }, { verdict: 'fault', findings });
  const result = applyAccepted(file, entries);
  const accepted = result.file.forecast.findings.map((finding) => finding.accepted?.reason ?? null);
  return { ...result, accepted, verdict: result.file.forecast.verdict };
}

describe('a finding within what was accepted', () => {
  test('is marked with the reason and does not count for the verdict', () => {
    const { accepted, verdict, voided, stale } = applied([overcut(10, 12)], [accepts()]);
    expect(accepted).toEqual(['kisses, heard on the test cut']);
    expect({ verdict, voided, stale }).toEqual({ verdict: 'clear', voided: [], stale: [] });
  });

  test('leaves the others their verdict, and itself out of what --fail-on counts', () => {
    const { verdict, file } = applied([overcut(10, 12), findingWith()], [accepts()]);
    expect(verdict).toBe('caution');
    expect(openSeverities(file.forecast.findings)).toEqual(new Set(['caution']));
  });

  test.each([
    ['inside of it', 10.5, 11, true],
    ['a place without an end', 11, null, true],
    ['a quarter turn beyond both ends', 10 - QUARTER + 1e-6, 12 + QUARTER - 1e-6, true],
    ['more than a quarter turn before it', 10 - QUARTER - 1e-3, 12, false],
    ['more than a quarter turn behind it', 10, 12 + QUARTER + 1e-3, false],
  ] as const)('%s: accepted %s', (_, from, until, isAccepted) => {
    const { accepted, verdict } = applied([overcut(from, until)], [accepts()]);
    expect(accepted[0] !== null).toBe(isAccepted);
    expect(verdict).toBe(isAccepted ? 'clear' : 'fault');
  });

  test('is not one of another id at the same place', () => {
    const finding = findingWith({ id: 'lift', severity: 'fault', atSeconds: 10, untilSeconds: 12 });
    expect(applied([finding], [accepts()]).accepted).toEqual([null]);
  });
});

describe('an acceptance', () => {
  test('of another sound is void, and the finding counts', () => {
    const entry = accepts({ audioSha256: OTHER });
    const { voided, verdict, stale } = applied([overcut(10, 12)], [entry]);
    expect(voided).toEqual([{ entry, why: 'audio-changed' }]);
    expect({ verdict, stale }).toEqual({ verdict: 'fault', stale: [] });
  });

  test('of a sound that was not hashed is void', () => {
    const { voided, verdict } = applied([overcut(10, 12)], [accepts()], null);
    expect(voided).toMatchObject([{ why: 'audio-unknown' }]);
    expect(verdict).toBe('fault');
  });

  test('that its finding has outgrown is void', () => {
    const { voided, stale } = applied([overcut(9, 14)], [accepts()]);
    expect(voided).toMatchObject([{ why: 'outgrown' }]);
    expect(stale).toEqual([]);
  });

  test('whose finding is gone is stale, not void', () => {
    const { voided, stale } = applied([overcut(100, 101)], [accepts()]);
    expect(voided).toEqual([]);
    expect(stale).toEqual([accepts()]);
  });

  test('without a stretch is of what the whole side says, wherever that begins', () => {
    const whole = { fromSeconds: null, untilSeconds: null } as const;
    const findings = [
      findingWith({ id: 'too-long', severity: 'fault', atSeconds: 1100, untilSeconds: null }),
      findingWith({ id: 'dc-offset', atSeconds: null, untilSeconds: null }),
      overcut(10, 12),
    ];
    const entries = (['too-long', 'dc-offset', 'overcut'] as const).map((id) =>
      accepts({ id, ...whole }),
    );
    const { accepted, stale } = applied(findings, entries);
    expect(accepted.map((reason) => reason !== null)).toEqual([true, true, false]);
    expect(stale).toMatchObject([{ id: 'overcut' }]);
  });
});

describe('an acceptance that says how bad its finding was', () => {
  const asBadAs = (value: number) => ({ severity: 'fault', value }) as const;

  // Land 1.5 µm less is clearly worse, as it is between two mixes; see compare-margins.
  test.each([
    ['as deep as it was', -0.27e-6, true],
    ['a little deeper', -1.7e-6, true],
    ['much deeper', -5.61e-6, false],
    ['less deep', -0.01e-6, true],
  ] as const)('an overcut %s: accepted %s', (_, value, isAccepted) => {
    const is = { ...overcut(10, 12), value, limit: 0 };
    const { accepted, verdict, voided } = applied([is], [accepts(asBadAs(-0.27e-6))]);
    expect(accepted[0] !== null).toBe(isAccepted);
    expect(verdict).toBe(isAccepted ? 'clear' : 'fault');
    expect(voided.map(({ why }) => why)).toEqual(isAccepted ? [] : ['outgrown']);
  });

  test.each([
    ['steeper than it was', 'caution', 0.04, 'caution', 0.06, false],
    ['a fifth steeper', 'caution', 0.04, 'caution', 0.048, true],
    ['a fault now', 'caution', 0.04, 'fault', 0.02, false],
    ['a caution only', 'fault', 0.02, 'caution', 0.5, true],
    ['without a value', 'fault', null, 'fault', 0.5, true],
  ] as const)('a slope %s', (_, wasSeverity, was, severity, value, isAccepted) => {
    const is = findingWith({ id: 'facet', severity, value, limit: 0.01, unit: 'ratio' });
    const span = { fromSeconds: is.atSeconds, untilSeconds: is.untilSeconds };
    const entry = accepts({ id: 'facet', ...span, severity: wasSeverity, value: was });
    expect(applied([is], [entry]).accepted[0] !== null).toBe(isAccepted);
  });

  test('is not fooled by another limit: a groove 4 µm narrower is narrower', () => {
    const is = findingWith({ id: 'lift', severity: 'fault', value: 18e-6, limit: 20e-6 });
    const span = { fromSeconds: is.atSeconds, untilSeconds: is.untilSeconds };
    const entry = accepts({ id: 'lift', ...span, ...asBadAs(22e-6) });
    expect(applied([is], [entry]).accepted).toEqual([null]);
  });

  test('an older one that does not say it holds for its stretch alone', () => {
    const is = { ...overcut(10, 12), value: -50e-6, limit: 0 };
    expect(applied([is], [accepts()]).verdict).toBe('clear');
  });
});

test('without entries a forecast stays as it is', () => {
  const file = forecastedFile();
  expect(applyAccepted(file, []).file).toEqual(file);
});
