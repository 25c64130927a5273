import type { MotionSummary } from '../../src/analysis/motion.js';

/** Every number of a summary by its path, in a fixed order; null is NaN, true 1, false 0, a word its bytes. */
export function figuresOf(summary: MotionSummary): ReadonlyMap<string, Float64Array> {
  const figures = new Map<string, Float64Array>();
  const walk = (value: unknown, path: string): void => {
    if (ArrayBuffer.isView(value) || isRow(value)) {
      figures.set(path, Float64Array.from(Object.values(value)));
    } else if (typeof value === 'object' && value !== null) {
      for (const [name, part] of Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)))
        walk(part, `${path}.${name}`);
    } else {
      figures.set(path, numbersOf(value));
    }
  };
  walk(summary, 'summary');
  return figures;
}

function numbersOf(value: unknown): Float64Array {
  if (typeof value === 'string') return Float64Array.from(Buffer.from(value));
  return Float64Array.of(value === null ? Number.NaN : Number(value));
}

function isRow(value: unknown): value is readonly number[] {
  return Array.isArray(value) && value.every((one) => typeof one === 'number');
}

/** All of it as bytes, in which equal numbers are equal bytes. */
export function bytesOf(summary: MotionSummary): Buffer {
  return Buffer.concat(
    [...figuresOf(summary)].flatMap(([path, numbers]) => [
      Buffer.from(path),
      Buffer.from(numbers.buffer),
    ]),
  );
}
