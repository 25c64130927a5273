import type { Draw } from './draw.js';
import type { Form } from './pieces.js';

/** Floats that no converter gives: no number, infinite, subnormal, beyond and at what passes. */
const ODD_FLOATS: readonly [number, ...number[]] = [
  Number.NaN,
  Number.POSITIVE_INFINITY,
  Number.NEGATIVE_INFINITY,
  5e-324,
  1e-45,
  -1e-310,
  1e-38,
  -0,
  1,
  -1,
  2 ** 31,
  -(2 ** 31) - 1024,
  3.4e38,
  1e300,
];

/** Some words of the sound are odd numbers, as floats of either length; words of PCM get their bits. */
export function samplesWrong({ bytes, order, chunks }: Form, draw: Draw): Uint8Array | null {
  const sound = chunks.find(({ id, body, end }) => isSound(id) && end - body > 16);
  if (sound === undefined) return null;
  const copy = Uint8Array.from(bytes);
  const view = new DataView(copy.buffer);
  const width = draw.pick([4, 8]);
  const head = sound.id === 'SSND' ? 8 : 0;
  const words = Math.floor((sound.end - sound.body - head) / width);
  for (let left = draw.pick([1, 1, 2, 40]); left > 0 && words > 0; left--) {
    const at = sound.body + head + width * draw.below(words);
    const value = draw.pick(ODD_FLOATS);
    if (width === 4) view.setFloat32(at, value, order === 'little');
    else view.setFloat64(at, value, order === 'little');
  }
  return copy;
}

function isSound(id: string): boolean {
  return id === 'data' || id === 'SSND';
}
