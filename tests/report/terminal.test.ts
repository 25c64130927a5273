import { stripVTControlCharacters } from 'node:util';
import { Chalk } from 'chalk';
import { describe, expect, test } from 'vitest';
import { FINDING_IDS } from '../../src/model/forecast-types.js';
import { resolveProfile } from '../../src/profile/resolve-profile.js';
import { cautionsOf, cautionText } from '../../src/report/caution-text.js';
import { findingText } from '../../src/report/finding-text.js';
import { sideText } from '../../src/report/terminal.js';
import { findingWith, forecastedFile, planWith } from '../support/forecast-fixture.js';

const MONOCHROME = { units: 'metric', paint: new Chalk({ level: 0 }) } as const;
const flat = (text: string) => text.replaceAll(/\s+/g, ' ');

describe('the summary of a side', () => {
  // A silent file has no headroom to tell.
  const ids = FINDING_IDS.filter((id) => id !== 'silent');
  const all = ids.map((id) => findingWith({ id }));
  const text = sideText(forecastedFile({}, { findings: all }), MONOCHROME);
  const [first] = text.split('\n');

  test('keeps to 80 columns and needs no colour', () => {
    expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
    expect(text).not.toContain('\u001b');
  });

  test('begins with what to dial in, and with what it assumes where nothing is set', () => {
    expect(first).toContain("invented-side.wav (assuming the lathe's own automation): dial in");
    expect(flat(text)).toContain(
      'dial in level 0.0 dB, base pitch 300 LPI (84.7 µm), groove 2.00 mil (50.8 µm)',
    );
  });

  test('assumes nothing once the profile says what the lathe executes', () => {
    const settings = { ...resolveProfile(), executesIsSet: true };
    const [line] = sideText(forecastedFile({ settings }), MONOCHROME).split('\n');
    expect(line).toMatch(/^invented-side\.wav: dial in level 0\.0 dB, base pitch 300 LPI/);
    expect(line).not.toContain('assuming');
  });

  test('says what the verdict is and for which plan it holds', () => {
    expect(flat(text)).toContain("CAUTION for the lathe's own automation at the planned 0.0 dB: ");
    expect(text).toMatch(/^ {2}machine \*/m);
    expect(text).toContain('12-inch lacquer');
  });

  test('shows machine, plan and fixed pitch side by side', () => {
    expect(text).toMatch(/^ {2}machine \* +120\.7 +0\.0 +82\.1 .* 8\.2 +03:12\.4/m);
    expect(text).toMatch(/^ {2}turn-ahead +127\.9 +3\.6 +82\.1 .* 8\.2 +03:12\.4/m);
    expect(text).toMatch(/^ {2}fixed +127\.9 +-1\.0 +82\.1 .* -30\.0 +03:12\.4/m);
    expect(text).toMatch(/^ {2}tightest +80\.1$/m);
  });

  test('tells how loud it can go and why not louder', () => {
    expect(flat(text)).toContain('at most +0.5 dB, limited by the room on the disc');
  });

  test('tells the head load', () => {
    expect(flat(text)).toContain('Head load L 1461, R 1378 m/s² rms over 1 s');
  });

  test('tells where land is least and what error it holds to', () => {
    expect(text).toMatch(
      / 1 {2}03:12\.4 265\.8 mm 8\.2 µm {2}bass 45 Hz {2}both ±0\.12 % ±2\.1 µm ample/,
    );
  });
});

test('the end of the range of levels is not told as a limit', () => {
  const headroom = { fillDb: 12, traceDb: 11.9, recommendedDb: 11.5, limitedBy: null };
  const text = flat(sideText(forecastedFile({}, { headroom }), MONOCHROME));
  expect(text).toContain(
    'at most +11.5 dB. Fits +12.0 dB or more (highest looked at); without a fault up to +11.9 dB.',
  );
});

test('a level that nothing limits is told as the highest looked at, once', () => {
  const headroom = { fillDb: 12, traceDb: 12, recommendedDb: 12, limitedBy: null };
  const text = flat(sideText(forecastedFile({}, { headroom }), MONOCHROME));
  expect(text).toContain('Headroom: +12.0 dB or more (highest looked at). Head load');
  expect(text).not.toContain('at most +12');
  expect(text).not.toContain('Fits');
});

test('where no level holds none is dialled in, and that is said', () => {
  const headroom = { fillDb: null, traceDb: 3, recommendedDb: null, limitedBy: null };
  const text = flat(sideText(forecastedFile({}, { headroom }), MONOCHROME));
  expect(text).toContain(
    ': no level from -12 to +12 dB holds. The rest to dial in: base pitch 300 LPI',
  );
  expect(text).not.toContain('dial in level');
});

describe('silence', () => {
  const program = {
    ...forecastedFile().program,
    meanSquare: [0, 0],
    samplePeak: [0, 0],
    truePeak: [0, 0],
    loudnessLufs: Number.NEGATIVE_INFINITY,
  } as const;
  const findings = [findingWith({ id: 'silent', severity: 'fault', value: null })];
  const text = sideText(forecastedFile({ program }, { findings }), MONOCHROME);

  test('has no loudness, no peak and no headroom, nor their units', () => {
    expect(text).not.toMatch(/LUFS|dBTP|dBFS rms|Headroom|Head load/);
    expect(text).not.toMatch(/– ?[a-zµ]/i);
    expect(flat(text)).toContain('666.7 turns at 33.33 rpm, 12-inch lacquer.');
  });

  test('in the loudness only, under its gates, leaves peak and average', () => {
    const quiet = { ...forecastedFile().program, loudnessLufs: Number.NEGATIVE_INFINITY };
    expect(flat(sideText(forecastedFile({ program: quiet }), MONOCHROME))).toContain(
      ' True peak 0.0 dBTP, average -17.0 dBFS rms.',
    );
  });
});

test('a program shorter than a turn is called so, one of a turn is not', () => {
  const shown = (turns: number) => flat(sideText(forecastedFile({}, { turns }), MONOCHROME));
  expect(shown(0.9)).toContain('Shorter than one turn: nothing but silence lies beside it.');
  expect(shown(1)).not.toContain('Shorter than one turn');
});

test('a spiral that crosses the centre has no diameter there', () => {
  const machine = planWith({ endDiameter: -0.03 });
  const findings = [
    findingWith({ id: 'too-long', severity: 'fault', value: -0.03, limit: 0.12065 }),
  ];
  const text = flat(sideText(forecastedFile({}, { machine, findings }), MONOCHROME));
  expect(text).toContain('Ends past the centre; spare radius -75.3 mm to the limit of 120.7 mm.');
  expect(text).toContain('Too long: ends past the centre, inside the limit of 120.7 mm.');
  expect(text).toMatch(/ machine \* –/);
  expect(text).not.toContain('-30.0 mm');
});

test('a recommended level under the planned one is dialled in, and the reason given', () => {
  const headroom = { fillDb: -1.2, traceDb: 3, recommendedDb: -1.5, limitedBy: null };
  const text = flat(sideText(forecastedFile({}, { headroom }), MONOCHROME));
  expect(text).toContain('dial in level -1.5 dB');
  expect(text).toContain('. The planned 0.0 dB does not hold.');
});

test('findings come in time order, those of the whole file first', () => {
  const findings = [
    findingWith({ id: 'land-low', atSeconds: 100, untilSeconds: null }),
    findingWith({ id: 'lift', atSeconds: 20, untilSeconds: null }),
    findingWith({ id: 'truncated', atSeconds: null }),
  ];
  const text = sideText(forecastedFile({}, { findings }), MONOCHROME);
  const order = ['breaks off', '00:20.0', '01:40.0'].map((part) => text.indexOf(part));
  expect(order).toEqual(order.toSorted((one, other) => one - other));
  expect(Math.min(...order)).toBeGreaterThan(0);
});

test('a hostile name cannot act on the terminal', () => {
  const text = sideText(forecastedFile({ name: 'a\u001b[2Jb\nc\u202e.wav' }), MONOCHROME);
  expect(text.split('\n')[0]).toContain('a\\u{1b}[2Jb\\u{a}c\\u{202e}.wav');
  expect(text).not.toContain('\u001b');
});

test('colour adds nothing but colour', () => {
  const file = forecastedFile();
  const painted = sideText(file, { units: 'metric', paint: new Chalk({ level: 1 }) });
  expect(painted).toContain('\u001b[33m');
  expect(stripVTControlCharacters(painted)).toBe(sideText(file, MONOCHROME));
});

test('mils, inches and lines per inch for who works in them', () => {
  const text = flat(sideText(forecastedFile(), { ...MONOCHROME, units: 'us' }));
  expect(text).toContain('groove 2.00 mil, elliptical');
  expect(text).toContain('4.750 in');
  expect(text).not.toMatch(/\d (µm|mm)\b/);
  expect(text).toContain('spare radius 0.000 in');
});

describe('cautions', () => {
  test('a test cut is always asked for, hot styli named for lacquer', () => {
    const quiet = forecastedFile(
      {},
      { levelDb: -3, headroom: { fillDb: 0, traceDb: 0, recommendedDb: -1, limitedBy: null } },
    );
    const text = flat(cautionText(new Set(cautionsOf(quiet))));
    expect(text).toContain('no substitute for a test cut under the microscope');
    expect(text).toContain('swarf burn');
    expect(text).not.toContain("maker's");
    expect(text).not.toContain('coating');
  });

  test("the head's limit is named where there is treble, the coating where the cut nears it", () => {
    const hot = forecastedFile({}, { findings: [findingWith({ id: 'facet' })] });
    const deep = forecastedFile({ settings: { ...resolveProfile(), depthMax: 45e-6 } });
    expect(cautionsOf(hot).join()).toContain("maker's");
    expect(cautionsOf(deep).join()).toContain('ruins the cutting stylus');
  });
});

describe('one screen', () => {
  const spot = forecastedFile().forecast.hotSpots[0]!;
  const ids = FINDING_IDS.filter((id) => id !== 'silent');
  // Nine of each kind, a minute and a bit apart, some of each severity, the last of each accepted.
  const findings = ids.flatMap((id, kind) =>
    Array.from({ length: 9 }, (_, count) => ({
      ...findingWith({
        id,
        severity: (['fault', 'caution', 'note'] as const)[kind % 3] ?? 'note',
        atSeconds: 67 * count + kind,
        untilSeconds: 67 * count + kind + 2,
        value: -1e-6 * count,
        wall: 'both',
      }),
      ...(count === 8 ? { accepted: { reason: 'wanted so' } } : {}),
    })),
  );
  const survives = { speed: 0.0012, depth: 12.1e-6, delay: 0.5 };
  const hotSpots = Array.from({ length: 5 }, (_, place) => ({
    ...spot,
    atSeconds: 100 * place,
    land: -12.3e-6,
    overcutDepth: 6e-6,
    survives,
  }));
  const quarter = (value: number) => new Float64Array(2668).fill(value);
  const quarters = {
    ...forecastedFile().forecast.quarters,
    pitch: quarter(9e-5).fill(12e-5, 900),
    machinePitch: quarter(1e-4).fill(13e-5, 700),
    land: quarter(3e-5),
    machineLand: quarter(2e-5).fill(-12.3e-6, 300, 310),
  };
  const settings = { ...resolveProfile(), preferredEndDiameter: 0.127 };
  const headroom = {
    fillDb: -1.2,
    traceDb: -2.3,
    recommendedDb: -2.5,
    limitedBy: { id: 'lift', atSeconds: 300 },
  } as const;
  const file = forecastedFile({ settings }, { findings, hotSpots, quarters, headroom });
  const linesOf = (columns: number, of = file) =>
    sideText(of, { ...MONOCHROME, columns })
      .trimEnd()
      .split('\n');

  test.each([
    [100, 48],
    [80, 60],
  ])('at %s columns a crowded side takes no more than %s lines', (columns, most) => {
    const lines = linesOf(columns);
    expect(lines.length).toBeLessThanOrEqual(most);
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(columns);
  });

  test('no kind of fault is left out for it, and the rest is counted', () => {
    const text = flat(linesOf(100).join('\n'));
    const kinds = ids.filter((_, kind) => kind % 3 === 0);
    expect(kinds).toContain('overcut');
    for (const id of kinds) {
      const { what } = findingText(findings.find((finding) => finding.id === id)!, {
        settings,
        units: 'metric',
      });
      expect(text).toContain(what.slice(0, 8));
    }
    expect(text).toMatch(/Findings in time order, without \d+ cautions, \d+ notes, \d+ accepted/);
    expect(text).toContain(`--details: all ${findings.length} and remedies`);
    expect(text).toMatch(/Too deep\. And 7 more\./);
  });

  test('with details every finding is told, and what mends it once an id', () => {
    const text = flat(sideText(file, { ...MONOCHROME, columns: 100, details: true }));
    expect(text.match(/Overcut, land/g)).toHaveLength(9);
    expect(text.match(/Open the pitch ahead of it/g)).toHaveLength(1);
    expect(text).not.toMatch(/And \d+ more/);
    expect(text).toContain('it would hold to ±0.12 % speed, ±12.1 µm depth, 0.50 s late');
  });

  test('a few findings are all told, each with what mends it', () => {
    const few = ['lift', 'facet', 'mono'].map((id) =>
      findingWith({ id: FINDING_IDS.find((known) => known === id) ?? 'lift' }),
    );
    const text = flat(linesOf(100, forecastedFile({}, { findings: few, quarters })).join('\n'));
    expect(text).toContain('Findings in time order: ');
    for (const part of ['Deepen the groove', 'use a de-esser', 'Nothing to mend']) {
      expect(text).toContain(part);
    }
  });

  test('wider than 100 or narrower than 80 is drawn at those', () => {
    expect(linesOf(300)).toEqual(linesOf(100));
    expect(linesOf(20)).toEqual(linesOf(80));
    expect(sideText(file, MONOCHROME)).toBe(sideText(file, { ...MONOCHROME, columns: 80 }));
  });

  test('in ASCII it is ASCII, but for the name', () => {
    const named = { ...file, name: 'Überseite·µ.wav' };
    const text = sideText(named, { ...MONOCHROME, columns: 100, ascii: true });
    expect(text.startsWith('Überseite·µ.wav')).toBe(true);
    expect(text.slice(named.name.length)).toMatch(/^[ -~\n]+$/);
  });

  test('saved motion is said, once, not to have been asked for speed', () => {
    const text = flat(sideText({ ...file, readFrom: 'motion' }, MONOCHROME));
    expect(text.match(/speed error .* was not looked at/g)).toHaveLength(1);
    const sources = file.sources.map((source) => ({ ...source, sampleRate: 22_050 }));
    expect(flat(sideText({ ...file, sources }, MONOCHROME))).toContain(
      'At this sample rate, what speed',
    );
    expect(flat(sideText(file, MONOCHROME))).not.toContain('not looked at');
  });
});

test('what is accepted is told with the reason, and counted apart', () => {
  const known = {
    ...findingWith({ id: 'lift', severity: 'fault' }),
    accepted: { reason: 'wanted' },
  };
  const findings = [known, findingWith()];
  const text = flat(sideText(forecastedFile({}, { findings }), MONOCHROME));
  expect(text).toContain('1 caution; 1 accepted.');
  expect(text).toMatch(/accepted 03:12\.4, .* is needed\. Accepted: wanted/);
  expect(text).not.toContain('Deepen the groove');
});

test('spare radius is told to the limit and to where the house likes to end', () => {
  const settings = { ...resolveProfile(), preferredEndDiameter: 0.13 };
  const machine = planWith({ endDiameter: 0.126 });
  const text = flat(sideText(forecastedFile({ settings }, { machine }), MONOCHROME));
  expect(text).toContain(
    'Ends at 126.0 mm; spare radius 2.7 mm to the limit of 120.7 mm, -2.0 mm to the preferred 130.0 mm.',
  );
});
