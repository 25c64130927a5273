import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { FINDING_IDS, type Finding } from '../../src/model/forecast-types.js';
import { findingKind, foldFindings, type Height } from '../../src/report/fold-findings.js';
import { findingWith } from '../support/forecast-fixture.js';

/** Two lines a finding, one more for what mends it. */
const height: Height = (_, { isMended }) => 2 + (isMended ? 1 : 0);

const findings = fc.array(
  fc
    .record({
      id: fc.constantFrom(...FINDING_IDS),
      severity: fc.constantFrom('note', 'caution', 'fault'),
      value: fc.double({ min: -1, max: 1, noNaN: true }),
      accepted: fc.option(fc.constantFrom({ reason: 'known' }, { reason: 'agreed' }), {
        nil: undefined,
      }),
    })
    .map(({ accepted, ...rest }) =>
      findingWith(accepted === undefined ? rest : { ...rest, accepted }),
    ),
  { maxLength: 60 },
);

describe('however many findings and however little room', () => {
  test('none is lost: each is shown, counted with its like, or counted as left out', () => {
    fc.assert(
      fc.property(findings, fc.integer({ min: 0, max: 60 }), (all, room) => {
        const { shown, alike, leftOut } = foldFindings(all, room, height);
        const told = [...shown, ...[...alike.values()].flat(), ...leftOut];
        expect(told).toHaveLength(all.length);
        expect(new Set(told)).toEqual(new Set(all));
      }),
    );
  });

  test('every kind of fault is shown, by its worst, and no caution before a fault is', () => {
    fc.assert(
      fc.property(findings, fc.integer({ min: 0, max: 60 }), (all, room) => {
        const { shown, leftOut } = foldFindings(all, room, height);
        const isFault = ({ severity, accepted }: Finding) =>
          severity === 'fault' && accepted === undefined;
        expect(leftOut.filter(isFault)).toEqual([]);
        for (const fault of all.filter(isFault)) {
          const like = shown.filter((each) => findingKind(each) === findingKind(fault));
          const worst = Math.max(...like.map((each) => excess(each)));
          expect(worst).toBeGreaterThanOrEqual(excess(fault));
        }
      }),
    );
  });

  test('with room enough all are shown, in their order', () => {
    fc.assert(
      fc.property(findings, (all) => {
        const { shown, unmended } = foldFindings(all, Number.POSITIVE_INFINITY, height);
        expect(shown).toEqual(all);
        expect(unmended.size).toBe(0);
      }),
    );
  });
});

test('the milder of a crowd are counted before any other kind is left out', () => {
  const crowd = [3, 9, 5].map((value) => findingWith({ id: 'overcut', severity: 'fault', value }));
  const note = findingWith({ id: 'mono', severity: 'note' });
  // Two findings, each with what mends it.
  const { shown, alike, leftOut } = foldFindings([...crowd, note], 6, height);
  expect(shown).toEqual([crowd[1], note]);
  expect([...alike.values()].flat()).toEqual([crowd[0], crowd[2]]);
  expect(leftOut).toEqual([]);
});

test('accepted ones are counted behind one with the same reason only', () => {
  const because = (reason: string, value: number) =>
    findingWith({ id: 'overcut', severity: 'fault', value, accepted: { reason } });
  const all = [because('heard', 5), because('agreed', 3), because('heard', 9)];
  const { shown, alike } = foldFindings(all, 4, height);
  expect(shown).toEqual([all[1], all[2]]);
  expect([...alike.values()].flat()).toEqual([all[0]]);
});

test('an accepted one is told by its headline before anything else is shortened, and left out late', () => {
  const known = findingWith({ id: 'lift', severity: 'fault', accepted: { reason: 'heard' } });
  const caution = findingWith({ id: 'facet', severity: 'caution' });
  const lines: Height = (_, { isBrief, isMended }) => (isBrief ? 1 : 2) + (isMended ? 1 : 0);
  const kept = (room: number) => foldFindings([known, caution], room, lines);
  expect(kept(4)).toMatchObject({ shown: [known, caution], leftOut: [], unmended: new Set() });
  expect(kept(4).brief).toEqual(new Set([findingKind(known)]));
  expect(kept(2)).toMatchObject({ shown: [known, caution], leftOut: [] });
  expect(kept(1)).toMatchObject({ shown: [caution], leftOut: [known] });
});

test('what mends a caution is left unsaid before the caution is left out', () => {
  const fault = findingWith({ id: 'lift', severity: 'fault' });
  const caution = findingWith({ id: 'facet', severity: 'caution' });
  const { shown, unmended } = foldFindings([fault, caution], 5, height);
  expect(shown).toEqual([fault, caution]);
  expect([...unmended]).toEqual(['facet']);
});

function excess({ value, limit }: Finding): number {
  return Math.abs((value ?? 0) - (limit ?? 0));
}
