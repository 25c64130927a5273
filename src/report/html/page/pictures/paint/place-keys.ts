import type { PageSide } from '../../page-side.js';
import { stepped, TURN, wholeSpan } from './place.js';

/** Quarters that a key moves the cursor by. */
const STEPS: Readonly<Record<string, number>> = {
  ArrowLeft: -1,
  ArrowRight: 1,
  ArrowUp: -TURN,
  ArrowDown: TURN,
  PageUp: -10 * TURN,
  PageDown: 10 * TURN,
};

/**
 * Where a key leads from a place: arrows a quarter turn or a turn, pages ten turns, Home and End to
 * the ends, N and P to the next and the previous finding; null for any other key.
 */
export function placeOfKey(page: PageSide, key: string, atSeconds: number): number | null {
  const step = STEPS[key];
  if (step !== undefined) return stepped(page, atSeconds, step);
  const { from, until } = wholeSpan(page);
  if (key === 'Home') return from;
  if (key === 'End') return until - page.side.quarterSeconds;
  if (key === 'n' || key === 'p') return neighbouringFinding(page, atSeconds, key === 'n');
  return null;
}

function neighbouringFinding(page: PageSide, atSeconds: number, isNext: boolean): number | null {
  const beyond = page.forecast.findings
    .flatMap((finding) => (finding.atSeconds === null ? [] : [finding.atSeconds]))
    .filter((at) => (isNext ? at > atSeconds + 1e-6 : at < atSeconds - 1e-6));
  if (beyond.length === 0) return null;
  return isNext ? Math.min(...beyond) : Math.max(...beyond);
}
