import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { entriesFor, readAccepted } from '../../src/accepted/read-accepted.js';
import { UsageError } from '../../src/errors.js';
import { temporaryFolder } from '../support/temporary-folder.js';

const ENTRY = {
  id: 'overcut',
  side: 'a.wav',
  fromSeconds: 10,
  untilSeconds: 12.5,
  reason: 'kisses',
  audioSha256: 'a'.repeat(64),
};

async function reading(text: string) {
  const folder = await temporaryFolder();
  await writeFile(join(folder, 'furrow.accepted.json'), text);
  return await readAccepted(folder, 'sides');
}

const readingOf = (entry: object) =>
  reading(JSON.stringify({ format: 'furrow.accepted/1', accepted: [ENTRY, entry] }));

test('a folder without the file has no accepted findings', async () => {
  expect(await readAccepted(await temporaryFolder())).toBeNull();
});

test('comments, a byte order mark and a comma behind the last entry are allowed', async () => {
  const entry = JSON.stringify(ENTRY);
  const text = `\ufeff{ // ours\n"format": "furrow.accepted/1", /* all */ "accepted": [${entry},] }`;
  const accepted = await reading(text);
  expect(accepted?.entries).toEqual([ENTRY]);
  expect(accepted?.path).toBe(join('sides', 'furrow.accepted.json'));
});

test('an entry is of the file that it names, and of no other', async () => {
  const accepted = await readingOf({ ...ENTRY, side: 'b.wav' });
  expect(entriesFor(accepted, 'b.wav')).toMatchObject([{ side: 'b.wav' }]);
  expect(entriesFor(accepted, 'B.wav')).toEqual([]);
  expect(entriesFor(null, 'a.wav')).toEqual([]);
});

describe('what is wrong is said with path and place', () => {
  test.each([
    ['an id', { id: 'overcutt' }, /accepted\[1\]\.id: found "overcutt", expected the id/],
    ['an empty reason', { reason: ' ' }, /accepted\[1\]\.reason: found " ", expected a reason/],
    [
      'half a stretch',
      { untilSeconds: null },
      /accepted\[1\]\.untilSeconds: found null, expected n/,
    ],
    [
      'a stretch turned round',
      { untilSeconds: 9 },
      /accepted\[1\]\.untilSeconds: found 9, expected/,
    ],
    ['a short hash', { audioSha256: 'ab' }, /accepted\[1\]\.audioSha256: found "ab", expected 64/],
    [
      'a time as text',
      { fromSeconds: '1:00' },
      /accepted\[1\]\.fromSeconds: found "1:00", expected/,
    ],
    [
      'an unknown field',
      { reasn: '' },
      /accepted\[1\]\.reasn: .* unknown field; the nearest is "reason"/,
    ],
    [
      'a strange field',
      { zzzzzzzz: 1 },
      /accepted\[1\]\.zzzzzzzz: .*; see `furrow schema accepted`/,
    ],
  ])('%s', async (_, change, expected) => {
    const error: unknown = await readingOf({ ...ENTRY, ...change }).catch((thrown) => thrown);
    expect(error).toBeInstanceOf(UsageError);
    expect(String(error)).toMatch(expected);
    expect(String(error)).toContain(`${join('sides', 'furrow.accepted.json')}: accepted[1].`);
  });

  test.each([
    ['nothing', '', /furrow\.accepted\.json: is empty, expected \{/],
    ['no JSON', '{\n"format": }', /furrow\.accepted\.json:2: found "\}", expected value/],
    ['another format', '{"format": "furrow.accepted/2", "accepted": []}', /: format: found/],
    ['a list alone', '[]', /furrow\.accepted\.json: found \[\], /],
    ['too many brackets', '['.repeat(100_000), /nested too deeply/],
  ])('%s', async (_, text, expected) => {
    const error: unknown = await reading(text).catch((thrown) => thrown);
    expect(error).toBeInstanceOf(UsageError);
    expect(String(error)).toMatch(expected);
  });

  test('a folder of that name', async () => {
    const folder = await temporaryFolder();
    await mkdir(join(folder, 'furrow.accepted.json'));
    await expect(readAccepted(folder)).rejects.toThrow(
      /cannot be read as accepted findings: it is a folder/,
    );
  });
});
