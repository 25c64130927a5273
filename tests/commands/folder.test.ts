import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { forecastSchema } from '../../src/report/forecast-schema.js';
import { filledFolder } from '../support/filled-folder.js';
import { HOSTILE_WAVS } from '../support/hostile-wavs.js';
import { isValid } from '../support/published-schema.js';
import { runFurrow } from '../support/run-furrow.js';
import {
  mixedSides,
  monoWav,
  NARROW_LATHE,
  programWav,
  type SideFile,
} from '../support/side-files.js';

const forecast = (cwd: string, ...args: string[]) =>
  runFurrow(['forecast', '--quiet', ...args], { cwd, env: { NO_COLOR: '1', LC_ALL: 'C.UTF-8' } });

/** The first words of a text's lines, as far as they are names of the mixed folder. */
function namesIn(text: string): string[] {
  return text.split('\n').flatMap((line) => /^[ >] ((?:\d+ )[a-z ]+\.wav)/.exec(line)?.[1] ?? []);
}

const NAMES = mixedSides().map(([name]) => name);

describe('a folder of good, loud, silent, mono, broken and foreign files', () => {
  test('is a line a file in natural order; the bad one has its line and stops nothing', async () => {
    const folder = await filledFolder(mixedSides());
    const { stdout, stderr, exitCode } = await forecast(folder, '.', '--brief');
    expect(namesIn(stdout)).toEqual(NAMES);
    expect(stdout).toMatch(/^ {2}6 no sound\.wav +could not be read: not-wav$/m);
    expect(stdout).toMatch(/^. 3 silent\.wav .* fault +silent/m);
    expect(stdout).toMatch(/^. 5 cut short\.wav .* caution +truncated/m);
    expect(stdout).toMatch(/^6 sides: .*; 1 could not be read\.$/m);
    expect(stderr).toMatch(
      /^furrow: 6 no sound\.wav: byte 0: found "cutt", expected "RIFF".*; export it as .*\n$/,
    );
    expect(exitCode).toBe(3);
  });

  test('has details after the table of those that need them only; --details of all', async () => {
    const folder = await filledFolder(mixedSides());
    const detailed = ({ stdout }: { stdout: string }) =>
      stdout
        .split('\n')
        .flatMap(
          (line) => /^([^>].*\.wav)(?: \(assuming.*)?: (?:nothing to )?dial/.exec(line)?.[1] ?? [],
        );
    const [some, all] = [await forecast(folder, '.'), await forecast(folder, '.', '--details')];
    expect(some.stdout.indexOf('dial in')).toBeGreaterThan(some.stdout.indexOf('10 last.wav'));
    expect(detailed(some)).toContain('3 silent.wav');
    expect(detailed(some)).not.toContain('10 last.wav');
    expect(detailed(all)).toEqual(NAMES.filter((name) => name !== '6 no sound.wav'));
    expect((await forecast(folder, '.', '--brief')).stdout).not.toContain('dial in');
  });

  test('as JSON and as NDJSON keeps to the published schemas (ajv), sides in input order', async () => {
    const folder = await filledFolder([...mixedSides(), NARROW_LATHE]);
    const flags = ['--common-level', '--quarters'];
    const document: unknown = JSON.parse((await forecast(folder, '.', '--json', ...flags)).stdout);
    expect(await isValid('forecast', document)).toBe(true);
    const { sides, failures, commonLevel } = forecastSchema.parse(document);
    expect(sides.map(({ name }) => name)).toEqual(NAMES.filter((name) => !name.startsWith('6')));
    expect(failures).toMatchObject([{ path: '6 no sound.wav', code: 'not-wav' }]);
    expect(commonLevel?.setBy).toMatchObject([{ path: '2 loud.wav' }]);

    const lines = (await forecast(folder, '.', '--ndjson', ...flags)).stdout.trimEnd().split('\n');
    for (const line of lines) expect(await isValid('ndjson', JSON.parse(line))).toBe(true);
    const types = lines.map((line) => /"type":"(\w+)"/.exec(line)?.[1]);
    expect(types).toEqual([
      ...NAMES.map((name) => (name.startsWith('6') ? 'failure' : 'side')),
      'summary',
    ]);
  });

  test('has one common level at which every side with sound fits, set by the loudest', async () => {
    const folder = await filledFolder([...mixedSides(), NARROW_LATHE]);
    const { stdout } = await forecast(folder, '.', '--brief', '--common-level');
    const level = /^Common level: (\S+) dB, set by 2 loud\.wav/m.exec(stdout)?.[1];
    const { sides } = forecastSchema.parse(
      JSON.parse((await forecast(folder, '.', '--json', '--level', `${Number(level)}`)).stdout),
    );
    const ids = sides
      .filter(({ name }) => name !== '3 silent.wav')
      .flatMap(({ findings }) => findings.filter(({ severity }) => severity === 'fault'));
    expect(ids).toEqual([]);
    const higher = await forecast(
      folder,
      '2 loud.wav',
      '--level',
      `${Number(level) + 0.5}`,
      '--json',
    );
    expect(forecastSchema.parse(JSON.parse(higher.stdout)).sides[0]?.verdict).toBe('fault');
  });
});

test('a folder of files that lie is told file by file, none crashes, none is forgotten', async () => {
  const hostile: SideFile[] = HOSTILE_WAVS.map(({ name, bytes }) => [`${name}.wav`, bytes]);
  const folder = await filledFolder([...hostile, ...mixedSides()]);
  const { stdout, stderr, exitCode } = await forecast(folder, '.', '--json');
  const { sides, failures } = forecastSchema.parse(JSON.parse(stdout));
  expect(exitCode).toBe(3);
  const codes = new Map(failures.map(({ path, code }) => [path, code]));
  for (const { name, expected } of HOSTILE_WAVS) {
    const code = typeof expected === 'string' ? expected : undefined;
    expect(codes.get(`${name}.wav`), name).toBe(code);
  }
  expect(sides.length + failures.length).toBe(hostile.length + NAMES.length);
  expect(stderr.trimEnd().split('\n')).toHaveLength(failures.length);
});

test('folders within folders are looked through, and a pattern picks among them', async () => {
  const sides = mixedSides()
    .slice(0, 1)
    .flatMap(([, bytes]): SideFile[] => [
      ['a/one.wav', bytes],
      ['a/deep/two.WAV', bytes],
      ['b/one.wav', bytes],
    ]);
  const folder = await filledFolder(sides);
  const namesOf = async (path: string) => {
    const { stdout } = await forecast(folder, path, '--json');
    return forecastSchema.parse(JSON.parse(stdout)).sides.map(({ sources }) => sources[0]?.path);
  };
  expect(await namesOf('.')).toEqual(['a/deep/two.WAV', 'a/one.wav', 'b/one.wav']);
  expect(await namesOf(join('*', 'one.wav'))).toEqual(['a/one.wav', 'b/one.wav']);
  const { stdout } = await forecast(folder, '.', '--brief');
  expect(stdout).toContain('  a/one.wav');
  expect(stdout).toContain('  b/one.wav');
});

test('formats that differ in a folder are told once on stderr, after the files', async () => {
  const folder = await filledFolder([
    ['in/1.wav', programWav(2)],
    ['in/2.wav', monoWav(2)],
    ['in/3.wav', programWav(2)],
  ]);
  const env = { NO_COLOR: '1', LC_ALL: 'C.UTF-8' };
  const run = (...paths: string[]) => runFurrow(['forecast', ...paths], { cwd: folder, env });
  const { stderr } = await run('in');
  expect(stderr.trimEnd().split('\n').at(-1)).toBe(
    'furrow: formats differ in the folder in: stereo (2), mono (2.wav)',
  );
  expect((await run('in/1.wav', 'in/3.wav')).stderr).not.toContain('formats differ');
});
