import { describe, expect, test } from 'vitest';
import { UsageError } from '../../src/errors.js';
import { parseSheet } from '../../src/sheet/read-sheet.js';

const sheetOf = (side: object, rest: object = {}) =>
  JSON.stringify({
    format: 'furrow.sheet/1',
    sides: [{ name: 'A', tracks: [{ file: 'one.wav' }], ...side }],
    ...rest,
  });

const track = (fields: object) =>
  sheetOf({ tracks: [{ file: 'a.wav' }, { file: 'b.wav', ...fields }] });

function refusal(text: string): string {
  try {
    parseSheet('album.json', text);
  } catch (error) {
    if (error instanceof UsageError) return error.message;
    throw error;
  }
  return 'nothing';
}

test('a sheet may have comments, a byte order mark and a comma at the end', () => {
  const text = `\ufeff// an invented album
  { "format": "furrow.sheet/1", /* one side */ "sides": [
    { "name": "A", "rpm": 45, "levelDb": -2, "tracks": [ { "file": "one.wav", }, ], },
  ] }`;
  const { sheet, path } = parseSheet('album.json', text);
  expect(path).toBe('album.json');
  expect(sheet.sides).toMatchObject([{ name: 'A', rpm: 45, tracks: [{ file: 'one.wav' }] }]);
});

describe('refused with line, place, what was found and expected is', () => {
  test.each([
    [
      'another format',
      '{"format":"furrow.sheet/2","sides":[]}',
      'format: found "furrow.sheet/2", expected one of "furrow.sheet/1"',
    ],
    [
      'no side',
      '{"format":"furrow.sheet/1","sides":[]}',
      'sides: found [], expected a list of sides',
    ],
    ['no track', sheetOf({ tracks: [] }), 'sides[0].tracks: found [], expected a list of tracks'],
    [
      'no file',
      sheetOf({ tracks: [{}] }),
      'sides[0].tracks[0].file: found nothing, expected the path of a WAV',
    ],
    [
      'a bare pitch',
      track({ basePitch: [{ fromSeconds: 1, pitch: 250 }] }),
      'sides[0].tracks[1].basePitch[0].pitch: found 250, expected a pitch with its unit',
    ],
    [
      'a negative gap',
      track({ gapSeconds: -1 }),
      'sides[0].tracks[1].gapSeconds: found -1, expected a number from 0 to 600',
    ],
    [
      'a marker that is a number',
      track({ marker: 2 }),
      'sides[0].tracks[1].marker: found 2, expected true, false, or such as',
    ],
    [
      'two beginnings',
      track({ fromSeconds: 1, fromSample: 44100 }),
      'sides[0].tracks[1].fromSample: found fromSeconds beside it',
    ],
    [
      'two ends',
      track({ untilSeconds: 1, untilSample: 44100 }),
      'sides[0].tracks[1].untilSample: found untilSeconds beside it',
    ],
    [
      'times that do not rise',
      track({
        baseWidth: [
          { fromSeconds: 2, width: '2mil' },
          { fromSeconds: 2, width: '3mil' },
        ],
      }),
      'sides[0].tracks[1].baseWidth: found times that do not rise',
    ],
    [
      'a marker before the first',
      sheetOf({ tracks: [{ file: 'a.wav', marker: true }] }),
      'sides[0].tracks[0].marker: found one before the first track',
    ],
    [
      'a field of the lathe',
      sheetOf({ pitchMax: '400um' }),
      'sides[0].pitchMax: found an unknown field; see `furrow schema sheet`',
    ],
    [
      'a name twice',
      sheetOf(
        {},
        {
          sides: [
            { name: 'A', tracks: [{ file: 'a' }] },
            { name: 'A', tracks: [{ file: 'b' }] },
          ],
        },
      ),
      'sides[1].name: found "A" again, expected a name of its own',
    ],
  ])('%s', (_, text, expected) => {
    expect(refusal(text)).toContain(`album.json:1: ${expected}`);
  });

  test.each([
    [track({ gapSecond: 1 }), 'gapSecond', 'gapSeconds'],
    [track({ trim: 1 }), 'trim', 'trimDb'],
    [track({ Pinned: true }), 'Pinned', 'pinned'],
    [sheetOf({ level: 1 }), 'level', 'levelDb'],
    [sheetOf({ track: [] }), 'track', 'tracks'],
    [sheetOf({}, { side: [] }), 'side', 'sides'],
  ])('an unknown field, with the nearest, %#', (text, found, near) => {
    expect(refusal(text)).toContain(
      `.${found}: found an unknown field; the nearest is "${near}"`.replace(/^\.side:/, 'side:'),
    );
  });

  test('a field of a track in a side, with where it belongs', () => {
    const told = refusal(sheetOf({ gapSeconds: 2 }));
    expect(told).toContain('the nearest is "gapSeconds" inside of "sides.tracks"');
  });

  test('everything at once, a line each', () => {
    const lines = refusal(track({ gapSeconds: 'two', trimDb: 99, fadeIn: 1 })).split('\n');
    expect(lines).toHaveLength(3);
  });

  test('what is no JSON, as a side sheet', () => {
    expect(refusal('{ "format": furrow }')).toContain('album.json:1: found "furrow"');
    expect(refusal('')).toContain('album.json: is empty');
  });
});
