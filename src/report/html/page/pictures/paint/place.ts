import { QUARTERS_PER_TURN } from '../../../../../analysis/motion.js';
import { quartersIn, valueAt } from '../../../../../model/nodes.js';
import { quarterStart } from '../../../../../model/planned-side.js';
import { diameterText, lengthText } from '../../../../length-text.js';
import { placeText } from '../../../../place-text.js';
import type { PageSide } from '../../page-side.js';

/** All that is planned, the silent turns included; program time. */
export function wholeSpan({ side }: PageSide): { readonly from: number; readonly until: number } {
  return { from: quarterStart(side, 0), until: quarterStart(side, side.count) };
}

/** Which planned quarter a time lies in; the nearest one for times outside of all. */
export function quarterAt({ side }: PageSide, atSeconds: number): number {
  const quarter = Math.floor(quartersIn(side, atSeconds) + 1e-9);
  return Math.min(Math.max(quarter, 0), side.count - 1);
}

/** Diameter of the spiral that is cut, m. */
export function diameterAt({ side, executed }: PageSide, atSeconds: number): number {
  return 2 * valueAt(side, executed.plan.radius, atSeconds);
}

/** Least land of the quarter turn that is cut at a time, m. */
export function landAt(page: PageSide, atSeconds: number): number {
  return page.executed.land[quarterAt(page, atSeconds)] ?? Number.NaN;
}

/** A place in words: `02:24.1, turn 108 · diameter 139.6 mm · land −4.8 µm`. */
export function placeWords(page: PageSide, atSeconds: number, land: number): string {
  return placeLines(page, atSeconds, land).join(' · ');
}

/** The same in lines; on a side of several tracks the track too. */
export function placeLines(page: PageSide, atSeconds: number, land: number): string[] {
  const track = page.side.hand.tracks.find(
    ({ fromSeconds, untilSeconds }) => atSeconds >= fromSeconds && atSeconds < untilSeconds,
  );
  return [
    placeText(atSeconds, page.settings),
    ...(track === undefined ? [] : [track.name]),
    `diameter ${diameterText(diameterAt(page, atSeconds), page.units)}`,
    `land ${lengthText(land, page.units)}`,
  ];
}

/** The place that keyboard steps lead to, within what is planned. */
export function stepped(page: PageSide, atSeconds: number, quarters: number): number {
  const { from, until } = wholeSpan(page);
  const at = atSeconds + quarters * page.side.quarterSeconds;
  // The very end belongs to no quarter any more.
  return Math.min(Math.max(at, from), until - page.side.quarterSeconds);
}

export const TURN = QUARTERS_PER_TURN;
