import { readFileSync } from 'node:fs';
import type { Rgb } from '../../../../src/report/html/page/pictures/paint/ink.js';

// Light is linear by IEC 61966-2-1 (sRGB), lightness L* by CIE 15 (D65), contrast by WCAG 2.2; from
// memory, as are the matrices of Machado, Oliveira and Fernandes, "A Physiologically-based Model for
// Simulation of Color Vision Deficiency" (2009), severity 1.0, over linear light. Each row of one
// adds up to 1: who sees fewer colours sees the same greys.

const css = readFileSync(
  new URL('../../../../src/report/html/page/paper.css', import.meta.url),
  'utf8',
);

type Matrix = readonly (readonly [number, number, number])[];

export const DEFICIENCIES: readonly (readonly [name: string, matrix: Matrix])[] = [
  [
    'an eye without long cones',
    [
      [0.152286, 1.052583, -0.204868],
      [0.114503, 0.786281, 0.099216],
      [-0.003882, -0.048116, 1.051998],
    ],
  ],
  [
    'an eye without middle cones',
    [
      [0.367322, 0.860646, -0.227968],
      [0.280085, 0.672501, 0.047413],
      [-0.01182, 0.04294, 0.968881],
    ],
  ],
  [
    'an eye without short cones',
    [
      [1.255528, -0.076749, -0.178779],
      [-0.078411, 0.930809, 0.147602],
      [0.004733, 0.691367, 0.3039],
    ],
  ],
];

/** How colours come to be told apart: the luminance of one, 0 … 1. */
export type Vision = (colour: Rgb) => number;

/** Lightness alone is what grey tells, and what is told of each colour by all eyes. */
export const VISIONS: readonly (readonly [name: string, luminance: Vision])[] = [
  ['grey', (colour) => luminance(linear(colour))],
  ...DEFICIENCIES.map(
    ([name, matrix]) => [name, (colour: Rgb) => luminance(seen(matrix, linear(colour)))] as const,
  ),
];

/** A custom property of the page in one of its schemes. */
export function inkOf(scheme: 'light' | 'dark', name: string): Rgb {
  const text = scheme === 'light' ? css : css.slice(css.indexOf('prefers-color-scheme: dark'));
  const [, red = '', green = '', blue = ''] =
    new RegExp(`--${name}: #(..)(..)(..);`).exec(text) ?? [];
  return [Number.parseInt(red, 16), Number.parseInt(green, 16), Number.parseInt(blue, 16)];
}

/** L*, 0 … 100, of a luminance. */
export function lightness(y: number): number {
  return y > (6 / 29) ** 3 ? 116 * Math.cbrt(y) - 16 : (29 / 3) ** 3 * y;
}

/** From 1 to 21. */
export function contrast(one: number, other: number): number {
  return (Math.max(one, other) + 0.05) / (Math.min(one, other) + 0.05);
}

function linear(colour: Rgb): readonly number[] {
  return colour.map((part) => {
    const share = part / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
}

function seen(matrix: Matrix, [red = 0, green = 0, blue = 0]: readonly number[]): number[] {
  return matrix.map(([ofRed, ofGreen, ofBlue]) => {
    const part = ofRed * red + ofGreen * green + ofBlue * blue;
    return Math.min(Math.max(part, 0), 1);
  });
}

function luminance([red = 0, green = 0, blue = 0]: readonly number[]): number {
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}
