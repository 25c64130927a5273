import type { ForecastedFile } from '../../forecast-result.js';
import { findingLines } from './caution-sections.js';

/** How the rows of a page are set: in larger type where there are few. */
export interface RowType {
  readonly className: string;
  /** Rows that there is room for. */
  readonly most: number;
}

/** Millimetres that a row takes in each type, border included; see CUT_SHEET_STYLE. */
const TYPES = [
  { className: '', height: 4.95 },
  { className: ' dense', height: 3.8 },
  { className: ' dense full', height: 3.15 },
];
/** Millimetres for rows on a page with nothing under the microscope and nothing to look out for. */
const ROOM = 154;
const SPOT = 6.65;
const FINDING_LINE = 3.8;

/** The largest type in which so many rows fit, else the smallest with as many as it holds. */
export function rowType(rows: number, { forecast }: ForecastedFile): RowType {
  const room =
    ROOM - SPOT * forecast.hotSpots.length - FINDING_LINE * findingLines(forecast.findings);
  const types = TYPES.map(({ className, height }) => ({
    className,
    most: Math.floor(room / height),
  }));
  return types.find(({ most }) => rows <= most) ?? { className: '', most: 1, ...types.at(-1) };
}
