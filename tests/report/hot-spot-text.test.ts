import { expect, test } from 'vitest';
import type { HotSpot } from '../../src/model/forecast-types.js';
import { hotSpotText } from '../../src/report/hot-spot-text.js';
import { forecastedFile } from '../support/forecast-fixture.js';

const { settings, forecast } = forecastedFile();
const [spot] = forecast.hotSpots;

function textOf(changes: Partial<HotSpot>): string {
  return hotSpotText({ ...spot!, ...changes }, settings, 'metric');
}

test.each([
  ['lateral-low', 57, 'sideways bass, 57 Hz'],
  ['lateral-high', 440, 'sideways, 440 Hz'],
  ['lateral-high', 7400, 'sideways, 7.4 kHz'],
  ['vertical', null, 'vertical motion;'],
] as const)('%s at %d Hz reads: %s', (cause, frequency, text) => {
  expect(textOf({ cause, frequency })).toContain(text);
  expect(textOf({ cause, frequency })).not.toContain('treble');
});

const survives = { speed: 0.0012, depth: 2.1e-6, delay: 0.5 };

test('what is left of land survives on any lathe within the tolerances', () => {
  expect(textOf({ survives })).toContain('; holds to ±0.12 % speed, ±2.1 µm depth, 0.50 s late.');
});

test('an overcut by tolerances would survive something on a perfect lathe only', () => {
  const text = textOf({ land: -2e-6, landNominal: 4.2e-6, survives });
  expect(text).toContain('; on a perfect lathe it would hold to ±0.12 % speed');
});

test('an overcut on a perfect lathe survives nothing, and nothing is told', () => {
  const none = { speed: 0, depth: 0, delay: 0 };
  expect(textOf({ land: -8e-6, landNominal: -2e-6, survives: none })).not.toContain('hold');
});

test('a delay that holds for two turns and more is not told', () => {
  expect(textOf({ survives: { ...survives, delay: null } })).not.toContain('late.');
});

test('at half speed the lathe may be late by twice the seconds of its own clock', () => {
  const half = { ...settings, speedFactor: 0.5 };
  expect(hotSpotText({ ...spot!, survives }, half, 'metric')).toContain('1.00 s late');
});
