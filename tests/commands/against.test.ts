import { join } from 'node:path';
import { expect, test } from 'vitest';
import { forecastSchema } from '../../src/report/forecast-schema.js';
import { filledFolder } from '../support/filled-folder.js';
import { isValid } from '../support/published-schema.js';
import { runFurrow } from '../support/run-furrow.js';
import { NARROW_LATHE, programWav } from '../support/side-files.js';

const FILES = [
  ['old.wav', programWav(8, 4)],
  ['new.wav', programWav(8, -6)],
  NARROW_LATHE,
] as const;

const forecast = (cwd: string, ...args: string[]) =>
  runFurrow(['forecast', '--quiet', ...args], { cwd });

test('a quieter revision: the verdict, the faults that are gone, and no place told twice', async () => {
  const cwd = await filledFolder(FILES);
  const { stdout, exitCode } = await forecast(cwd, 'new.wav', '--against', 'old.wav');
  const text = stdout.replaceAll(/\s+/g, ' ');
  expect(text).toMatch(
    /Against old\.wav: (?:verdict \w+, was fault; )?loudness -\d+\.\d LUFS, was/,
  );
  // Findings tell of all the land that is gained.
  expect(text).not.toContain('land gained');
  expect(stdout).toMatch(/^ {4}(gone|better) (fault|caution): 00:0/m);
  expect(stdout).not.toMatch(/^ {4}(new|worse) /m);
  expect(exitCode).toBe(0);
  // The other way round the findings are new or worse.
  const back = await forecast(cwd, 'old.wav', '--against', 'new.wav', '--details');
  expect(back.stdout).toMatch(/^ {4}(new|worse) (fault|caution): 00:0/m);
});

test('the saved motion of the old file says the same as the file', async () => {
  const cwd = await filledFolder(FILES);
  await forecast(cwd, 'old.wav', '--brief', '--save-motion', 'kept');
  const [wav, motion] = [
    await forecast(cwd, 'new.wav', '--json', '--against', 'old.wav'),
    await forecast(cwd, 'new.wav', '--json', '--against', join('kept', 'old.motion')),
  ];
  expect(motion.stdout).toBe(wav.stdout);
  const document: unknown = JSON.parse(wav.stdout);
  expect(await isValid('forecast', document)).toBe(true);
  const [side] = forecastSchema.parse(document).sides;
  expect(side?.against?.name).toBe('old.wav');
  expect(side?.against?.findings.length).toBeGreaterThan(0);
  expect(side?.against?.land).toMatchObject([{ change: 'gained' }]);
});

test('the same sound again has no change that matters', async () => {
  const cwd = await filledFolder([['a.wav', FILES[0][1]], ['b.wav', FILES[0][1]], NARROW_LATHE]);
  const { stdout } = await forecast(cwd, 'a.wav', '--against', 'b.wav');
  expect(stdout).toContain('Against b.wav: nothing that matters has changed.');
});

test('an older file that cannot be read is told, is 3, and the new one is done', async () => {
  const cwd = await filledFolder([...FILES, ['bad.wav', 'notes']]);
  const { stdout, stderr, exitCode } = await forecast(cwd, 'new.wav', '--against', 'bad.wav');
  expect(stderr).toMatch(/^furrow: bad\.wav: byte 0: found "note"/);
  expect(stdout).toMatch(/^new\.wav: dial in/m);
  expect(stdout).not.toContain('Against');
  expect(exitCode).toBe(3);
});

test.each([
  [['.', '--against', 'old.wav'], /--against: found 2 files to compare, expected one/],
  [['new.wav', '--against', './new.wav'], /--against: \.\/new\.wav is the file itself/],
])('%j is wrong usage', async (args, expected) => {
  const cwd = await filledFolder(FILES);
  const { stdout, stderr, exitCode } = await forecast(cwd, ...args);
  expect(stderr).toMatch(expected);
  expect({ stdout, exitCode }).toEqual({ stdout: '', exitCode: 2 });
});
