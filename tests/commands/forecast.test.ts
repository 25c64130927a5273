import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { execa } from 'execa';
import { describe, expect, test } from 'vitest';
import { forecastSchema, lineSchema } from '../../src/report/forecast-schema.js';
import { runFurrow, SHELL_COMMAND, withFolder } from '../support/run-furrow.js';
import { wavBytes } from '../support/wav-writer.js';

/** Two seconds of a sine of 1 kHz, in phase, at half of full scale. */
const TONE = wavBytes({
  words: Array.from({ length: 2 * 2 * 44_100 }, (_, index) =>
    Math.round(16_384 * Math.sin((2 * Math.PI * 1000 * Math.floor(index / 2)) / 44_100)),
  ),
});

/** A folder with a good side, one that is none, and an empty folder. */
async function withSides<T>(use: (folder: string) => Promise<T>): Promise<T> {
  return await withFolder(async (folder) => {
    await writeFile(join(folder, 'good.wav'), TONE);
    await writeFile(join(folder, 'bad.wav'), 'no sound');
    await mkdir(join(folder, 'empty'));
    return await use(folder);
  });
}

const forecast = (cwd: string, ...args: string[]) => runFurrow(['forecast', ...args], { cwd });

describe('one file', () => {
  test('is told on stdout, the profile on stderr', async () => {
    await withSides(async (folder) => {
      const { stdout, stderr, exitCode } = await forecast(folder, 'good.wav');
      expect(stdout.split('\n')[0]).toMatch(
        /^good\.wav \(assuming the lathe's own automation\): dial/,
      );
      expect(Math.max(...stdout.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
      expect(stderr).toBe('furrow: no profile file: built-in defaults\n');
      expect(exitCode).toBe(0);
    });
  });

  test('as JSON keeps to the schema, with the flags in its settings and no absolute path', async () => {
    await withSides(async (folder) => {
      const flags = ['--rpm', '45', '--pitch', '250lpi', '--level', '-3', '--elliptical', '150'];
      const { stdout, exitCode } = await forecast(folder, 'good.wav', '--json', ...flags);
      const { sides, failures } = forecastSchema.parse(JSON.parse(stdout));
      expect(sides).toMatchObject([
        {
          levelDb: -3,
          settings: { rpm: 45, basePitch: '101.6um', ellipticalHz: 150 },
          sources: [{ path: 'good.wav', frames: 88_200, durationSeconds: 2 }],
          turns: 1.5,
          program: { samplePeakDbfs: -6.02 },
        },
      ]);
      expect(sides[0]).not.toHaveProperty('quarters');
      expect({ failures, exitCode }).toEqual({ failures: [], exitCode: 0 });
      expect(stdout).not.toContain(folder);
    });
  });

  // A channel of a full-scale in-phase sine moves at k = referenceVelocity/√2·10^(−referenceDbfs/20):
  // ü of half of that at 1 kHz has the mean square (2π·1000·k/2)²/2. Source: calculus of a sine.
  test('as JSON has the head load of a sine as its closed form, against headLimit', async () => {
    await withSides(async (folder) => {
      const level = '"referenceVelocity": "7cm/s", "referenceDbfs": -14';
      await writeFile(join(folder, 'limit.json'), `{${level}, "headLimit": 1e6}`);
      const flags = ['--json', '--profile', 'limit.json', '--level', '3'];
      const { stdout } = await forecast(folder, 'good.wav', ...flags);
      const { sides } = forecastSchema.parse(JSON.parse(stdout));
      const k = (0.07 / Math.SQRT2) * 10 ** (14 / 20);
      const meanSquare = (((2 * Math.PI * 1000 * k) / 2) ** 2 / 2) * 10 ** (3 / 10);
      // 0.02 dB of acceleration is 0.5 % of its square; the onset adds a little to ten seconds.
      const { left, right } = sides[0]?.headLoad ?? { left: null, right: null };
      expect(left?.oneSecondM2PerS4).toBeWithin(meanSquare, 0, 0.005);
      // Two seconds within 22 quarters of 0.45 s.
      expect(left?.tenSecondsM2PerS4).toBeWithin((meanSquare * 2) / 9.9, 0, 0.01);
      expect(left?.limitRatio).toBeWithin(meanSquare / 1e6, 0, 0.005);
      expect(right).toEqual(left);
    });
  });

  test('with --quarters has a row for each quarter that the program touches', async () => {
    await withSides(async (folder) => {
      const { stdout } = await forecast(folder, 'good.wav', '--json', '--quarters');
      const { sides } = forecastSchema.parse(JSON.parse(stdout));
      // Two seconds at 33⅓ are 1.11 turns: 4.44 quarters.
      expect(sides[0]?.quarters?.atSeconds).toEqual([0, 0.45, 0.9, 1.35, 1.8]);
    });
  });

  test('twice gives the same bytes', async () => {
    await withSides(async (folder) => {
      const args = ['good.wav', '--json', '--quarters'] as const;
      const [one, other] = [await forecast(folder, ...args), await forecast(folder, ...args)];
      expect(one.stdout).toBe(other.stdout);
    });
  });
});

describe('exit codes', () => {
  test.each([
    [['good.wav', 'bad.wav'], 3],
    [['missing.wav'], 3],
    [['empty'], 3],
    [['empty', '--allow-empty'], 0],
    [['good.wav', 'bad.wav', '--fail-on', 'note'], 3],
    [['good.wav', '--level', '18', '--fail-on', 'fault'], 1],
    [['good.wav', '--level', '18'], 0],
    [['.'], 3],
  ])('%j gives %s', async (args, exitCode) => {
    await withSides(async (folder) => {
      expect((await forecast(folder, ...args)).exitCode).toBe(exitCode);
    });
  });
});

test('a bad file is named on stderr and in the JSON, and the others are done', async () => {
  await withSides(async (folder) => {
    const { stdout, stderr } = await forecast(
      folder,
      'bad.wav',
      'good.wav',
      'empty',
      '--json',
      '--quiet',
    );
    const { sides, failures } = forecastSchema.parse(JSON.parse(stdout));
    expect(sides).toHaveLength(1);
    expect(failures).toMatchObject([
      { path: 'bad.wav', code: 'not-wav' },
      { path: 'empty', code: 'empty-folder' },
    ]);
    expect(stderr).toMatch(
      /^furrow: bad\.wav: .*\nfurrow: empty: no WAV, AIFF, FLAC or motion file is in this folder\n$/,
    );
  });
});

test('NDJSON comes in input order and ends with the summary', async () => {
  await withSides(async (folder) => {
    const { stdout } = await forecast(folder, 'good.wav', 'bad.wav', '--ndjson');
    const lines = stdout
      .trimEnd()
      .split('\n')
      .map((line) => lineSchema.parse(JSON.parse(line)));
    expect(lines.map(({ type }) => type)).toEqual(['side', 'failure', 'summary']);
    expect(lines[2]).toMatchObject({ sides: 1, failures: 1 });
  });
});

test('paths are read from a file and from stdin', async () => {
  await withSides(async (folder) => {
    await writeFile(join(folder, 'list.txt'), 'good.wav\r\n\n');
    const named = await forecast(folder, '--files-from', 'list.txt', '--json');
    const piped = await runFurrow(['forecast', '--files-from', '-', '--json'], {
      cwd: folder,
      input: 'good.wav\n',
    });
    expect(forecastSchema.parse(JSON.parse(named.stdout)).sides).toHaveLength(1);
    expect(piped.stdout).toBe(named.stdout);
    const none = await runFurrow(['forecast', '--files-from', '-'], { cwd: folder, input: '' });
    expect(none).toMatchObject({ exitCode: 3 });
  });
});

describe('the profile', () => {
  test('is found upwards and named, refused by --no-discovery, beaten by --profile', async () => {
    await withSides(async (folder) => {
      await writeFile(join(folder, 'furrow.profile.json'), '{"rpm": 45, "executes": "plan"}');
      await writeFile(join(folder, 'other.json'), '{"rpm": 33.29}');
      const below = { cwd: join(folder, 'empty') };
      const rpmOf = (stdout: string) =>
        forecastSchema.parse(JSON.parse(stdout)).sides[0]?.settings.rpm;

      const found = await runFurrow(['forecast', '../good.wav', '--json'], below);
      expect(found.stderr).toBe('furrow: profile ../furrow.profile.json\n');
      expect(rpmOf(found.stdout)).toBe(45);
      const refused = await forecast(folder, 'good.wav', '--json', '--no-discovery');
      expect(rpmOf(refused.stdout)).toBeWithin(33.333333333, 1e-9);
      const named = await forecast(folder, 'good.wav', '--json', '--profile', 'other.json');
      expect(named.stderr).toBe('furrow: profile other.json\n');
      expect(rpmOf(named.stdout)).toBe(33.29);
    });
  });

  test('with an unknown field is wrong usage, and the nearest field is named', async () => {
    await withSides(async (folder) => {
      await writeFile(join(folder, 'house.json'), '{\n  "landMim": "12um"\n}');
      const { stderr, exitCode } = await forecast(folder, 'good.wav', '--profile', 'house.json');
      expect(stderr).toBe(
        'furrow: house.json:2: landMim: found an unknown field; the nearest is "landMin"\n',
      );
      expect(exitCode).toBe(2);
    });
  });
});

test('a hostile name is shown harmlessly and kept exactly in the JSON', async () => {
  await withFolder(async (folder) => {
    const name = 'a\u001b[31m\nb\u202e.wav';
    await writeFile(join(folder, name), TONE);
    await writeFile(join(folder, `bad${name}`), 'no sound');
    const { stdout, stderr } = await forecast(folder, name, `bad${name}`);
    expect(stdout + stderr).not.toMatch(/[\u202e]/);
    expect(stdout + stderr).not.toContain('\u001b');
    expect(stderr.trimEnd().split('\n')).toHaveLength(2);
    const json = await forecast(folder, name, '--json');
    expect(forecastSchema.parse(JSON.parse(json.stdout)).sides[0]?.sources[0]?.path).toBe(name);
  });
});

test('colour is for terminals, unless it is forced', async () => {
  await withSides(async (folder) => {
    const env = { FORCE_COLOR: '1' };
    const forced = await runFurrow(['forecast', 'good.wav'], { cwd: folder, env });
    const piped = await runFurrow(['forecast', 'good.wav'], { cwd: folder, env: {} });
    expect(forced.stdout).toContain('\u001b[');
    expect(piped.stdout).not.toContain('\u001b[');
  });
});

test('a reader that leaves after the first line is no error', async () => {
  await withSides(async (folder) => {
    const script = `set -o pipefail; ${SHELL_COMMAND} forecast good.wav --quiet | head -n 1`;
    const { stdout, stderr, exitCode } = await execa('bash', ['-c', script], {
      cwd: folder,
      reject: false,
    });
    expect(stdout).toMatch(/^good\.wav/);
    expect({ stderr, exitCode }).toEqual({ stderr: '', exitCode: 0 });
  });
});

test('a reader that leaves takes no file with it', async () => {
  await withSides(async (folder) => {
    const shell = `{ ${SHELL_COMMAND} forecast . --table out.csv; echo $? > code; } | true`;
    await execa('sh', ['-c', shell], { cwd: folder });
    expect(await readFile(join(folder, 'out.csv'), 'utf8')).toContain('good.wav');
    expect(await readFile(join(folder, 'code'), 'utf8')).toBe('3\n');
  });
});
