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

test('what does not hold is said with file, finding, place, reason and why', () => {
  const notes = acceptanceNotes({
    file: forecastedFile({ name: 'x.wav' }),
    voided: [
      { entry: ENTRY, why: 'audio-changed' },
      { entry: WHOLE, why: 'outgrown' },
    ],
    stale: [WHOLE],
  });
  expect(notes).toEqual([
    'x.wav: the acceptance of overcut from 02:14.3 to 02:16.0 (kisses\\u{1b}[2J) is void: ' +
      'the sound is not the one that was accepted',
    'x.wav: the acceptance of overcut (known) is void: ' +
      'the finding has grown beyond what was accepted',
    'x.wav: the acceptance of overcut (known) is for nothing: it is not found now',
  ]);
});

test('where the side is told, what is void is a sentence each, and nothing where none is', () => {
  expect(voidText([])).toBe('');
  expect(voidText([{ entry: WHOLE, why: 'audio-changed' }])).toBe(
    'Void: the acceptance of overcut (known), since the sound is not the one that was accepted.',
  );
});
