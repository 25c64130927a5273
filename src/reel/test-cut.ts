import { QUARTERS_PER_TURN } from '../analysis/motion.js';
import type { ExecutedColumns } from '../model/executed-columns.js';
import type { Settings } from '../settings.js';
import type { Metres, MetresPerTurn } from '../units.js';
import type { HardPassage } from './hardest-passages.js';
import type { HardSecond } from './worst-second.js';

/** What the microscope will find somewhere, without and with the tolerances of the lathe. */
export interface TestPlace {
  readonly quarter: number;
  /** When the lathe is as far off as the profile admits. */
  readonly land: Metres;
  /** On a perfect lathe. */
  readonly landNominal: Metres;
  readonly widthMin: Metres;
  readonly widthMax: Metres;
}

/** How a passage is cut by itself, at a fixed pitch and width, and what that leaves. */
export interface TestCut {
  readonly pitch: MetresPerTurn;
  readonly width: Metres;
  /** At the first sample of the passage, so that the hard place lies where it lies on the side. */
  readonly startDiameter: Metres;
  /** Where the silent turns before it begin. */
  readonly silentDiameter: Metres;
  /** At the hard seconds, in the passage's order. */
  readonly places: readonly TestPlace[];
  /** Least land of the passage from its second turn on. */
  readonly least: TestPlace;
}

/**
 * A passage is cut as a test by hand: an automation would not have heard what comes before it on
 * the side. The width is what is set at the hardest place; the pitch is what the two turns that meet
 * there have between them on the side, so that the same land is left: p = land + w + approachLoose
 * + 2·depthTolerance + pitchTolerance. Where it is not land that is looked for, it is the widest
 * such pitch of the passage, so that no place is tighter than on the side. The pitch is rounded up to
 * a step of the control, and is no wider than pitchMax.
 * Land of a test: p − w − approachLoose − 2·depthTolerance − pitchTolerance, without the tolerances
 * p − w − approach. Its first turn has silence outside of it and is not told.
 */
export function testCut(
  passage: HardPassage,
  columns: ExecutedColumns,
  settings: Settings,
): TestCut | null {
  const [hardest] = passage.seconds;
  if (hardest === undefined) return null;
  const judged = judgedQuarters(passage, columns);
  const width = widthAt(hardest, columns);
  const pitch = pitchOf(hardest, judged, width, columns, settings);
  const placeAt = (quarter: number) => testPlace(quarter, pitch, width, columns, settings);
  const turnsIn = hardest.quarter / QUARTERS_PER_TURN - passage.fromSeconds / columns.turnSeconds;
  const startRadius = (columns.radius[hardest.quarter] ?? 0) + pitch * turnsIn;
  const startDiameter = 2 * startRadius;
  return {
    pitch,
    width,
    startDiameter,
    silentDiameter: startDiameter + 2 * pitch * settings.silentTurns,
    places: passage.seconds.map(({ quarter }) => placeAt(quarter)),
    least: judged
      .map(placeAt)
      .reduce(
        (least, place) => (place.land < least.land ? place : least),
        placeAt(hardest.quarter),
      ),
  };
}

/** From the second turn of the passage on; at the start of the side silence lies outside anyhow. */
function judgedQuarters(
  { fromSeconds, untilSeconds }: HardPassage,
  { quarterSeconds, land }: ExecutedColumns,
): number[] {
  const first = Math.ceil(fromSeconds / quarterSeconds - 1e-9);
  const from = fromSeconds === 0 ? 0 : first + QUARTERS_PER_TURN;
  const until = Math.min(Math.floor(untilSeconds / quarterSeconds), land.length);
  return Array.from({ length: Math.max(0, until - from) }, (_, at) => from + at);
}

/** Mean of this turn and the one outside it, as far as that is the program's. */
function widthAt({ look, quarter }: HardSecond, { widthSet }: ExecutedColumns): Metres {
  const here = widthSet[quarter] ?? 0;
  if (look !== 'land') return here;
  return (here + (widthSet[quarter - QUARTERS_PER_TURN] ?? here)) / 2;
}

function pitchOf(
  { look, quarter }: HardSecond,
  judged: readonly number[],
  width: Metres,
  { land, approachLoose }: ExecutedColumns,
  settings: Settings,
): MetresPerTurn {
  const between = (at: number) => (land[at] ?? 0) + (approachLoose[at] ?? 0);
  const places = look === 'land' ? [quarter] : [quarter, ...judged];
  const wanted = Math.max(...places.map(between)) + width + toleranceOf(settings);
  const { pitchStep, pitchMax } = settings;
  const stepped = pitchStep === null ? wanted : Math.ceil(wanted / pitchStep - 1e-9) * pitchStep;
  return Math.min(stepped, pitchMax);
}

function testPlace(
  quarter: number,
  pitch: MetresPerTurn,
  width: Metres,
  { approach, approachLoose, lift, sink }: ExecutedColumns,
  settings: Settings,
): TestPlace {
  return {
    quarter,
    land: pitch - width - (approachLoose[quarter] ?? 0) - toleranceOf(settings),
    landNominal: pitch - width - (approach[quarter] ?? 0),
    widthMin: width - 2 * (lift[quarter] ?? 0),
    widthMax: width + 2 * (sink[quarter] ?? 0),
  };
}

function toleranceOf({ depthTolerance, pitchTolerance }: Settings): Metres {
  return 2 * depthTolerance + pitchTolerance;
}
