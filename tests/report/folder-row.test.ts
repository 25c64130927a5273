import { describe, expect, test } from 'vitest';
import { folderRow, needsDetails } from '../../src/report/folder-row.js';
import { worstFinding } from '../../src/report/folder-worst-finding.js';
import { findingWith, forecastedFile, planWith } from '../support/forecast-fixture.js';

const CLEAR = { verdict: 'clear', findings: [] } as const;
const upTo = (recommendedDb: number | null) => ({
  headroom: { fillDb: recommendedDb, traceDb: 12, recommendedDb, limitedBy: null },
});

describe('the worst finding', () => {
  test.each([
    [
      'a fault before a caution',
      [
        ['land-low', 'caution'],
        ['facet', 'fault'],
      ],
      'facet',
    ],
    [
      'an overcut before a facet',
      [
        ['facet', 'fault'],
        ['overcut', 'fault'],
      ],
      'overcut',
    ],
    ['a note where there is nothing else', [['mono', 'note']], 'mono'],
    ['none where there is none', [], undefined],
  ] as const)('is %s', (_, found, id) => {
    const findings = found.map(([each, severity]) => findingWith({ id: each, severity }));
    expect(worstFinding(findings)?.id).toBe(id);
  });

  test('of one kind is the furthest past its limit, whichever side of it is wrong', () => {
    const overcut = (atSeconds: number, value: number) =>
      findingWith({ id: 'overcut', severity: 'fault', atSeconds, value, limit: 0 });
    const facet = (atSeconds: number, value: number) =>
      findingWith({ id: 'facet', severity: 'fault', atSeconds, value, limit: 0.01 });
    const overcuts = [overcut(10, -1e-6), overcut(70, -3e-6), overcut(130, -2e-6)];
    expect(worstFinding(overcuts)?.atSeconds).toBe(70);
    expect(worstFinding([facet(10, 0.02), facet(70, 0.5)])?.atSeconds).toBe(70);
  });

  test('of equals is the earliest', () => {
    const findings = [90, 30, 60].map((atSeconds) => findingWith({ atSeconds }));
    expect(worstFinding(findings)?.atSeconds).toBe(30);
  });

  test('is not one that the house accepts, while there is another', () => {
    const accepted = { reason: 'agreed with the artist' };
    const known = findingWith({ id: 'overcut', severity: 'fault', accepted });
    const other = findingWith({ id: 'mono', severity: 'note' });
    expect(worstFinding([known, other])?.id).toBe('mono');
    expect(worstFinding([known])?.id).toBe('overcut');
  });
});

describe('details are needed', () => {
  test.each([
    ['a fault', { verdict: 'fault' }, true],
    ['a caution', { verdict: 'caution' }, true],
    ['nothing', { ...CLEAR }, false],
    ['a note', { ...CLEAR, findings: [findingWith({ severity: 'note' })] }, false],
    ['a level that does not hold', { ...CLEAR, ...upTo(-0.5) }, true],
    ['no level that holds', { ...CLEAR, ...upTo(null) }, true],
    ['a level that just holds', { ...CLEAR, ...upTo(0) }, false],
    ['a running order to tell', { ...CLEAR, ...upTo(0), order: null }, true],
  ] as const)('of a side with %s: %#', (_, forecast, expected) => {
    expect(needsDetails(forecastedFile({}, forecast))).toBe(expected);
  });
});

describe('a row', () => {
  test('takes land and end from what the lathe executes', () => {
    const plan = planWith({ landMin: 13e-6, spare: 0.002, endDiameter: 0.13 });
    const row = folderRow(forecastedFile({}, { executes: 'plan', plan }));
    expect(row.landMin).toBe(13e-6);
    expect(row.executed).toEqual({ spare: 0.002, endDiameter: 0.13 });
    expect(row.machine.endDiameter).toBe(0.1206612);
  });

  test('is small: no column of the side hangs on it', () => {
    expect(JSON.stringify(folderRow(forecastedFile())).length).toBeLessThan(1500);
  });
});
