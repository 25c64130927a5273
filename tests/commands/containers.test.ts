import { mkdir, readdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { forecastSchema } from '../../src/report/forecast-schema.js';
import { aiffBytes } from '../support/aiff-writer.js';
import { flacBytes } from '../support/flac-writer.js';
import { runInProcess } from '../support/run-in-process.js';
import { temporaryFolder } from '../support/temporary-folder.js';
import { wavBytes, wordBytes } from '../support/wav-writer.js';

/** Two seconds of an invented tone; a little in one channel only. */
const WORDS = Array.from({ length: 2 * 2 * 44_100 }, (_, word) => {
  const time = Math.floor(word / 2) / 44_100;
  return Math.round((word % 2 === 0 ? 9000 : 8000) * Math.sin(2 * Math.PI * 180 * time));
});
const FLAC = flacBytes({ words: WORDS });
const AIFF = aiffBytes({ sound: wordBytes(WORDS, 'pcm', 16), compression: 'sowt' });

/** A folder of sides, and what `forecast --json` says of them. */
async function forecast(files: Readonly<Record<string, Uint8Array>>, ...flags: string[]) {
  const folder = await temporaryFolder();
  await mkdir(join(folder, 'sides'));
  for (const [name, bytes] of Object.entries(files)) {
    await writeFile(join(folder, 'sides', name), bytes);
  }
  const given = flags.map((flag) => flag.replace('$', folder));
  const args = ['forecast', '--no-discovery', '--json', join(folder, 'sides'), ...given];
  const ran = await runInProcess(args);
  return { ...ran, folder, document: forecastSchema.parse(JSON.parse(ran.stdout)) };
}

describe('furrow forecast of a folder', () => {
  test('takes each file for what its bytes are, and two of one name for two sides', async () => {
    const { document, exitCode } = await forecast({
      'a.flac': FLAC,
      'a.wav': wavBytes({ words: WORDS }),
      'b.aif': AIFF,
      'c.wav': FLAC,
    });
    expect(exitCode).toBe(0);
    expect(document.sides.map(({ name, sources }) => [name, sources[0]?.container])).toEqual([
      ['a.flac', 'FLAC'],
      ['a.wav', 'RIFF'],
      ['b.aif', 'AIFF-C'],
      ['c.wav', 'FLAC'],
    ]);
    const [first, ...others] = document.sides.map((side) => ({ ...side, name: '', sources: [] }));
    for (const other of others) expect(other).toEqual(first);
  });

  test('tells of each that cannot be read by a code, and exits 3', async () => {
    const damaged = Uint8Array.from(FLAC);
    damaged[20_000] = (damaged[20_000] ?? 0) ^ 1;
    const { document, exitCode } = await forecast({
      '1.flac': damaged,
      '2.flac': FLAC.subarray(0, 30),
      '3.aiff': aiffBytes({ sound: new Uint8Array(400), channels: 6 }),
      '4.aiff': Uint8Array.from('FORM\0\0\0\x048SVX', (letter) => letter.charCodeAt(0)),
      '5.flac': Uint8Array.from('OggS\0\0', (letter) => letter.charCodeAt(0)),
      '6.flac': FLAC,
    });
    expect(exitCode).toBe(3);
    expect(document.sides).toHaveLength(1);
    expect(document.failures.map(({ code }) => code)).toEqual([
      'sound-damaged',
      'no-format',
      'bad-channels',
      'not-aiff',
      'not-wav',
    ]);
  });

  test('finds a FLAC file that breaks off to be truncated', async () => {
    const { document } = await forecast({ 'a.flac': FLAC.subarray(0, FLAC.length - 100) });
    const [side] = document.sides;
    expect(side?.findings.map(({ id }) => id)).toContain('truncated');
    expect(side?.sources[0]?.frames).toBe(2 * 44_100 - ((2 * 44_100) % 4096));
  });

  test('writes marks into copies of WAV files only, and says so', async () => {
    const files = { 'a.flac': FLAC, 'b.wav': wavBytes({ words: WORDS }) };
    const { stderr, exitCode, folder } = await forecast(files, '--cue', '$/marked');
    expect(exitCode).toBe(0);
    expect(stderr).toContain(
      'a.flac: marks are written into copies of WAV files, and this is FLAC; --cue left out',
    );
    expect(await readdir(join(folder, 'marked'))).toEqual(['b.wav']);
  });

  test('saves the motion of a FLAC file, which gives the same side', async () => {
    const { document, folder } = await forecast({ 'a.flac': FLAC }, '--save-motion', '$/kept');
    const args = ['forecast', '--no-discovery', '--json', join(folder, 'kept/a.motion')];
    const read = forecastSchema.parse(JSON.parse((await runInProcess(args)).stdout));
    expect(read.sides[0]?.sources[0]).toMatchObject({ container: 'FLAC', frames: 88_200 });
    expect(read.sides[0]?.plan).toEqual(document.sides[0]?.plan);
  });
});

test('furrow side takes tracks of any container, changed on the way or not', async () => {
  const folder = await temporaryFolder();
  const all = { wav: wavBytes({ words: WORDS }), aiff: AIFF, flac: FLAC };
  for (const [extension, bytes] of Object.entries(all)) {
    await writeFile(join(folder, `a.${extension}`), bytes);
  }
  const sidesOf = async (one: string, other: string) => {
    const tracks = [{ file: `a.${one}` }, { file: `a.${other}`, gapSeconds: 1 }];
    const changed = [{ ...tracks[0], trimDb: -3, fadeOutSeconds: 0.5 }, tracks[1]];
    const sides = [
      { name: 'A', tracks },
      { name: 'B', tracks: changed },
    ];
    const sheet = join(folder, 'sheet.json');
    await writeFile(sheet, JSON.stringify({ format: 'furrow.sheet/1', sides }));
    const { stdout, exitCode } = await runInProcess(['side', '--no-discovery', '--json', sheet]);
    expect(exitCode).toBe(0);
    return forecastSchema.parse(JSON.parse(stdout)).sides;
  };
  const without = (sides: Awaited<ReturnType<typeof sidesOf>>) =>
    sides.map((side) => ({ ...side, sources: [] }));
  const others = await sidesOf('aiff', 'flac');
  expect(others[0]?.sources.map(({ container }) => container)).toEqual(['AIFF-C', 'FLAC']);
  const tracks = (text: string) => text.replaceAll(/a\.(wav|aiff|flac)/g, 'a');
  const plain = tracks(JSON.stringify(without(await sidesOf('wav', 'wav'))));
  expect(tracks(JSON.stringify(without(others)))).toBe(plain);
});
