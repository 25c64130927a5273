import type { ExecutedColumns } from '../model/executed-columns.js';
import type { Settings } from '../settings.js';
import type { Seconds } from '../units.js';
import { type HardSecond, LOOKS, worstSecond } from './worst-second.js';

/** How many are cut as a test. */
const PASSAGES = 5;

/** A stretch of the program with what is hard in it, the hardest first. */
export interface HardPassage {
  readonly fromSeconds: Seconds;
  readonly untilSeconds: Seconds;
  readonly seconds: readonly HardSecond[];
}

/**
 * The five hardest passages, in time order: hard seconds with one turn before and one after. First
 * the worst second of each kind, then the next worst of each in turn, as long as they lie clear of
 * those that are taken. Where two of the worst lie side by side they are one passage. Fewer where
 * there is not so much that is hard; none in silence.
 */
export function hardestPassages(columns: ExecutedColumns, settings: Settings): HardPassage[] {
  let passages: readonly HardPassage[] = [];
  for (const look of LOOKS) {
    const worst = worstSecond(look, columns, settings, () => true);
    if (worst !== null) passages = withPassage(passages, around(worst, columns));
  }
  let isMore = true;
  while (isMore && passages.length < PASSAGES) {
    isMore = false;
    for (const look of LOOKS) {
      const isClear = (at: Seconds) => touching(passages, spanAround(at, columns)).length === 0;
      const next = worstSecond(look, columns, settings, isClear);
      if (next === null || passages.length >= PASSAGES) continue;
      passages = withPassage(passages, around(next, columns));
      isMore = true;
    }
  }
  return passages.toSorted((one, other) => one.fromSeconds - other.fromSeconds);
}

type Span = Pick<HardPassage, 'fromSeconds' | 'untilSeconds'>;

/** Within the program: before and behind it the side itself is silent. */
function spanAround(atSeconds: Seconds, { turnSeconds, durationSeconds }: ExecutedColumns): Span {
  return {
    fromSeconds: Math.max(0, atSeconds - 0.5 - turnSeconds),
    untilSeconds: Math.min(durationSeconds, atSeconds + 0.5 + turnSeconds),
  };
}

function around(second: HardSecond, columns: ExecutedColumns): HardPassage {
  return { ...spanAround(second.atSeconds, columns), seconds: [second] };
}

/** Added as one with those that it touches. */
function withPassage(passages: readonly HardPassage[], added: HardPassage): HardPassage[] {
  const touched = touching(passages, added);
  if (touched.length === 0) return [...passages, added];
  const whole = [...touched, added];
  const joined = {
    fromSeconds: Math.min(...whole.map(({ fromSeconds }) => fromSeconds)),
    untilSeconds: Math.max(...whole.map(({ untilSeconds }) => untilSeconds)),
    seconds: whole.flatMap(({ seconds }) => seconds),
  };
  const others = passages.filter((passage) => !touched.includes(passage));
  return withPassage(others, joined);
}

function touching(passages: readonly HardPassage[], { fromSeconds, untilSeconds }: Span) {
  return passages.filter(
    (passage) => passage.fromSeconds < untilSeconds && fromSeconds < passage.untilSeconds,
  );
}
