import { judge } from '../model/fit-judge.js';
import { headroom } from '../model/level.js';
import { plannedSide } from '../model/planned-side.js';
import type { Planner } from '../settings.js';
import type { MeasuredSide } from './measured-side.js';
import { isBeyondCutting } from './side-wide.js';
import type { Patient } from './trial.js';

/** A measured side as it is planned, without any remedy. */
export function patientOf(measured: MeasuredSide, planner: Planner, levelDb: number): Patient {
  const { motion, sound, source, hand, settings, program } = measured;
  const side = plannedSide(motion, settings, hand);
  const judgement = judge(side, planner, levelDb, source);
  return {
    cut: {
      settings,
      hand,
      levelDb,
      baked: {},
      edits: [],
      silence: 0,
      program,
      order: program === null ? [] : [...program.tracks.keys()],
    },
    planner,
    source,
    side,
    judgement,
    headroom: headroom(side, planner),
    faults: judgement.faults.filter((fault) => !isBeyondCutting(fault)),
    sound,
  };
}
