/** Red, green and blue, 0 … 255. */
export type Rgb = readonly [red: number, green: number, blue: number];

/** The page's colours as a canvas needs them; names as in the style sheet. */
export interface Ink {
  readonly paper: Rgb;
  readonly ink: Rgb;
  readonly landGood: Rgb;
  readonly landLow: Rgb;
  readonly overcut: Rgb;
}

/** Reads the colours that hold at this moment, in whatever notation the style sheet has them. */
export function readInk(document: Document): Ink {
  const style = getComputedStyle(document.documentElement);
  const pen = document.createElement('canvas').getContext('2d', { willReadFrequently: true });
  const colour = (name: string): Rgb => {
    if (pen === null) return [0, 0, 0];
    pen.fillStyle = style.getPropertyValue(name);
    pen.fillRect(0, 0, 1, 1);
    const [red = 0, green = 0, blue = 0] = pen.getImageData(0, 0, 1, 1).data;
    return [red, green, blue];
  };
  return {
    paper: colour('--paper'),
    ink: colour('--ink'),
    landGood: colour('--land-good'),
    landLow: colour('--land-low'),
    overcut: colour('--overcut'),
  };
}

/** A share of 0 is `one`, of 1 `other`. */
export function mix(one: Rgb, other: Rgb, share: number): Rgb {
  const part = (from: number, to: number) => from + (to - from) * share;
  return [part(one[0], other[0]), part(one[1], other[1]), part(one[2], other[2])];
}

export function rgbText(colour: Rgb): string {
  return `rgb(${colour.map((part) => Math.round(part)).join(' ')})`;
}
