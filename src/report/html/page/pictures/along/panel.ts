import { BINS_PER_QUARTER } from '../../../../../analysis/motion.js';
import { quarterStart } from '../../../../../model/planned-side.js';
import type { PageSide } from '../../page-side.js';
import type { Row } from './column-extremes.js';

/** Whose a line is, or what it shows besides; each has its own ink and stroke. */
export type LineInk = 'machine' | 'plan' | 'fixed' | 'second';

export interface PanelLine {
  readonly name: string;
  readonly ink: LineInk;
  readonly row: Row;
  readonly shows: 'least' | 'most' | 'both';
  /** What is told at the cursor, where that is not the row itself. */
  readonly told?: Row;
}

export interface PanelLimit {
  readonly name: string;
  readonly value: number;
}

/** One quantity along the side. */
export interface Panel {
  readonly id: 'pitch' | 'land' | 'width' | 'depth' | 'bend' | 'facet' | 'low-band';
  readonly title: string;
  readonly lines: readonly PanelLine[];
  readonly limits: readonly PanelLimit[];
  /** Which of the lines the verdict is about. */
  readonly judged: number;
  /** Least and largest value that the axis shows; what lies beyond is drawn at its edge. */
  readonly domain: readonly [low: number, high: number];
  /** What the axis counts in. */
  readonly scale: 'length' | 'pitch' | 'percent' | 'ratio';
  readonly valueText: (value: number) => string;
}

/** Values of the planned quarters. */
export function quarterRow(side: PageSide['side'], values: Float64Array): Row {
  return { values, from: quarterStart(side, 0), step: side.quarterSeconds };
}

/** Values of the quarters that the program touches. */
export function programRow(side: PageSide['side'], values: Float64Array): Row {
  return { values, from: 0, step: side.quarterSeconds };
}

/** Values of the bins of the planned quarters. */
export function binRow(side: PageSide['side'], values: Float64Array): Row {
  return { values, from: quarterStart(side, 0), step: side.quarterSeconds / BINS_PER_QUARTER };
}

/** 0 for no finite value at all. */
export function largest(...rows: readonly Float64Array[]): number {
  let most = Number.NEGATIVE_INFINITY;
  for (const row of rows) for (const value of row) if (value > most) most = value;
  return Number.isFinite(most) ? most : 0;
}
