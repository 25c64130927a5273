import { openedPitch } from '../model/fit-open-pitch.js';
import { planSide } from '../model/plan.js';
import type { PlannedSide } from '../model/planned-side.js';
import type { Planner } from '../settings.js';
import { type Ladder, wholeQuarters } from './local-ladders.js';
import { faultsOf, type Passage } from './passages.js';
import type { Remedy } from './remedy.js';

/** What a quarter turn that a ramp begins or ends in may take from the advance: a little more. */
const MARGINS = [0, 2e-6, 5e-6, 10e-6];

/**
 * The base pitch opened by hand in a passage with too little land, over the turn before it too:
 * what is wanted there, up to the pitch control's next step, then a little more.
 */
export function pitchLadder(
  side: PlannedSide,
  planner: Planner,
  levelDb: number,
  passage: Passage,
): Ladder {
  const faults = faultsOf(passage, ['overcut', 'pitch-limit']);
  const { pitchMax, pitchStep, rpm } = side.settings;
  const spans = faults.map(({ fault }) => wholeQuarters(fault, rpm));
  const from = Math.min(...spans.map(({ fromSeconds }) => fromSeconds));
  const until = Math.max(...spans.map(({ untilSeconds }) => untilSeconds));
  const span = { fromSeconds: from, untilSeconds: until };
  const wanted =
    faults.length === 0 ? null : openedPitch(side, planSide(side, planner, levelDb), span, 0);
  if (wanted === null) return { targets: [], rungs: [] };
  const turn = 60 / rpm;
  const rungs = MARGINS.map((margin): Remedy => {
    const exact = wanted + margin;
    const pitch = pitchStep === null ? exact : Math.ceil(exact / pitchStep - 1e-9) * pitchStep;
    return {
      kind: 'pitch-there',
      fromSeconds: Math.max(0, from - turn),
      untilSeconds: until,
      pitch,
    };
  });
  return {
    targets: faults.map(({ index }) => index),
    rungs: rungs.filter((rung) => rung.kind === 'pitch-there' && rung.pitch <= pitchMax),
  };
}
