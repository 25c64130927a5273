import type { Finding, FindingId } from '../model/forecast-types.js';
import type { Settings } from '../settings.js';
import { type Hertz, MIL, type Seconds } from '../units.js';
import { faultsOf, type Passage, type PassageFault } from './passages.js';
import type { Remedy } from './remedy.js';

/** Remedies of one kind for one passage, from the mildest to the strongest. */
export interface Ladder {
  /** The faults that they are for: places among the faults of the side. */
  readonly targets: readonly number[];
  readonly rungs: readonly Remedy[];
}

export const LAND: readonly FindingId[] = ['overcut', 'pitch-limit'];
const TREBLE: readonly FindingId[] = ['facet', 'tight-bend'];
const BASS: readonly FindingId[] = [...LAND, 'lift', 'too-deep'];
const LOCAL: readonly FindingId[] = [...BASS, ...TREBLE];

/** Corners where the profile has no steps of the filter: common ones, no published source. */
export const COMMON_CORNERS: readonly Hertz[] = [100, 150, 200, 300];
/** What the sound may lose in named seconds, dB. */
const MOST_LEVEL_DB = 3;
const MOST_TONE_DB = 6;
/** A filter's gain is set in these steps, dB. */
const TONE_STEP_DB = 0.5;
/** What a finding's seconds are widened by, for what a filter's own delay may be. */
const PAD_SECONDS: Seconds = 0.05;
/** Steps of the groove's width, of a mil each: a tenth. */
const WIDTH_STEP = MIL / 10;
const MOST_WIDTH_STEPS = 12;

/**
 * What can be done in a passage by its sound and its width; the pitch is opened by
 * `pitchLadder`, which knows the plan.
 */
export function localLadders(passage: Passage, settings: Settings, nyquist: Hertz): Ladder[] {
  const land = faultsOf(passage, LAND);
  const lift = faultsOf(passage, ['lift']);
  const deep = faultsOf(passage, ['too-deep']);
  const treble = faultsOf(passage, TREBLE);
  const bass = faultsOf(passage, BASS);
  const all = faultsOf(passage, LOCAL);
  return [
    widthLadder(lift, settings, 1),
    widthLadder([...deep, ...land], settings, -1),
    levelLadder(all, settings),
    ...ellipticalLadders(bass, settings),
    toneLadder('bell-there', bass, settings, nyquist),
    toneLadder('bell-there', treble, settings, nyquist),
    toneLadder('shelf-there', treble, settings, nyquist),
  ].filter(({ targets, rungs }) => targets.length > 0 && rungs.length > 0);
}

/** The seconds in which sound makes these faults: of land also a turn before, which it faces. */
export function soundSpan(
  faults: readonly PassageFault[],
  { rpm }: Settings,
): { readonly fromSeconds: Seconds; readonly untilSeconds: Seconds } {
  const spans = faults.map(({ fault }) => {
    const { fromSeconds, untilSeconds } = wholeQuarters(fault, rpm);
    const faced = LAND.includes(fault.id) ? 60 / rpm : 0;
    return { from: fromSeconds - faced, until: untilSeconds };
  });
  return {
    fromSeconds: Math.max(0, Math.min(...spans.map(({ from }) => from)) - PAD_SECONDS),
    untilSeconds: Math.max(...spans.map(({ until }) => until)) + PAD_SECONDS,
  };
}

/** A finding begins and ends at the worst places of its first and last quarter turn. */
export function wholeQuarters(
  { atSeconds, untilSeconds }: Finding,
  rpm: number,
): { readonly fromSeconds: Seconds; readonly untilSeconds: Seconds } {
  const quarter = 60 / rpm / 4;
  const from = atSeconds ?? 0;
  const until = untilSeconds ?? from;
  return {
    fromSeconds: Math.floor(from / quarter + 1e-6) * quarter,
    untilSeconds: Math.ceil(until / quarter - 1e-6) * quarter,
  };
}

function levelLadder(faults: readonly PassageFault[], settings: Settings): Ladder {
  const gains = fallingGains(settings.levelStep, MOST_LEVEL_DB);
  const span = faults.length === 0 ? null : soundSpan(faults, settings);
  return {
    targets: indicesOf(faults),
    rungs: span === null ? [] : gains.map((gainDb) => ({ kind: 'level-there', ...span, gainDb })),
  };
}

/** −step, −2·step … down to −most, dB. */
export function fallingGains(step: number, most: number): number[] {
  return Array.from({ length: Math.floor(most / step + 1e-9) }, (_, at) => -step * (at + 1));
}

function widthLadder(faults: readonly PassageFault[], settings: Settings, sign: 1 | -1): Ladder {
  const span = faults.length === 0 ? null : soundSpan(faults, settings);
  const widths = Array.from(
    { length: MOST_WIDTH_STEPS },
    (_, at) => settings.baseWidth + sign * (at + 1) * WIDTH_STEP,
  ).filter((width) => isPossible(width, settings));
  return {
    targets: indicesOf(faults),
    rungs: span === null ? [] : widths.map((width) => ({ kind: 'width-there', ...span, width })),
  };
}

/** Whether a groove can be set to a width: neither too narrow nor too deep by itself. */
export function isPossible(
  width: number,
  { widthMin, depthTolerance, depthMax }: Settings,
): boolean {
  return width >= widthMin + 2 * depthTolerance && width / 2 <= depthMax;
}

function ellipticalLadders(faults: readonly PassageFault[], settings: Settings): Ladder[] {
  if (faults.length === 0) return [];
  const span = soundSpan(faults, settings);
  return ([1, 2] as const).map((order) => ({
    targets: indicesOf(faults),
    rungs: cornersOf(settings).map((corner) => ({
      kind: 'elliptical-there',
      ...span,
      corner,
      order,
    })),
  }));
}

/** Positions of the elliptical filter, ascending. */
export function cornersOf({ ellipticalSteps }: Settings): Hertz[] {
  return [...(ellipticalSteps ?? COMMON_CORNERS)].sort((a, b) => a - b);
}

/** At the frequency of the worst of them, which is told first; a shelf begins an octave below. */
function toneLadder(
  kind: 'bell-there' | 'shelf-there',
  faults: readonly PassageFault[],
  settings: Settings,
  nyquist: Hertz,
): Ladder {
  const heard = faults.find(({ fault }) => fault.frequency !== null)?.fault.frequency ?? null;
  const frequency = heard === null || kind === 'bell-there' ? heard : heard / 2;
  if (frequency === null || !(frequency > 0) || frequency >= 0.9 * nyquist) {
    return { targets: [], rungs: [] };
  }
  const span = soundSpan(faults, settings);
  return {
    targets: indicesOf(faults),
    rungs: fallingGains(TONE_STEP_DB, MOST_TONE_DB).map((gainDb) => ({
      kind,
      ...span,
      frequency,
      gainDb,
    })),
  };
}

function indicesOf(faults: readonly PassageFault[]): number[] {
  return faults.map(({ index }) => index);
}
