import { Buffer } from 'node:buffer';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { outputNames } from '../../src/report/output-names.js';

describe('the names of outputs', () => {
  test.each([
    ['are those of the files', ['in/side a.wav', 'in/side b.wav'], ['side a', 'side b']],
    ['keep points inside', ['v1.2 final.wav'], ['v1.2 final']],
    ['do without an extension', ['side'], ['side']],
    [
      'tell folders apart where files are called the same',
      ['a/1.wav', 'b/1.wav', 'b/2.wav'],
      ['a_1', 'b_1', '2'],
    ],
    [
      'go further out where one folder does not help',
      ['x/cd/1.wav', 'y/cd/1.wav'],
      ['x_cd_1', 'y_cd_1'],
    ],
    ['count where folders do not help', ['1.wav', '1.WAV', './1.Wav'], ['1', '1-2', '1-3']],
    ['do not count into a name that is there', ['1.wav', '1.WAV', '1-2.wav'], ['1', '1-3', '1-2']],
    [
      'differ by more than case',
      ['Side.wav', 'SIDE.wav', 'side.wav'],
      ['Side', 'SIDE-2', 'side-3'],
    ],
    [
      'differ by more than how letters are composed',
      ['\u00e9.wav', 'e\u0301.wav'],
      ['\u00e9', '\u00e9-2'],
    ],
    ['are not hidden and no option', ['.hidden.wav', '-rf.wav', '~.wav'], ['_hidden', '_rf', '_']],
    ['show no control character', ['a\u001b[2J\n\u202eb.wav'], ['a_[2J__b']],
    ['hold no separator of any system', ['a:b|c.wav', 'C:\\in\\d.wav'], ['a_b_c', 'd']],
    ['are no device', ['con.wav', 'NUL.a.wav', 'cone.wav'], ['con_', 'NUL_.a', 'cone']],
    ['end in no point and no space', ['a ..wav'], ['a']],
    ['are something where nothing is left', ['/', '..', '.wav'], ['_', '_-2', '_wav']],
  ])('%s', (_, paths, names) => {
    expect(outputNames(paths)).toEqual(names);
  });

  const segment = fc.oneof(
    fc.constantFrom('a', 'A', 'a-2', 'a_a', '.', '..', '.a', '-', '', 'x'.repeat(300)),
    fc.string({ unit: 'binary', maxLength: 5 }),
    fc.constantFrom('漢'.repeat(90), '\ud83d\ude00'.repeat(80), '\ud800', '\u202e', '\u2028'),
  );
  const paths = fc
    .array(fc.tuple(fc.array(segment, { maxLength: 3 }), fc.constantFrom('.wav', '.WAV', '')), {
      maxLength: 12,
    })
    .map((files) => files.map(([segments, extension]) => segments.join('/') + extension));

  test('keep their extension where nothing else tells them apart', () => {
    const names = outputNames(['x/one.wav', 'x/one.flac', 'x/two.wav', 'y/two.aiff']);
    expect(names).toEqual(['one.wav', 'one.flac', 'x_two', 'y_two']);
  });

  test('are as many as there are paths, and no two are the same on any file system', () => {
    fc.assert(
      fc.property(paths, (all) => {
        const names = outputNames(all);
        expect(names).toHaveLength(all.length);
        const keys = names.map((name) => name.normalize('NFD').toLowerCase());
        expect(new Set(keys).size).toBe(all.length);
      }),
    );
  });

  test('are safe and at most 200 bytes, whatever the paths', () => {
    fc.assert(
      fc.property(paths, (all) => {
        for (const name of outputNames(all)) {
          expect(Buffer.byteLength(name)).toBeLessThanOrEqual(200);
          expect(name).toMatch(/^[^.\-~\s]/u);
          expect(name).toMatch(/[^.\s]$/u);
          expect(name).not.toMatch(/[\p{Cc}\p{Bidi_Control}\p{Cs}\u2028\u2029/\\]/u);
        }
      }),
    );
  });

  test('of a thousand files of one name take no time', () => {
    const all = Array.from({ length: 1000 }, () => 'a/b/c/side.wav');
    expect(new Set(outputNames(all)).size).toBe(1000);
  });
});
