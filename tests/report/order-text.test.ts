import { describe, expect, test } from 'vitest';
import type { RunningOrder } from '../../src/model/forecast-types.js';
import { orderText } from '../../src/report/order-text.js';
import { sideToJson } from '../../src/report/side-json.js';
import { sideSchema } from '../../src/report/side-schema.js';
import { splitText } from '../../src/report/split-text.js';
import { forecastedFile, planWith } from '../support/forecast-fixture.js';
import { trackWith } from '../support/invented-track.js';

const ORDER: RunningOrder = {
  order: [1, 0],
  bendShareBefore: 0.01234,
  bendShare: 0.00456,
  isExhaustive: true,
};
const tracks = ['Ebb', 'Flood\n'].map((name) => trackWith({ name }));
const textOf = (order: RunningOrder | null) =>
  orderText(forecastedFile({}, { tracks, order }), 'metric');

describe('the running order', () => {
  test('is told by place and name, with what it gains, and that nothing was moved', () => {
    expect(textOf(ORDER)).toBe(
      'Running order with less bent under the 18.0 µm tip, 0.46 % instead of 1.23 % of the time: ' +
        '2 Flood\\u{a}, 1 Ebb. Nothing was moved.',
    );
  });

  test.each([
    ['no other is better', { bendShare: 0.01234 }, 'no other bends less'],
    ['none of those tried', { bendShare: 0.01234, isExhaustive: false }, 'none that was tried'],
    ['none gains what is told', { bendShare: 0.01226 }, 'no other bends less'],
    ['nothing bends', { bendShare: 0, bendShareBefore: 0 }, 'nothing bends'],
    [
      'a sample bends',
      { bendShare: 0, bendShareBefore: 9e-8 },
      'less than 0.01 % of the time bends',
    ],
  ])('says so where %s', (_, changes, part) => {
    expect(textOf({ ...ORDER, ...changes })).toContain(part);
  });

  test('says so where nothing may move, and nothing where nobody asked', () => {
    expect(textOf(null)).toContain('fewer than two');
    expect(orderText(forecastedFile(), 'metric')).toBe('');
  });

  test('is in the JSON as places, rounded', () => {
    const json = (order?: RunningOrder | null) =>
      sideToJson(forecastedFile({}, { tracks, ...(order === undefined ? {} : { order }) }), {
        quarters: false,
      });
    expect(sideSchema.safeParse(json(ORDER)).error).toBeUndefined();
    expect(json(ORDER).order).toEqual({
      tracks: [1, 0],
      bendShareBefore: 0.0123,
      bendShare: 0.0046,
      isExhaustive: true,
    });
    expect(json(null).order).toBeNull();
    expect(json()).not.toHaveProperty('order');
  });
});

describe('unbalanced sides', () => {
  /** A side from 290 mm inwards whose tracks end at these diameters, mm; 2 mm more behind the last. */
  function sideWith(names: readonly string[], endsMm: readonly number[]) {
    const machine = planWith({
      startDiameter: 0.29,
      endDiameter: (endsMm.at(-1) ?? 0) / 1000 - 0.002,
    });
    const placed = names.map((name, at) =>
      trackWith({ name, endDiameter: (endsMm[at] ?? 0) / 1000 }),
    );
    return forecastedFile({}, { tracks: placed, machine });
  }
  const full = sideWith(['Ebb', 'Flood', 'Spring', 'Neap'], [260, 230, 200, 170]);
  const short = sideWith(['Slack'], [262]);

  test('are said so, with what they take and where to part them', () => {
    // 15, 15, 15 and 16 mm, and 15 mm: 61 and 15, or 45 and 31.
    expect(splitText([full, short], 'metric')).toBe(
      'The sides are unbalanced: they take 61.0 mm, 15.0 mm of radius. With a new side from “Neap” ' +
        'on, the fullest takes 45.0 mm.',
    );
  });

  test.each([
    ['balanced', [full, full]],
    ['of one file', [full, forecastedFile()]],
    ['a single one', [full]],
    ['of different speeds', [full, { ...short, settings: { ...short.settings, rpm: 45 } }]],
  ])('are not spoken of where they are %s', (_, files) => {
    expect(splitText(files, 'metric')).toBe('');
  });
});
