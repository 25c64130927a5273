import { describe, expect, it } from 'vitest';
import { withAccepted } from '../../../../src/report/html/page/accepted.js';
import { findingWith, forecastedFile } from '../../../support/forecast-fixture.js';

const fault = findingWith({ id: 'overcut', severity: 'fault', atSeconds: 10, untilSeconds: 12 });
const accepted = { ...fault, accepted: { reason: 'the client wants it so' } };
const forecastOf = (...findings: (typeof fault)[]) =>
  forecastedFile({}, { findings, verdict: 'fault' }).forecast;

describe('what the house has accepted', () => {
  it('stays accepted while it lies within what was accepted, and leaves the verdict', () => {
    const shorter = { ...fault, atSeconds: 10.5, untilSeconds: 11, value: -1e-6 };
    const { findings, verdict } = withAccepted(forecastOf(shorter), [accepted]);
    expect(findings[0]?.accepted?.reason).toBe('the client wants it so');
    expect(verdict).toBe('clear');
  });

  it.for([
    ['it reaches further', { untilSeconds: 13 }],
    ['it begins earlier', { atSeconds: 9 }],
    ['it is another finding', { id: 'lift' as const }],
    ['it is about the whole file', { atSeconds: null, untilSeconds: null }],
  ] as const)('does not where %s', ([, changes]) => {
    const { findings, verdict } = withAccepted(forecastOf({ ...fault, ...changes }), [accepted]);
    expect(findings[0]?.accepted).toBe(undefined);
    expect(verdict).toBe('fault');
  });
});
