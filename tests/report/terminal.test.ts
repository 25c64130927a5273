import { stripVTControlCharacters } from 'node:util';
import { Chalk } from 'chalk';
import { describe, expect, test } from 'vitest';
import { FINDING_IDS } from '../../src/model/forecast-types.js';
import { resolveProfile } from '../../src/profile/resolve-profile.js';
import { cautionsOf, cautionText } from '../../src/report/caution-text.js';
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
    expect(flat(text)).toContain('dial in level 0.0 dB, 300 LPI (84.7 µm), groove 50.8 µm');
  });

  test('assumes nothing once the profile says what the lathe executes', () => {
    const settings = { ...resolveProfile(), executesIsSet: true };
    const [line] = sideText(forecastedFile({ settings }), MONOCHROME).split('\n');
    expect(line).toMatch(/^invented-side\.wav: dial in level 0\.0 dB, 300 LPI/);
    expect(line).not.toContain('assuming');
  });

  test('says what the verdict is and for which plan it holds', () => {
    expect(flat(text)).toContain(
      "CAUTION for the lathe's own automation at level 0.0 dB on 12-inch",
    );
    expect(text).toContain('the machine *');
  });

  test('shows machine, plan and fixed pitch side by side', () => {
    expect(text).toMatch(/ends at diameter +120\.7 mm +127\.9 mm +127\.9 mm/);
    expect(text).toMatch(/least land +8\.2 µm +8\.2 µm +-30\.0 µm/);
  });

  test('tells how loud it can go and why not louder', () => {
    expect(flat(text)).toContain('at most +0.5 dB, limited by the room on the disc');
  });

  test('tells the head load', () => {
    expect(flat(text)).toContain('at most 1461 left and 1378 right over 1 s');
  });

  test('tells the hot spot with what it would survive', () => {
    expect(flat(text)).toContain('survives 0.12 % of speed, 2.1 µm of depth');
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
  expect(text).toContain('Headroom: +12.0 dB or more (highest looked at). The tightest');
  expect(text).not.toContain('at most +12');
  expect(text).not.toContain('Fits');
});

test('where no level holds none is dialled in, and that is said', () => {
  const headroom = { fillDb: null, traceDb: 3, recommendedDb: null, limitedBy: null };
  const text = flat(sideText(forecastedFile({}, { headroom }), MONOCHROME));
  expect(text).toContain(': no level from -12 to +12 dB holds. The rest to dial in: 300 LPI');
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
    expect(text).not.toMatch(/LUFS|dBTP|dBFS rms|Headroom/);
    expect(text).not.toMatch(/– ?[a-zµ]/i);
    expect(flat(text)).toContain('666.7 turns at 33.33 rpm.');
  });

  test('in the loudness only, under its gates, leaves peak and average', () => {
    const quiet = { ...forecastedFile().program, loudnessLufs: Number.NEGATIVE_INFINITY };
    expect(flat(sideText(forecastedFile({ program: quiet }), MONOCHROME))).toContain(
      'rpm. True peak 0.0 dBTP, average -17.0 dBFS rms.',
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
  expect(text).toMatch(/ends at diameter past the centre/);
  expect(text).toContain('the program ends past the centre, inside the limit of 120.7 mm.');
  expect(text).not.toContain('-30.0 mm');
});

test('a recommended level under the planned one is dialled in, and the reason given', () => {
  const headroom = { fillDb: -1.2, traceDb: 3, recommendedDb: -1.5, limitedBy: null };
  const text = flat(sideText(forecastedFile({}, { headroom }), MONOCHROME));
  expect(text).toContain('dial in level -1.5 dB');
  expect(text).toContain('; the planned 0.0 dB does not hold.');
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

test('the forty-first finding is counted, not told', () => {
  const findings = Array.from({ length: 45 }, () => findingWith());
  const text = sideText(forecastedFile({}, { findings }), MONOCHROME);
  expect(text.match(/Little land/g)).toHaveLength(40);
  expect(text).toContain('and 5 more; --json has them all');
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
  expect(text).toContain('groove 2.00 mil');
  expect(text).toContain('4.750 in');
  expect(text).not.toMatch(/\d (µm|mm)\b/);
  // One row for the mean pitch, which is in lines already.
  expect(text).toContain('mean pitch 206.2 LPI');
  expect(text).not.toContain('mean lines');
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
