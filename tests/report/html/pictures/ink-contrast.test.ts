import { describe, expect, it, test } from 'vitest';
import { contrast, DEFICIENCIES, inkOf, lightness, VISIONS } from './ink-vision.js';

/** WCAG 2.2, 1.4.3 and 1.4.11; from memory. */
const TEXT = 4.5;
const GRAPHICS = 3;
/** Of L*; common practice, no published source: two are the least that is seen side by side. */
const APART = 7;

const TEXT_INKS = ['ink', 'ink-soft', 'overcut', 'machine', 'plan', 'mark'];

describe.each(VISIONS)('told by %s', (_, luminance) => {
  describe.each(['light', 'dark'] as const)('the %s scheme', (scheme) => {
    const of = (name: string) => luminance(inkOf(scheme, name));

    it.each(TEXT_INKS)('has a --%s that can be read on both papers', (name) => {
      for (const paper of ['paper', 'paper-raised']) {
        expect(contrast(of(name), of(paper))).toBeGreaterThan(TEXT);
      }
    });

    it('has marks of cautions that are seen on paper', () => {
      expect(contrast(of('land-low'), of('paper'))).toBeGreaterThan(GRAPHICS);
    });

    it('shades little land, an overcut and the land between unlike one another', () => {
      const shades = ['land-good', 'land-low', 'overcut'].map((name) => lightness(of(name)));
      const [good = 0, low = 0, overcut = 0] = shades;
      expect(Math.abs(low - overcut)).toBeGreaterThan(APART);
      expect(Math.abs(good - low)).toBeGreaterThan(APART);
      expect(Math.sign(low - good)).toBe(Math.sign(overcut - low));
    });
  });
});

test('an eye that sees fewer colours sees the same greys', () => {
  for (const [, matrix] of DEFICIENCIES) {
    for (const row of matrix) expect(row.reduce((sum, part) => sum + part)).toBeWithin(1, 2e-6);
  }
});

test('contrast is 21 between black and white, and 4.54 at the grey that just can be read', () => {
  const [[, luminance] = ['', () => 0] as const] = VISIONS;
  expect(contrast(luminance([0, 0, 0]), luminance([255, 255, 255]))).toBeWithin(21, 1e-9);
  expect(contrast(luminance([118, 118, 118]), luminance([255, 255, 255]))).toBeWithin(4.54, 0.005);
});
