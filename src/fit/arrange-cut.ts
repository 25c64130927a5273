import { arrangeProgram } from '../program/arrange-program.js';
import { timeShift } from '../program/time-shift.js';
import type { Seconds } from '../units.js';
import type { Cut } from './apply-remedies.js';
import type { Remedy } from './remedy.js';

type TimeShift = (atSeconds: Seconds) => Seconds;

/** The tracks of a sheet's side otherwise, as remedies have them; more silence belongs to places. */
export function arrangeCut(cut: Cut, remedies: readonly Remedy[]): Cut {
  const { program, settings } = cut;
  if (program === null) return cut;
  let order = program.tracks.map((_, at) => at);
  const added = order.map(() => 0);
  let isOther = false;
  for (const remedy of remedies) {
    if (remedy.kind === 'gap') added[remedy.place] = (remedy.quarters * 60) / settings.rpm / 4;
    else if (remedy.kind === 'order' || remedy.kind === 'track-outward') order = [...remedy.order];
    else continue;
    isOther = true;
  }
  if (!isOther) return cut;
  const arranged = arrangeProgram(program, { order, added });
  return { ...cut, program: arranged, hand: arranged.hand, order };
}

/** How much later what lies at a time of a side lies in the arranged one. */
export function laterIn(given: Cut, arranged: Cut): TimeShift {
  if (arranged.program === given.program) return () => 0;
  return timeShift(given.hand.tracks, arranged.hand.tracks, (at) => arranged.order.indexOf(at));
}

/** How much earlier what lies at a time of a changed side lay in the given one. */
export function earlierIn(given: Cut, changed: Cut): TimeShift {
  if (changed.program === given.program) {
    const quarters = changed.silence - given.silence;
    const seconds = (quarters * 60) / changed.settings.rpm / 4;
    return () => seconds;
  }
  // What is set by hand comes later with the silence, and the tracks with it.
  const { order, hand } = changed;
  const shift = timeShift(hand.tracks, given.hand.tracks, (place) => order[place] ?? place);
  return (atSeconds) => -shift(atSeconds);
}

/** The seconds of a local remedy go with the track that their middle lies in. */
export function movedRemedy(remedy: Remedy, later: TimeShift): Remedy {
  if (!('fromSeconds' in remedy)) return remedy;
  const { fromSeconds, untilSeconds } = remedy;
  const shift = later((fromSeconds + untilSeconds) / 2);
  return { ...remedy, fromSeconds: fromSeconds + shift, untilSeconds: untilSeconds + shift };
}
