import { stripVTControlCharacters } from 'node:util';
import { Chalk } from 'chalk';
import stringWidth from 'string-width';
import { describe, expect, test } from 'vitest';
import type { ForecastedFile } from '../../src/forecast-result.js';
import type { SideForecast } from '../../src/model/forecast-types.js';
import { folderRow } from '../../src/report/folder-row.js';
import { folderTable } from '../../src/report/folder-table.js';
import { findingWith, forecastedFile, planWith } from '../support/forecast-fixture.js';

const MONOCHROME = { units: 'metric', paint: new Chalk({ level: 0 }) } as const;
const CLEAR = { verdict: 'clear', findings: [] } as const;
const upTo = (recommendedDb: number | null) => ({
  headroom: { fillDb: 1, traceDb: 1, recommendedDb, limitedBy: null },
});

function fileAt(path: string, forecast: Partial<SideForecast> = {}): ForecastedFile {
  const [source] = forecastedFile().sources;
  if (source === undefined) throw new Error('no source');
  const name = path.split('/').at(-1) ?? '';
  return forecastedFile({ name, sources: [{ ...source, path }] }, forecast);
}

const sideAt = (path: string, forecast: Partial<SideForecast> = {}) =>
  folderRow(fileAt(path, forecast));
const failureAt = (path: string, sidesBefore: number) =>
  ({ path, code: 'bad-header', message: 'invented', sidesBefore }) as const;

describe('the row of a side', () => {
  const [head1, head2, head3, row] = folderTable([sideAt('x/a.wav')], [], MONOCHROME).split('\n');

  test('tells time, both ends and spares, land, level, verdict and worst finding', () => {
    expect(row?.trim().split(/ +/)).toEqual(
      'a.wav 20:00 120.7 0.0 127.9 3.6 8.2 +0.5 caution land-low'.split(' '),
    );
    expect(head1).toMatch(/machine \* +plan +least +fits +worst/);
    expect(head2?.trim().split(/ +/)).toEqual(
      'side time ends spare ends spare land up to verdict finding'.split(' '),
    );
    expect(head3?.trim().split(/ +/)).toEqual('min:s mm mm mm mm µm dB'.split(' '));
  });

  test('keeps a name shorter than its heading apart from the next column', () => {
    const [, heads, , line] = folderTable([sideAt('A')], [], MONOCHROME).split('\n');
    expect(heads).toMatch(/^ {2}side +time/);
    expect(line).toMatch(/^ {2}A {4,}20:00/);
    expect(line?.indexOf('20:00')).toBe((heads?.indexOf('time') ?? 0) - 1);
  });

  test('tells inches, mils and no metric unit to who works in them', () => {
    const text = folderTable([sideAt('x/a.wav')], [], { ...MONOCHROME, units: 'us' });
    expect(text.split('\n')[3]?.trim().split(/ +/)).toEqual(
      'a.wav 20:00 4.75 0.00 5.03 0.14 0.32 +0.5 caution land-low'.split(' '),
    );
    expect(text).not.toMatch(/µm|mm/);
  });

  test('marks whose plan the verdict is about, and takes land from it', () => {
    const plan = planWith({ landMin: 13e-6 });
    const text = folderTable([sideAt('a.wav', { executes: 'plan', plan })], [], MONOCHROME);
    expect(text.split('\n')[0]).toMatch(/machine +plan \*/);
    expect(text).toMatch(/ 13\.0 /);
    expect(text.replaceAll(/\s+/g, ' ')).toContain(
      'level and finding are for the plan (turn-ahead) at level 0.0 dB.',
    );
  });

  test('has no level where none holds, none in silence, and no diameter past the centre', () => {
    const none = sideAt('a.wav', { ...upTo(null), machine: planWith({ endDiameter: -0.03 }) });
    expect(folderTable([none], [], MONOCHROME)).toMatch(/ < 0 .* none +caution /);
    const silent = sideAt('a.wav', {
      verdict: 'fault',
      findings: [findingWith({ id: 'silent', severity: 'fault', atSeconds: null })],
    });
    expect(folderTable([silent], [], MONOCHROME)).toMatch(/ – +fault +silent\n/);
  });

  test('tells a quarter of a decibel where the control has such steps', () => {
    const { settings } = forecastedFile();
    const file = fileAt('a.wav', upTo(-0.75));
    const row = folderRow({ ...file, settings: { ...settings, levelStep: 0.25 } });
    expect(folderTable([row], [], MONOCHROME)).toContain(' -0.75 ');
  });
});

test('the place of the worst finding is told where there is room', () => {
  const findings = [findingWith({ id: 'overcut', severity: 'fault', atSeconds: 70 })];
  const shown = (columns: number) =>
    folderTable([sideAt('a.wav', { findings })], [], { ...MONOCHROME, columns }).split('\n')[3];
  expect(shown(100)).toMatch(/overcut +01:10\.0$/);
  expect(shown(80)).toMatch(/overcut$/);
});

describe('what the house accepts', () => {
  const accepted = { reason: 'known' };
  const known = (atSeconds: number) =>
    findingWith({ id: 'overcut', severity: 'fault', atSeconds, accepted });
  const [one, two] = [known(70), known(90)];
  const note = findingWith({ id: 'mono', severity: 'note', atSeconds: null });
  const clear = sideAt('a.wav', { verdict: 'clear', findings: [one, two, note] });
  const caution = sideAt('b.wav', { findings: [one, findingWith({ atSeconds: 192.44 })] });
  const text = folderTable([clear, caution], [], { ...MONOCHROME, columns: 100 });

  test('is counted in the row of a side that is clear, in place of a finding', () => {
    expect(text).toMatch(/^ {2}a\.wav .* clear +2 accepted$/m);
    expect(text).not.toMatch(/overcut|mono/);
  });

  test('leaves the row of another to what counts, and is counted in the summary', () => {
    expect(text).toMatch(/b\.wav .* caution +land-low +03:12\.4$/m);
    expect(text).toContain('2 sides: 1 caution, 1 clear; 3 findings accepted.');
  });
});

describe('among several sides', () => {
  const rows = [
    sideAt('x/one.wav', { ...CLEAR, durationSeconds: 1351, machine: planWith({ spare: 0.004 }) }),
    sideAt('x/two.wav', { verdict: 'fault', ...upTo(-1), machine: planWith({ spare: 0.003 }) }),
    sideAt('x/three.wav', { verdict: 'fault', ...upTo(-3), machine: planWith({ spare: 0.002 }) }),
    sideAt('x/four.wav', { ...upTo(-9), machine: planWith({ spare: -0.001 }) }),
  ];
  const text = folderTable(rows, [failureAt('x/broken.wav', 1)], MONOCHROME);

  test('the worst, the tightest and the longest are marked and named', () => {
    const lines = text.split('\n');
    expect(lines.filter((line) => /^> \S+\.wav/.test(line))).toHaveLength(1);
    expect(lines.filter((line) => line.startsWith('> three.wav'))).toHaveLength(1);
    expect(lines.filter((line) => /^ {2}four\.wav.* -1\.0< /.test(line))).toHaveLength(1);
    expect(text).toMatch(/\n> worst +three\.wav +land-low at 03:12\.4, fits up to -3\.0 dB\n/);
    expect(text).toMatch(/\n< tightest +four\.wav +spare -1\.0 mm\n/);
    expect(text).toMatch(/\n {2}longest +one\.wav +22:31\n/);
  });

  test('they are counted by verdict, with what could not be read', () => {
    expect(text).toContain('\n4 sides: 2 fault, 1 caution, 1 clear; 1 could not be read.\n');
  });

  test('an unreadable file stands where it was given, with the code of its reason', () => {
    const names = text
      .split('\n')
      .slice(3, 8)
      .map((line) => line.slice(2).split(' ')[0]);
    expect(names).toEqual(['one.wav', 'broken.wav', 'two.wav', 'three.wav', 'four.wav']);
    expect(text).toMatch(/broken\.wav +could not be read: bad-header\n/);
  });

  test('where all are clear none is the worst; alone none stands out', () => {
    const clear = [sideAt('a.wav', CLEAR), sideAt('b.wav', CLEAR)];
    expect(folderTable(clear, [], MONOCHROME)).not.toMatch(/worst +\S+\.wav|^>/m);
    const alone = folderTable([sideAt('a.wav')], [], MONOCHROME);
    expect(alone).not.toMatch(/tightest|longest|[<>]/);
    expect(alone).toContain('1 side: 1 caution.');
  });

  test('files of one name are told by their folders, below the table too', () => {
    const same = ['x/1/a.wav', 'x/2/a.wav'].map((path) => sideAt(path));
    const told = folderTable(same, [failureAt('x/3/a.wav', 2)], MONOCHROME);
    expect(told.match(/\d\/a\.wav/g)).toEqual([
      '1/a.wav',
      '2/a.wav',
      '3/a.wav',
      ...Array(3).fill('1/a.wav'),
    ]);
  });
});

test('where nothing could be read there is no table but what could not', () => {
  expect(folderTable([], [failureAt('x/broken.wav', 0)], MONOCHROME)).toBe(
    '  broken.wav  could not be read: bad-header\n\nNo side was forecast; 1 could not be read.\n',
  );
});

describe('what is printed', () => {
  const hostile = [
    'x/the-long-name-of-an-invented-album-remastered-side-b.wav',
    'x/the-long-name-of-an-invented-album-remastered-side-c.wav',
    'x/静かな夜の前奏曲・第一楽章・最終版.wav',
    'x/👨‍👩‍👧 party 🎵.wav',
    'x/evil\u001b[2J\nname\u202e.wav',
    'x/zero\u200bwidth.wav',
  ];
  const widest = {
    durationSeconds: 5999.9,
    levelDb: -12,
    machine: planWith({ endDiameter: 0.2321, spare: -0.0123, landMin: -123.4e-6 }),
    findings: [findingWith({ id: 'low-vertical', atSeconds: 5999.9 })],
    ...upTo(-11.5),
  };
  const rows = hostile.map((path) => sideAt(path, widest));
  const failures = hostile.map((path) => failureAt(`${path}x`, 3));

  test.each([
    [undefined, 'metric', 80],
    [80, 'us', 80],
    [40, 'metric', 80],
    [100, 'metric', 100],
    [250, 'us', 100],
  ] as const)('with %s columns in %s fits in %d', (columns, units, most) => {
    const options = columns === undefined ? { units } : { units, columns };
    const text = folderTable(rows, failures, { ...MONOCHROME, ...options });
    const widths = text.split('\n').map((line) => stringWidth(line));
    expect(Math.max(...widths)).toBeLessThanOrEqual(most);
    expect(Math.max(...widths)).toBeGreaterThan(most - 12);
    expect(text.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\p{Bidi_Control}]/u);
    expect(text.match(/ caution low-vertical/g)).toHaveLength(rows.length);
  });

  test('stands in columns whatever the names are', () => {
    const ends = folderTable(rows, [], MONOCHROME)
      .split('\n')
      .filter((line) => line.includes('caution low-vertical'))
      .map((line) => stringWidth(line));
    expect(new Set(ends).size).toBe(1);
    expect(ends).toHaveLength(rows.length);
  });

  test('says the same without colour, and in ASCII but for names', () => {
    const painted = folderTable(rows, failures, { ...MONOCHROME, paint: new Chalk({ level: 1 }) });
    expect(painted).toContain('\u001b[');
    expect(stripVTControlCharacters(painted)).toBe(folderTable(rows, failures, MONOCHROME));
    const plain = [sideAt(hostile[0] ?? '', CLEAR), sideAt('b.wav')];
    expect(folderTable(plain, [], { ...MONOCHROME, ascii: true })).toMatch(/^[\n -~]*$/);
  });
});

test('five thousand sides take a row each', () => {
  const rows = Array.from({ length: 5000 }, (_, side) =>
    sideAt(`x/an-invented-long-title-${side}.wav`),
  );
  expect(folderTable(rows, [], MONOCHROME).split('\n').length).toBeGreaterThan(5000);
});
