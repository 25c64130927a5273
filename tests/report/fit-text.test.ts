import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Chalk } from 'chalk';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { SideFit } from '../../src/fit/fit-result.js';
import type { Remedy } from '../../src/fit/remedy.js';
import { fitDocument, fitToJson } from '../../src/report/fit-json.js';
import { basePitchText, limitTexts } from '../../src/report/fit-limit-text.js';
import { remedyCells, toldRemedies } from '../../src/report/fit-remedy-table.js';
import { remedyText } from '../../src/report/fit-remedy-text.js';
import { fitSchema } from '../../src/report/fit-schema.js';
import { fitSentence } from '../../src/report/fit-sentence.js';
import { type FitTextOptions, fitText } from '../../src/report/fit-text.js';
import { fitted, HARD_LATHE, hardProgram, writeProgram } from '../support/fit-side.js';
import { findingWith } from '../support/forecast-fixture.js';
import { settingsWith } from '../support/model-settings.js';

const OPTIONS: FitTextOptions = {
  units: 'metric',
  paint: new Chalk({ level: 0 }),
  details: false,
  ascii: false,
};

let folder: string;
let fit: SideFit;
/** A fit measures the side some dozens of times, ms. */
const LONG = 120_000;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'furrow-test-'));
  const path = await writeProgram(folder, 'hard.wav', hardProgram());
  fit = await fitted(path, settingsWith(HARD_LATHE));
}, LONG);
afterAll(async () => await rm(folder, { recursive: true }));

/** The fit with other remedies in its least set. */
function withSet(remedies: readonly Remedy[], changes: Partial<SideFit['leastSet']> = {}): SideFit {
  const { leastSet } = fit;
  if (leastSet === null) throw new Error('no set');
  const headroom = { ...leastSet.headroom, recommendedDb: 1.5 };
  return { ...fit, leastSet: { ...leastSet, remedies, headroom, ...changes } };
}

const ELLIPTICAL: Remedy = {
  kind: 'elliptical-there',
  fromSeconds: 750,
  untilSeconds: 756,
  corner: 150,
  order: 1,
};

const OVERCUT = findingWith({ id: 'overcut', severity: 'fault', atSeconds: 144.1 });
const FACET = findingWith({ id: 'facet', severity: 'fault', atSeconds: 74.3 });
const TOO_LONG = findingWith({ id: 'too-long', severity: 'fault', atSeconds: 259 });

describe('fitSentence', () => {
  it('says the set in the order of its remedies, and how the side then stands', () => {
    const bell: Remedy = {
      kind: 'bell-there',
      fromSeconds: 1122,
      untilSeconds: 1123.5,
      frequency: 7100,
      gainDb: -2.5,
    };
    expect(fitSentence(withSet([ELLIPTICAL, bell]), 'metric')).toBe(
      'Elliptical 150 Hz (6 dB/oct) from 12:30.0 to 12:36.0 and -2.5 dB at 7.1 kHz from 18:42.0 ' +
        'to 18:43.5 clear everything; the side then holds +1.5 dB.',
    );
  });

  it('says what is left where not everything is cleared', () => {
    const left = [findingWith({ id: 'overcut', value: -4.8e-6, limit: 0, atSeconds: 144.1 })];
    expect(fitSentence(withSet([ELLIPTICAL], { left }), 'metric')).toMatch(
      /clears all but overcut, land -4\.8 µm at 02:24\.1; the side then holds \+1\.5 dB\.$/,
    );
  });

  it('has nothing to mend on a side without a fault, and says when nothing mends', () => {
    expect(fitSentence({ ...fit, faults: [], leastSet: null }, 'metric')).toMatch(
      /^Nothing to mend at 0\.0 dB; the side holds -3\.5 dB\.$/,
    );
    expect(fitSentence({ ...fit, leastSet: null }, 'metric')).toBe(
      'Nothing that was tried mends any of the 4 faults at 0.0 dB.',
    );
  });
});

describe('remedyText', () => {
  it.each<[Remedy, 'metric' | 'us', string]>([
    [{ kind: 'base-pitch', pitch: 85e-6 }, 'metric', 'base pitch 298.8 LPI (85 µm)'],
    [{ kind: 'base-width', width: 53.34e-6 }, 'us', 'groove 2.10 mil'],
    [{ kind: 'level', gainDb: -0.25 }, 'metric', 'level -0.25 dB'],
    [{ kind: 'elliptical', corner: 100, order: 2 }, 'metric', 'elliptical 100 Hz (12 dB/oct)'],
    [{ kind: 'rpm', rpm: 100 / 3 }, 'metric', '33.33 rpm'],
    [{ kind: 'polarity', polarity: -1 }, 'metric', 'both channels inverted'],
    [{ kind: 'silence', quarters: 2 }, 'metric', 'half a turn more silence first'],
  ])('%o in %s units', (remedy, units, text) => {
    expect(remedyText(remedy, settingsWith(), units)).toBe(text);
  });

  it('tells both clocks at half speed', () => {
    expect(remedyText(ELLIPTICAL, settingsWith({ speedFactor: 0.5 }), 'metric')).toBe(
      'elliptical 150 Hz (6 dB/oct) from 12:30.0 (lathe 25:00.0) to 12:36.0 (lathe 25:12.0)',
    );
  });
});

describe('fitText', () => {
  it.each([
    ['metric', 80, false],
    ['us', 80, true],
    ['metric', 100, true],
  ] as const)(
    'keeps to the width of the screen: %s, %d columns, details %s',
    (units, columns, details) => {
      const text = fitText(fit, { ...OPTIONS, units, columns, details });
      const longest = Math.max(...text.split('\n').map((line) => line.length));
      expect(longest).toBeLessThanOrEqual(columns);
    },
  );

  it('tells every fault count and the level that holds', () => {
    const text = fitText(fit, OPTIONS);
    expect(text).toContain('FAULT at the planned 0.0 dB by fixed: 4 faults.');
    expect(text).toContain('dial in at most\n    -3.5 dB.');
    expect(text).toMatch(/1\.\d s at 00:05\.4 cost 2\.2 dB by the groove getting too narrow/);
  });

  it('has a fault but no level and no pitch to tell of silence', () => {
    const findings = [findingWith({ id: 'silent', severity: 'fault', atSeconds: null })];
    const text = fitText({ ...fit, findings, faults: [], leastSet: null }, OPTIONS);
    expect(text).toContain('hard.wav: There is nothing to cut.\n  FAULT');
    expect(text).toContain('by fixed: 1 fault.');
    expect(text).not.toMatch(/dial in at|Base pitch for|No base pitch/);
  });

  it('says where the level is limited though leaving those seconds out gains nothing', () => {
    const limitedBy = { id: 'overcut', atSeconds: 144.1 } as const;
    const own = { fillDb: 2, traceDb: -2.6, recommendedDb: -3, limitedBy };
    expect(limitTexts({ ...fit, headrooms: fit.headrooms.map(() => own), limits: [] })[1]).toBe(
      'Limited by land at 02:24.1; without those seconds alone it holds no more than 0.1 dB more.',
    );
  });

  it.each<[string, Omit<SideFit['basePitch'], 'levelDb'>, string]>([
    [
      'the range that holds',
      { holds: { widest: 127e-6, tightest: 101.6e-6 }, missing: null },
      'Base pitch for 0.0 dB: from 200 LPI (127 µm) to 250 LPI (101.6 µm).',
    ],
    [
      'no tightest where none that was looked at is too tight',
      { holds: { widest: 127e-6, tightest: 0.0254 / 600 }, missing: null },
      'Base pitch for 0.0 dB: 200 LPI (127 µm) or any tighter.',
    ],
    [
      'that the tightest is too wide, whatever else is wrong',
      { holds: null, missing: { pitch: 0.0254 / 600, faults: [OVERCUT, TOO_LONG] } },
      'No base pitch holds 0.0 dB: even 600 LPI (42.4 µm) takes more room than there is.',
    ],
    [
      'what a pitch can mend before what none can',
      { holds: null, missing: { pitch: 127e-6, faults: [FACET, OVERCUT] } },
      'No base pitch holds 0.0 dB: at 200 LPI (127 µm) it is limited by land at 02:24.1 and 1 more.',
    ],
    [
      'that no pitch mends what bends',
      { holds: null, missing: { pitch: 127e-6, faults: [FACET] } },
      "No base pitch holds 0.0 dB, since none mends the cutter's facets at 01:14.3.",
    ],
  ])('says of base pitches %s', (_, found, says) => {
    const told = { ...fit, settings: settingsWith({ pitchStep: null }) };
    expect(basePitchText({ levelDb: 0, ...found }, told, 'metric')).toBe(says);
  });

  it('tells how long the lathe runs at half speed', () => {
    const settings = settingsWith({ speedFactor: 0.5 });
    const text = fitText({ ...fit, settings, durationSeconds: 100 }, OPTIONS);
    expect(text).toContain('01:40.0 (lathe 03:20.0), ');
  });

  it.each([
    [
      { fillDb: null, traceDb: 1 },
      'Fits at no level from -12 to +12 dB, apart from its length without a fault up to +1.0 dB.',
    ],
    [
      { fillDb: 2, traceDb: 2 },
      'Fits and is without a fault up to +2.0 dB; dial in at most +2.0 dB.',
    ],
    [
      { fillDb: 12, traceDb: null, limitedBy: { id: 'lift', atSeconds: 5.4 } },
      'Fits up to +12.0 dB or more; no level from -12 to +12 dB is without a fault: at -12.0 dB ' +
        'it is limited by the groove getting too narrow at 00:05.4.',
    ],
  ] as const)('says of %j how loud the side goes', (own, says) => {
    const dialled = own.fillDb === 2 ? 2 : null;
    const told = { ...fit.headrooms[0], limitedBy: null, recommendedDb: dialled, ...own };
    const headrooms = fit.planners.map(() => told);
    expect(limitTexts({ ...fit, headrooms, limits: [] })).toEqual([says]);
  });

  it('says of a sheet in which track a passage limits the level', () => {
    const [limit] = fit.limits;
    if (limit === undefined) throw new Error('nothing limits');
    const tracks = [
      { name: 'One', fromSeconds: 0, untilSeconds: 4 },
      { name: 'Two', fromSeconds: 5, untilSeconds: 26 },
    ];
    expect(limitTexts({ ...fit, tracks, limits: [limit] })[1]).toContain(
      'at 00:05.4, track 2, cost',
    );
    expect(limitTexts({ ...fit, limits: [limit] })[1]).toContain('at 00:05.4 cost');
    // Its quarter turns begin in the gap before the track.
    const early = { ...limit, atSeconds: 4.7, untilSeconds: 7 };
    expect(limitTexts({ ...fit, tracks, limits: [early] })[1]).toContain(
      'at 00:04.7, track 2, cost',
    );
  });

  it('tells the level itself where there was none before, and nothing where there is none', () => {
    const [remedy] = fit.remedies;
    if (remedy === undefined) throw new Error('no remedy');
    const none = { fillDb: null, traceDb: null, gainDb: null };
    const held = { ...remedy, ...none, fillDb: 3, traceDb: -2.5 };
    const headrooms = fit.headrooms.map((headroom) => ({ ...headroom, ...none }));
    const cellsOf = (weighed: typeof remedy) =>
      remedyCells(weighed, { ...fit, headrooms }, 'metric')[3];
    expect(cellsOf(held)).toBe('to -2.5 dB');
    expect(cellsOf({ ...held, traceDb: null })).toBe('–');
    expect(remedyCells({ ...held, traceDb: null }, fit, 'metric')[3]).toBe('none');
    expect(
      toldRemedies({ ...fit, headrooms, remedies: [{ ...held, mends: [] }] }, false).length,
    ).toBe(1);
  });

  it('leaves out what does nothing, unless details are wanted', () => {
    const short = fitText(fit, OPTIONS);
    const long = fitText(fit, { ...OPTIONS, details: true });
    expect(short).not.toContain('both channels inverted');
    expect(long).toContain('both channels inverted');
  });

  it('says which corners were tried, unless the profile has its own', () => {
    const tried = 'no ellipticalSteps: corners of common practice were tried, 100, 150, 200,';
    expect(fitText(fit, OPTIONS).replace(/\n +/g, ' ')).toContain(tried);
    const settings = { ...fit.settings, ellipticalSteps: [100, 200] };
    expect(fitText({ ...fit, settings }, OPTIONS)).not.toContain('ellipticalSteps');
  });

  it('is ASCII but for the name where the terminal is', () => {
    const text = fitText({ ...fit, name: 'Ä.wav' }, { ...OPTIONS, ascii: true });
    expect(text.slice('Ä.wav'.length)).toMatch(/^[\n -~]*$/);
  });
});

describe('remedies of a sheet', () => {
  it.each([
    [
      { kind: 'gap', place: 1, name: 'Two\u001b[31m', quarters: 2 },
      'half a turn more before track 2, Two\\u{1b}[31m,',
    ],
    [
      { kind: 'track-outward', name: 'Three', from: 2, to: 0, order: [2, 0, 1] },
      'track 3, Three, moved to place 1',
    ],
    [{ kind: 'order', order: [2, 0, 1] }, 'running order 3-1-2'],
  ] as const)('are said with the number that the sheet gives a track: %j', (remedy, says) => {
    expect(remedyText(remedy, fit.settings, 'metric')).toBe(says);
    const [weighed] = fit.remedies;
    if (weighed === undefined) throw new Error('no remedy');
    const document = fitDocument(
      [fitToJson({ ...fit, remedies: [{ ...weighed, remedy }] })],
      [],
      '0.0.0',
    );
    expect(fitSchema.safeParse(JSON.parse(JSON.stringify(document))).success).toBe(true);
  });
});

describe('the JSON of a fit', () => {
  it('keeps to its schema and writes each level, limit and remedy once', () => {
    const document = fitDocument([fitToJson(fit)], [], '0.0.0');
    const parsed = fitSchema.parse(JSON.parse(JSON.stringify(document)));
    const [side] = parsed.sides;
    expect(side?.levels.length).toBe(25);
    expect(side?.remedies.length).toBe(fit.remedies.length);
    expect(side?.leastSet?.left).toEqual([]);
    expect(side?.limits.map(({ costsDb }) => costsDb ?? 0)).toBeWithin(
      fit.limits.map(({ levelDb, withoutDb }) => withoutDb - levelDb),
      0.005,
    );
    expect(side?.sentence).toBe(fitSentence(fit, 'metric'));
  });
});
