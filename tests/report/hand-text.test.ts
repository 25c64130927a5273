import { describe, expect, test } from 'vitest';
import type { HandSettings } from '../../src/model/side-plan-input.js';
import { NOTHING_BY_HAND } from '../../src/model/side-plan-input.js';
import { handText } from '../../src/report/hand-text.js';
import { setUp } from '../../src/report/set-up.js';
import { setUpText } from '../../src/report/set-up-text.js';
import { sideToJson } from '../../src/report/side-json.js';
import { sideSchema } from '../../src/report/side-schema.js';
import type { Settings } from '../../src/settings.js';
import { forecastedFile } from '../support/forecast-fixture.js';

const HAND: HandSettings = {
  ...NOTHING_BY_HAND,
  basePitch: [
    { fromSeconds: 0, pitch: 0.0254 / 250 },
    { fromSeconds: 185, pitch: 0.0254 / 200 },
  ],
  baseWidth: [{ fromSeconds: 200.04, width: 60e-6 }],
  bands: [
    { fromSeconds: 252.5, untilSeconds: 253.5, pitch: 1.5e-3 },
    { fromSeconds: 481, untilSeconds: 482, pitch: 1.5e-3 },
    { fromSeconds: 600, untilSeconds: 600.5, pitch: 1e-3 },
  ],
};

function fileWith(hand: HandSettings | undefined, changes: Partial<Settings> = {}) {
  const settings = { ...forecastedFile().settings, ...changes };
  return forecastedFile({ settings, ...(hand === undefined ? {} : { hand }) });
}

describe('what is done by hand', () => {
  test('is told in the order of the dials, each with its times; the start is dialled in before', () => {
    expect(handText(fileWith(HAND), 'metric')).toBe(
      'By hand: base pitch 200 LPI (127 µm) from 03:05.0; groove 2.36 mil (60.0 µm) from 03:20.0; ' +
        'markers of 1.5 mm a turn at 04:12.5 for 1 s, 08:01.0 for 1 s; ' +
        'markers of 1.0 mm a turn at 10:00.0 for 0.5 s.',
    );
  });

  test('is in steps of the control, and as the meter reads', () => {
    const depthMeter = [
      { reading: 10, width: 50e-6 },
      { reading: 20, width: 70e-6 },
    ];
    const text = handText(fileWith(HAND, { pitchStep: 5e-6, depthMeter }), 'metric');
    expect(text).toContain('base pitch 130 µm (195.3 LPI)');
    expect(text).toContain('groove 2.36 mil (60.0 µm), depth meter 15, from');
  });

  test('at half speed goes by both clocks, and a marker lasts as long as the lathe does', () => {
    const text = handText(fileWith(HAND, { speedFactor: 0.5 }), 'us');
    expect(text).toContain('from 03:05.0 (lathe 06:10.0)');
    expect(text).toContain('at 04:12.5 (lathe 08:25.0) for 2 s');
  });

  test('has the trims and fades of a sheet, which the files as they came do not have', () => {
    const trim = { gainDb: -2, fadeInSeconds: 0, fadeOutSeconds: 4 };
    const tracks = [
      { name: 'Ebb', fromSeconds: 0, untilSeconds: 180, trim },
      { name: 'Flood', fromSeconds: 182, untilSeconds: 300, trim: { ...trim, fadeOutSeconds: 0 } },
      { name: 'Slack', fromSeconds: 302, untilSeconds: 400 },
    ];
    expect(handText(fileWith({ ...NOTHING_BY_HAND, tracks }), 'metric')).toBe(
      'By hand: trim -2.0 dB from 00:00.0; fade out over 4 s from 02:56.0; ' +
        'trim 0.0 dB from 05:02.0.',
    );
    const half = fileWith({ ...NOTHING_BY_HAND, tracks }, { speedFactor: 0.5 });
    expect(handText(half, 'metric')).toContain('over 8 s from 02:56.0 (lathe 05:52.0)');
  });

  test('is nothing on a side without a sheet, or with a sheet that sets nothing', () => {
    expect(handText(fileWith(undefined), 'metric')).toBe('');
    expect(handText(fileWith(NOTHING_BY_HAND), 'metric')).toBe('');
  });

  test('is in the JSON, rounded, and not there without a sheet', () => {
    const json = sideToJson(fileWith(HAND), { quarters: false });
    expect(sideSchema.safeParse(json).error).toBeUndefined();
    expect(json.hand).toMatchObject({
      basePitch: [
        { fromSeconds: 0, pitchUm: 101.6 },
        { fromSeconds: 185, pitchUm: 127 },
      ],
      baseWidth: [{ fromSeconds: 200.04, widthUm: 60 }],
    });
    expect(json.hand?.bands).toHaveLength(3);
    expect(sideToJson(fileWith(undefined), { quarters: false })).not.toHaveProperty('hand');
  });
});

test('what holds from the first sample on is what is dialled in', () => {
  const width = [{ fromSeconds: 0, width: 65e-6 }];
  const file = fileWith({ ...HAND, baseWidth: width });
  expect(setUp(file)).toMatchObject({ basePitch: 0.0254 / 250, width: 65e-6 });
  expect(setUpText(file, 'metric')).toContain('base pitch 250 LPI');
  expect(setUp(fileWith({ ...HAND, basePitch: HAND.basePitch.slice(1) })).basePitch).toBe(
    0.0254 / 300,
  );
});
