import * as z from 'zod';

/** Numbers as they are written, each with its unit; null where there is no finite value. */

const measure = (unit: string) => z.number().nullable().describe(unit);

export const um = measure('µm, to 0.01');
export const mm = measure('mm, to 0.001');
export const mil = measure('thousandths of an inch, to 0.001');
export const lpi = measure('lines per inch, to 0.01');
export const db = measure('dB, to 0.01');
export const hz = measure('Hz, to 0.1');
export const ratio = measure('ratio, to 0.0001');
export const meanSquareAcceleration = measure('(m/s²)², to 1');
export const percent = measure('%, to 0.01');
export const duration = measure('how long, seconds, to 0.001');
export const place = measure(
  'where, seconds from the first sample of the program, to 0.001; negative in the turn before it',
);
export const turnCount = measure('turns from the first sample of the program, to 0.001');
export const wall = z
  .enum(['left', 'right', 'both'])
  .describe('left: the inner wall, right: the outer wall');
