import { describe, expect, test } from 'vitest';
import type { Rgb } from '../../../../src/report/html/page/pictures/paint/ink.js';
import { landTone } from '../../../../src/report/html/page/pictures/unrolled/land-tone.js';
import { settingsWith } from '../../../support/model-settings.js';
import { inkOf, lightness, VISIONS } from './ink-vision.js';

/** Of L*: an edge that is seen without being looked for; common practice, no published source. */
const LEAST_STEP = 8;
const [[, grey] = ['', () => 0] as const] = VISIONS;

describe.each(['light', 'dark'] as const)('the inks of the %s scheme', (scheme) => {
  const settings = settingsWith();
  const ink = {
    paper: inkOf(scheme, 'paper'),
    ink: inkOf(scheme, 'ink'),
    landGood: inkOf(scheme, 'land-good'),
    landLow: inkOf(scheme, 'land-low'),
    overcut: inkOf(scheme, 'overcut'),
  };
  const { toneOf, named } = landTone(ink, settings);
  const [none, least, unmodulated, plenty] = named;

  test('go from the paper’s lightness towards the ink’s with less and less land', () => {
    const towards = Math.sign(inGrey(ink.ink) - inGrey(ink.paper));
    for (let step = 0; step < 400; step++) {
      const land = plenty - (step / 400) * (plenty + 2 * least);
      const less = land - (plenty + 2 * least) / 400;
      const change = towards * (inGrey(toneOf(less)) - inGrey(toneOf(land)));
      // Between two inks of nearly one lightness rounding may take back a little.
      expect(change).toBeGreaterThan(-0.1);
    }
  });

  test.each(VISIONS)(
    'step at landMin and at 0, so that %s tells enough, little and overcut apart',
    (_, luminance) => {
      for (const limit of [none, least]) {
        const [at, under] = [limit, limit - 2e-9].map((land) => lightness(luminance(toneOf(land))));
        expect(Math.abs((at ?? 0) - (under ?? 0))).toBeGreaterThan(LEAST_STEP);
      }
    },
  );

  test('are paper where there is plenty, and tell an unmodulated groove from it', () => {
    expect(toneOf(plenty + 1e-6)).toEqual(ink.paper);
    expect(Math.abs(inGrey(toneOf(unmodulated)) - inGrey(ink.paper))).toBeGreaterThan(8);
  });
});

test('the lightness used here is 0 for black, 53.585 for sRGB 128 and 100 for white', () => {
  expect(inGrey([0, 0, 0])).toBeWithin(0, 1e-9, 0);
  expect(inGrey([128, 128, 128])).toBeWithin(53.585, 0.001, 0);
  expect(inGrey([255, 255, 255])).toBeWithin(100, 1e-3, 0);
});

function inGrey(colour: Rgb): number {
  return lightness(grey(colour));
}
