import type { Ink } from './chart-ink.js';

/** One row of a band: from `top` down to `bottom`, in the unit of the values. */
export interface BandRow {
  readonly label: string;
  readonly top: number;
  readonly bottom: number;
  /** Drawn along the foot of the row where no dot is. */
  readonly rule: '_' | '_ ' | '';
}

/**
 * A band of the chart, a line a row, each so many cells long: one dot a point, values beyond the
 * first and the last row on their edges. `under` shows in the cells that have none.
 */
export function chartBand(
  rows: readonly BandRow[],
  points: readonly number[],
  ink: Ink,
  under: readonly number[] = [],
): string[] {
  const cells = points.length / ink.across;
  const dots = points.map((value) => dotOf(value, rows, ink));
  const others = under.map((value) => dotOf(value, rows, ink)?.row);
  return rows.map(({ rule }, row) =>
    Array.from({ length: cells }, (_, cell) => {
      let bits = 0;
      for (let across = 0; across < ink.across; across++) {
        const dot = dots[cell * ink.across + across];
        if (dot?.row === row) bits |= 1 << (dot.down * ink.across + across);
      }
      if (bits !== 0) return ink.glyph(bits);
      const isOther = others.slice(cell * ink.across, (cell + 1) * ink.across).includes(row);
      return isOther ? ink.other : (rule[cell % Math.max(1, rule.length)] ?? ' ');
    }).join(''),
  );
}

interface Dot {
  readonly row: number;
  readonly down: number;
}

/** Where the dot of a value lies; none for what is not finite. */
function dotOf(value: number, rows: readonly BandRow[], ink: Ink): Dot | null {
  if (!Number.isFinite(value)) return null;
  const found = rows.findIndex(({ bottom }) => value >= bottom);
  const row = found < 0 ? rows.length - 1 : found;
  const { top = 0, bottom = 0 } = rows[row] ?? {};
  const share = top > bottom ? (top - value) / (top - bottom) : 0.5;
  const down = Math.floor(share * ink.down);
  return { row, down: Math.min(ink.down - 1, Math.max(0, down)) };
}
