import { expect, test } from 'vitest';
import type { AcceptedEntry } from '../../src/accepted/accepted-schema.js';
import { acceptanceNotes, voidText } from '../../src/report/acceptance-text.js';
import { forecastedFile } from '../support/forecast-fixture.js';

const ENTRY: AcceptedEntry = {
  id: 'overcut',
  side: 'x.wav',
  fromSeconds: 134.3,
  untilSeconds: 136,
  reason: 'kisses\u001b[2J',
  audioSha256: 'a'.repeat(64),
};
const WHOLE = { ...ENTRY, fromSeconds: null, untilSeconds: null, reason: 'known' };

test('what does not hold is a line a reason, with file, findings and why', () => {
  const notes = acceptanceNotes({
    file: forecastedFile({ name: 'x.wav' }),
    voided: [
      { entry: ENTRY, why: 'audio-changed' },
      { entry: WHOLE, why: 'outgrown' },
    ],
    stale: [WHOLE],
  });
  expect(notes).toEqual([
    'x.wav: 1 acceptance is void (overcut): the sound is not the one that was accepted',
    'x.wav: 1 acceptance is void (overcut): the finding has grown beyond what was accepted',
    'x.wav: accepted, but not found now: overcut (known)',
  ]);
});

test('what is void is told once, where the side is: of many the other stream has the number', () => {
  const why = 'audio-changed' as const;
  const lift = { ...WHOLE, id: 'lift' } as const;
  const again = { ...ENTRY, fromSeconds: 200, untilSeconds: 200.01 };
  const voided = [ENTRY, WHOLE, lift, again].map((entry) => ({ entry, why }));
  expect(acceptanceNotes({ file: forecastedFile({ name: 'x.wav' }), voided, stale: [] })).toEqual([
    'x.wav: 4 acceptances are void (overcut, lift): the sound is not the one that was accepted',
  ]);
  expect(voidText(voided)).toBe(
    'Void acceptances, since the sound is not the one that was accepted: overcut at ' +
      '02:14.3–02:16.0, 03:20.0 (kisses\\u{1b}[2J); overcut (known); lift (known).',
  );
});

test('where none is void nothing is said', () => {
  expect(voidText([])).toBe('');
});
