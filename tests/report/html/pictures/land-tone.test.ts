import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Ink, Rgb } from '../../../../src/report/html/page/pictures/paint/ink.js';
import { landTone } from '../../../../src/report/html/page/pictures/unrolled/land-tone.js';
import { settingsWith } from '../../../support/model-settings.js';

// Lightness is that of CIE 15 (L*, D65) over the linear light of IEC 61966-2-1 (sRGB); both from
// memory, held to the black, mid grey and white that they are known to give.

const css = readFileSync(
  new URL('../../../../src/report/html/page/paper.css', import.meta.url),
  'utf8',
);

describe.each(['light', 'dark'])('the inks of the %s scheme', (scheme) => {
  const settings = settingsWith();
  const ink = inkOf(scheme);
  const { toneOf, named } = landTone(ink, settings);
  const [none, least, unmodulated, plenty] = named;

  test('go from the paper’s lightness towards the ink’s with less and less land', () => {
    const towards = Math.sign(lightness(ink.ink) - lightness(ink.paper));
    for (let step = 0; step < 400; step++) {
      const land = plenty - (step / 400) * (plenty + 2 * least);
      const less = land - (plenty + 2 * least) / 400;
      const change = towards * (lightness(toneOf(less)) - lightness(toneOf(land)));
      // Between two inks of nearly one lightness rounding may take back a little.
      expect(change).toBeGreaterThan(-0.1);
    }
  });

  test('step at landMin and at 0, so that grey tells enough, little and overcut apart', () => {
    for (const limit of [none, least]) {
      const step = lightness(toneOf(limit)) - lightness(toneOf(limit - 2e-9));
      expect(Math.abs(step)).toBeGreaterThan(5);
    }
  });

  test('are paper where there is plenty, and tell an unmodulated groove from it', () => {
    expect(toneOf(plenty + 1e-6)).toEqual(ink.paper);
    expect(Math.abs(lightness(toneOf(unmodulated)) - lightness(ink.paper))).toBeGreaterThan(8);
  });
});

test('the lightness used here is 0 for black, 53.585 for sRGB 128 and 100 for white', () => {
  expect(lightness([0, 0, 0])).toBeWithin(0, 1e-9, 0);
  expect(lightness([128, 128, 128])).toBeWithin(53.585, 0.001, 0);
  expect(lightness([255, 255, 255])).toBeWithin(100, 1e-3, 0);
});

/** The colours of the first or the second block of custom properties. */
function inkOf(scheme: string): Ink {
  const text = scheme === 'light' ? css : css.slice(css.indexOf('prefers-color-scheme: dark'));
  const colour = (name: string): Rgb => {
    const [, red = '', green = '', blue = ''] =
      new RegExp(`--${name}: #(..)(..)(..);`).exec(text) ?? [];
    return [Number.parseInt(red, 16), Number.parseInt(green, 16), Number.parseInt(blue, 16)];
  };
  return {
    paper: colour('paper'),
    ink: colour('ink'),
    landGood: colour('land-good'),
    landLow: colour('land-low'),
    overcut: colour('overcut'),
  };
}

function lightness(colour: Rgb): number {
  const [red, green, blue] = colour.map((part) => {
    const share = part / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  const y = 0.2126 * (red ?? 0) + 0.7152 * (green ?? 0) + 0.0722 * (blue ?? 0);
  return y > (6 / 29) ** 3 ? 116 * Math.cbrt(y) - 16 : (29 / 3) ** 3 * y;
}
