import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { parse } from 'jsonc-parser';
import { describe, expect, test } from 'vitest';
import { forecastSchema } from '../../src/report/forecast-schema.js';
import { framesOf } from '../analysis/summary-of.js';
import { withFolder } from '../support/run-furrow.js';
import { runInProcess } from '../support/run-in-process.js';
import { writeWav } from '../support/sheet-side.js';
import { faded, inBoth, tones } from '../support/signals.js';
import { ascii, chunk, formatChunk, joined, riff } from '../support/wav-writer.js';

const RATE = 44_100;
const PCM = { encoding: 'pcm', bitDepth: 16, channels: 2, sampleRate: RATE } as const;
const SECONDS = 8;

/** Bass that takes land, rising from silence and falling to it. */
const SONG = inBoth(faded(tones([{ hz: 61.7, amplitude: 0.5 }], SECONDS * RATE, RATE), RATE / 2));

const SHEET = {
  format: 'furrow.sheet/1',
  sides: [
    {
      name: 'Side A',
      levelDb: -3,
      rpm: 45,
      tracks: [
        { file: 'one.wav', name: 'Tin Bell' },
        {
          file: 'two.wav',
          name: 'Slow Kite',
          gapSeconds: 2,
          marker: true,
          basePitch: [{ fromSeconds: -1, pitch: '200lpi' }],
        },
      ],
    },
    { name: 'Side B', tracks: [{ file: 'two.wav', trimDb: -6 }] },
  ],
};

async function withAlbum<T>(use: (folder: string, sheet: string) => Promise<T>): Promise<T> {
  return await withFolder(async (folder) => {
    await writeWav(folder, 'one.wav', SONG, PCM);
    await writeWav(folder, 'two.wav', SONG, PCM);
    const sheet = join(folder, 'album.json');
    await writeFile(sheet, `// an invented album\n${JSON.stringify(SHEET, null, 2)}\n`);
    return await use(folder, sheet);
  });
}

const QUIET = ['--no-discovery', '--quiet'];

describe('furrow side', () => {
  test('forecasts each side of a sheet at its own level and speed, with its tracks', async () => {
    await withAlbum(async (folder, sheet) => {
      const { stdout, stderr, exitCode } = await runInProcess(['side', ...QUIET, '--json', sheet]);
      expect([exitCode, stderr]).toEqual([0, '']);
      const { sides, failures } = forecastSchema.parse(JSON.parse(stdout));
      expect(failures).toEqual([]);
      expect(sides.map(({ name, levelDb }) => [name, levelDb])).toEqual([
        ['Side A', -3],
        ['Side B', 0],
      ]);
      const [first] = sides;
      expect(first?.settings.rpm).toBe(45);
      expect(first?.durationSeconds).toBe(2 * SECONDS + 2);
      expect(first?.sources.map(({ path }) => path)).toEqual([
        join(folder, 'one.wav'),
        join(folder, 'two.wav'),
      ]);
      expect(first?.tracks?.map(({ name, startsAtSeconds }) => [name, startsAtSeconds])).toEqual([
        ['Tin Bell', 0],
        ['Slow Kite', SECONDS + 2],
      ]);
      // The second track is cut at a wider base pitch.
      expect(first?.fixed.pitchMaxUm).toBeWithin(25_400 / 200, 0.01);
      const heard = first?.hotSpots.map(({ atSeconds, track }) => [track, (atSeconds ?? 0) >= 10]);
      expect(heard).toContainEqual(['Tin Bell', false]);
      expect(heard).toContainEqual(['Slow Kite', true]);
      expect(heard).not.toContainEqual(['Slow Kite', false]);
    });
  });

  test('takes the radius of a marker between two tracks', async () => {
    await withAlbum(async (_, sheet) => {
      const radius = async () => {
        const { stdout } = await runInProcess(['side', ...QUIET, '--json', sheet]);
        return forecastSchema.parse(JSON.parse(stdout)).sides[0]?.fixed.radiusUsedMm ?? 0;
      };
      const withMarker = await radius();
      await writeFile(sheet, JSON.stringify(SHEET).replace('"marker":true', '"marker":false'));
      // A second at 45 rpm at 1.5 mm a turn, in place of 300 to 200 lines per inch.
      const [least, most] = [200, 300].map((lines) => (45 / 60) * (1.5 - 25.4 / lines));
      const taken = withMarker - (await radius());
      expect(taken).toBeGreaterThan(least ?? 0);
      expect(taken).toBeLessThan(most ?? 0);
    });
  });

  test('gives the same bytes whatever the threads, and options win over the sheet', async () => {
    await withAlbum(async (_, sheet) => {
      const run = async (...more: string[]) =>
        (await runInProcess(['side', ...QUIET, '--json', ...more, sheet], 2)).stdout;
      const one = await run('--jobs', '1');
      expect(one).toContain('"Slow Kite"');
      expect(await run('--jobs', '3')).toBe(one);
      const { sides } = forecastSchema.parse(JSON.parse(await run('--level', '-9', '--rpm', '33')));
      expect(sides.map(({ levelDb }) => levelDb)).toEqual([-9, -9]);
      expect(sides.map(({ settings }) => settings.rpm)).toBeWithin([100 / 3, 100 / 3], 1e-9);
    });
  });

  test('tells tracks, and places in their track’s time, in its text', async () => {
    await withAlbum(async (_, sheet) => {
      await writeFile(sheet, JSON.stringify(SHEET).replaceAll('"rpm":45', '"executes":"fixed"'));
      const { stdout } = await runInProcess(['side', ...QUIET, '--level', '12', sheet]);
      expect(stdout).toMatch(/2 Slow Kite +00:10\.0/);
      expect(stdout).toMatch(/fault +00:0\d\.\d.*\strack\s+1\s+at\s+00:0\d\.\d/);
    });
  });

  test('writes what forecast writes, files named after the sides', async () => {
    await withAlbum(async (folder, sheet) => {
      const out = join(folder, 'out');
      await mkdir(out);
      const files = ['--csv', out, '--markers', out, '--table', join(out, 'table.csv')];
      const { exitCode } = await runInProcess(['side', ...QUIET, ...files, sheet]);
      expect(exitCode).toBe(0);
      expect((await readdir(out)).sort()).toEqual([
        'Side A.markers.csv',
        'Side A.quarters.csv',
        'Side B.markers.csv',
        'Side B.quarters.csv',
        'table.csv',
      ]);
    });
  });

  test('does the other sides where a file cannot be read, names each and exits 3', async () => {
    await withAlbum(async (folder, sheet) => {
      const [a, b] = SHEET.sides;
      const lost = { name: 'Lost', tracks: [{ file: 'gone.wav' }, { file: 'lost.wav' }] };
      await writeFile(sheet, JSON.stringify({ ...SHEET, sides: [a, lost, b] }));
      const ran = await runInProcess(['side', ...QUIET, '--ndjson', sheet]);
      expect(ran.exitCode).toBe(3);
      const lines = ran.stdout
        .trim()
        .split('\n')
        .map((line) => JSON.parse(line));
      expect(lines.map(({ type, name, path }) => [type, name ?? path])).toEqual([
        ['side', 'Side A'],
        ['failure', join(folder, 'gone.wav')],
        ['failure', join(folder, 'lost.wav')],
        ['side', 'Side B'],
        ['summary', undefined],
      ]);
      expect(ran.stderr).toContain('side "Lost" of');
    });
  });

  test.each([
    [{ gapSecond: 1 }, 'the nearest is "gapSeconds"'],
    [{ untilSeconds: 99 }, 'untilSeconds: found 99'],
  ])('refuses a wrong sheet before work begins, with 2: %o', async (fields, told) => {
    await withAlbum(async (_, sheet) => {
      const tracks = [{ file: 'one.wav', ...fields }];
      const text = JSON.stringify({ ...SHEET, sides: [{ name: 'A', tracks }] });
      await writeFile(sheet, text);
      const { stdout, stderr, exitCode } = await runInProcess(['side', ...QUIET, sheet]);
      expect([stdout, exitCode]).toEqual(['', 2]);
      expect(stderr).toContain('sides[0].tracks[0]');
      expect(stderr).toContain(told);
    });
  });

  test('looks for a running order only where it is asked to, and moves nothing', async () => {
    await withAlbum(async (_, sheet) => {
      const sides = async (...more: string[]) => {
        const { stdout } = await runInProcess(['side', ...QUIET, '--json', ...more, sheet]);
        return forecastSchema.parse(JSON.parse(stdout)).sides;
      };
      const [plain, asked] = [await sides(), await sides('--order')];
      expect(plain[0]).not.toHaveProperty('order');
      expect(asked[0]?.order?.tracks.toSorted()).toEqual([0, 1]);
      expect(asked[1]?.order).toBeNull();
      expect(asked[0]?.tracks).toEqual(plain[0]?.tracks);
    });
  });

  test('writes no letter to a client, which goes by files', async () => {
    const { stderr, exitCode } = await runInProcess(['side', '--client', 'x.txt', 'sheet.json']);
    expect(exitCode).toBe(2);
    expect(stderr).toContain('give the files to furrow forecast --client');
    expect((await runInProcess(['side', '--help'])).stdout).not.toContain('--client');
  });

  test('without a sheet is wrong usage', async () => {
    const { stderr, exitCode } = await runInProcess(['side']);
    expect(exitCode).toBe(2);
    expect(stderr).toContain('give a side sheet');
  });
});

test('the published schema of a sheet takes this one, and nothing that furrow refuses', async () => {
  const { stdout } = await runInProcess(['schema', 'sheet']);
  const validate = new Ajv2020({ strict: false }).compile(JSON.parse(stdout));
  expect(validate(SHEET)).toBe(true);
  expect(validate({ ...SHEET, format: 'furrow.sheet/2' })).toBe(false);
  const tracks = [{ file: 'one.wav', gapSecond: 1 }];
  expect(validate({ ...SHEET, sides: [{ name: 'A', tracks }] })).toBe(false);
});

describe('furrow side --from-cues', () => {
  /** A file of one song with marks at 0 and 3 s, and one behind a label. */
  async function writeMarked(folder: string): Promise<string> {
    const number = (value: number) => {
      const bytes = new Uint8Array(4);
      new DataView(bytes.buffer).setUint32(0, value, true);
      return bytes;
    };
    const marks = [
      [1, 0, 'Tin Bell'],
      [2, 3 * RATE + 7, 'Slow Kite'],
      [3, 5 * RATE, ''],
    ] as const;
    const points = marks.map(([name, sample]) =>
      joined([number(name), number(sample), ascii('data'), number(0), number(0), number(sample)]),
    );
    const labels = marks
      .filter(([, , text]) => text !== '')
      .map(([name, , text]) => chunk('labl', joined([number(name), ascii(`${text}\0`)])));
    const path = join(folder, 'whole.wav');
    const chunks = [
      formatChunk(PCM),
      chunk('data', framesOf(SONG, PCM)),
      chunk('cue ', joined([number(marks.length), ...points])),
      chunk('LIST', joined([ascii('adtl'), ...labels])),
    ];
    await writeFile(path, riff(chunks));
    return path;
  }

  test('splits a file at its own marks; the side has the file’s own forecast, byte for byte', async () => {
    await withFolder(async (folder) => {
      const path = await writeMarked(folder);
      const { stdout, exitCode } = await runInProcess(['side', '--from-cues', path]);
      expect(exitCode).toBe(0);
      const sheet = join(folder, 'sheet.json');
      await writeFile(sheet, stdout);
      expect(parse(stdout).sides[0].tracks.map(({ name }: { name: string }) => name)).toEqual([
        'Tin Bell',
        'Slow Kite',
        'track 3',
      ]);
      const profile = join(folder, 'house.json');
      await writeFile(profile, '{ "executes": "fixed" }');
      const json = ['--json', '--quarters', '--level', '12', '--profile', profile];
      const side = await runInProcess(['side', ...QUIET, ...json, sheet]);
      const file = await runInProcess(['forecast', ...QUIET, ...json, path]);
      expect(file.stdout).toContain('"overcut"');
      const withoutTracks = JSON.parse(side.stdout, (key, value) =>
        key === 'track'
          ? null
          : ['tracks', 'hand', 'trackSeconds', 'message'].includes(key)
            ? undefined
            : value,
      );
      const plain = JSON.parse(file.stdout, (key, value) =>
        key === 'message' ? undefined : value,
      );
      for (const finding of withoutTracks.sides[0].findings) delete finding.track;
      expect(JSON.stringify(withoutTracks)).toBe(JSON.stringify(plain));
    });
  });

  test('refuses a file without marks with 2, and one that cannot be read with 3', async () => {
    await withAlbum(async (folder) => {
      const none = await runInProcess(['side', '--from-cues', join(folder, 'one.wav')]);
      expect([none.exitCode, none.stdout]).toEqual([2, '']);
      expect(none.stderr).toContain('no cue points');
      const gone = await runInProcess(['side', '--from-cues', join(folder, 'gone.wav')]);
      expect([gone.exitCode, gone.stdout]).toEqual([3, '']);
    });
  });

  test('does not forecast a sheet at the same time', async () => {
    const { exitCode } = await runInProcess(['side', '--from-cues', 'a.wav', 'sheet.json']);
    expect(exitCode).toBe(2);
  });
});

test('a sheet is never written over', async () => {
  await withAlbum(async (_, sheet) => {
    const before = await readFile(sheet);
    const { exitCode } = await runInProcess(['side', ...QUIET, '--table', sheet, sheet]);
    expect(exitCode).toBe(2);
    expect(await readFile(sheet)).toEqual(before);
  });
});
