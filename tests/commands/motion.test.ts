import { readFile, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { forecastSchema } from '../../src/report/forecast-schema.js';
import { isValid } from '../support/published-schema.js';
import { runFurrow } from '../support/run-furrow.js';
import { sharedFolder } from '../support/shared-folder.js';
import { NARROW_LATHE, programWav } from '../support/side-files.js';

const NAME = 'side a.wav';
const MOTION = join('kept', 'side a.motion');

describe('a saved motion', () => {
  const folder = sharedFolder();
  const forecast = async (...args: string[]) =>
    await runFurrow(['forecast', '--quiet', ...args], { cwd: await folder() });

  beforeAll(async () => {
    await writeFile(join(await folder(), NAME), programWav(12, 4));
    await writeFile(join(await folder(), NARROW_LATHE[0]), NARROW_LATHE[1]);
    expect((await forecast(NAME, '--brief', '--save-motion', 'kept')).exitCode).toBe(0);
  });

  test.each([
    [[]],
    [['--level', '-3', '--quarters']],
    [['--disc', '10', '--pitch', '220lpi', '--width', '2.5mil', '--planner', 'machine']],
  ])(
    'gives the JSON of its WAV with %j, but for the path and what only sound tells',
    async (flags) => {
      const heard: unknown = JSON.parse((await forecast(NAME, '--json', ...flags)).stdout);
      const read: unknown = JSON.parse((await forecast(MOTION, '--json', ...flags)).stdout);
      expect(await isValid('forecast', read)).toBe(true);
      const { sides } = forecastSchema.parse(heard);
      expect(sides[0]?.hotSpots.length).toBeGreaterThan(0);
      expect(sides[0]?.readFrom).toBe('audio');
      const expected = sides.map((side) => ({
        ...side,
        sources: side.sources.map((source) => ({ ...source, path: 'kept/side a.motion' })),
        readFrom: 'motion',
        hotSpots: side.hotSpots.map((spot) => ({
          ...spot,
          survives: spot.survives === null ? null : { ...spot.survives, speedPercent: null },
        })),
      }));
      expect(forecastSchema.parse(read).sides).toEqual(expected);
    },
  );

  test('in text says what speed error was not looked at', async () => {
    const { stdout } = await forecast(MOTION);
    expect(stdout.split('\n')[0]).toMatch(/^side a\.wav: dial in/);
    expect(stdout).toContain('Read from saved motion: what speed error they hold to was not');
  });

  test('beside its WAV in a folder is not told twice', async () => {
    await writeFile(
      join(await folder(), 'side a.motion'),
      await readFile(join(await folder(), MOTION)),
    );
    const { sides } = forecastSchema.parse(JSON.parse((await forecast('.', '--json')).stdout));
    const paths = sides.map(({ sources }) => sources[0]?.path);
    expect(paths).toEqual(['kept/side a.motion', 'side a.wav']);
  });

  test.each([
    ['another speed', ['--rpm', '45'], /saved with rpm\s+33\.33333, expected\s+45/],
    ['another filter', ['--elliptical', '150'], /saved with ellipticalHz/],
  ])('asks for the WAV again with %s', async (_, flags, expected) => {
    const { stderr, exitCode } = await forecast(MOTION, ...flags);
    expect(stderr).toMatch(expected);
    expect(exitCode).toBe(3);
  });

  test.each([
    ['cut short', (bytes: Buffer) => bytes.subarray(0, bytes.length - 100), 'motion-damaged'],
    ['with a byte changed', (bytes: Buffer) => changed(bytes, bytes.length >> 1), 'motion-damaged'],
    ['of another version', (bytes: Buffer) => changed(bytes, 8), 'motion-version'],
    ['that is none', () => Buffer.from('notes'), 'not-motion'],
  ])('%s is refused', async (name, change, code) => {
    const path = `${name}.motion`;
    await writeFile(
      join(await folder(), path),
      change(await readFile(join(await folder(), MOTION))),
    );
    const { stdout, stderr, exitCode } = await forecast(path, '--json');
    expect(forecastSchema.parse(JSON.parse(stdout)).failures).toMatchObject([{ path, code }]);
    expect(stderr).toContain(`furrow: ${path}: `);
    expect(exitCode).toBe(3);
  });

  test('carries no sound: it is smaller than a fiftieth of it', async () => {
    const size = async (path: string) => (await stat(join(await folder(), path))).size;
    expect(await size(MOTION)).toBeLessThan((await size(NAME)) / 50);
  });
});

function changed(bytes: Buffer, at: number): Buffer {
  const copy = Buffer.from(bytes);
  copy[at] = (copy[at] ?? 0) ^ 0xff;
  return copy;
}
