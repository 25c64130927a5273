import fc from 'fast-check';
import { expect, test } from 'vitest';
import { reportPlaces } from '../../../src/intake/watch/report-places.js';
import { keyOf } from '../../../src/report/output-names.js';

const name = fc
  .string({
    unit: fc.constantFrom(
      'a',
      'A',
      'ä',
      'a\u0308',
      ' ',
      '.',
      '-',
      '_',
      '~',
      ':',
      '\n',
      '\u202e',
      '1',
    ),
    minLength: 1,
    maxLength: 8,
  })
  .filter((text) => text !== '.' && text !== '..');
const path = fc
  .tuple(fc.array(name, { maxLength: 2 }), name, fc.constantFrom('.wav', '.WAV', '.flac'))
  .map(([folders, file, extension]) => [...folders, `${file}${extension}`].join('/'));

test.each([
  ['a plain name', 'side.wav', 'side.wav.furrow.json'],
  ['a name in folders', 'lp 1/side a.flac', 'lp 1/side a.flac.furrow.json'],
])('%s has its report under its own whole name', (_, of, place) => {
  expect(reportPlaces().claim(of)).toBe(place);
});

test.each([
  ['a line break', 'a\nb.wav', /^a_b\.wav-[0-9a-f]{12}\.furrow\.json$/],
  ['a hyphen in front', '-rf.wav', /^_rf\.wav-[0-9a-f]{12}\.furrow\.json$/],
  [
    'a folder that would stand in a report’s way',
    'a.wav.furrow.json/b.wav',
    /^a\.wav\.furrow\.json-[0-9a-f]{12}\/b\.wav\.furrow\.json$/,
  ],
  ['255 bytes', `${'x'.repeat(251)}.wav`, /^x{200}-[0-9a-f]{12}\.furrow\.json$/],
])('a name with %s is cleaned, and told by a hash', (_, of, place) => {
  expect(reportPlaces().claim(of)).toMatch(place);
});

test('no two files have one place, also where case and composed letters make no difference', () => {
  fc.assert(
    fc.property(fc.uniqueArray(path, { maxLength: 40 }), (paths) => {
      const places = reportPlaces();
      const claimed = paths.map((of) => places.claim(of));
      expect(new Set(claimed.map(keyOf)).size).toBe(paths.length);
      for (const place of claimed) {
        for (const part of place.split('/')) expect(part).toMatch(/^[^.\-~\s\p{Cc}][^\p{Cc}:]*$/u);
      }
      // Asked again it is the same, and so is it for whoever begins with the places granted.
      const later = reportPlaces();
      for (const [at, place] of claimed.entries()) later.grant(place, paths[at] ?? '');
      for (const [at, of] of paths.entries()) {
        expect(places.claim(of)).toBe(claimed[at]);
      }
      const fresh = later.claim('another name.wav');
      expect(claimed.map(keyOf)).not.toContain(keyOf(fresh));
    }),
    { numRuns: 200 },
  );
});
