import type { HandSettings } from '../model/side-plan-input.js';
import type { ProgramSide } from '../program/program-side.js';
import type { Settings } from '../settings.js';
import type { Seconds } from '../units.js';
import { arrangeCut, laterIn, movedRemedy } from './arrange-cut.js';
import type { Remedy } from './remedy.js';
import type { SoundEdit } from './sound-edit.js';

/** The settings that are baked into the pass and that a remedy can change. */
export type Baked = Partial<
  Pick<Settings, 'rpm' | 'ellipticalHz' | 'ellipticalOrder' | 'polarity'>
>;

/** How a side is to be cut. */
export interface Cut {
  readonly settings: Settings;
  readonly hand: HandSettings;
  readonly levelDb: number;
  /** What of the settings is not as it was measured at first. */
  readonly baked: Baked;
  readonly edits: readonly SoundEdit[];
  /** Quarter turns of silence before the program. */
  readonly silence: number;
  /** The tracks of a sheet's side as they lie, with `hand`; null for a file. */
  readonly program: ProgramSide | null;
  /** The tracks in their order, as they were given; empty for a file. */
  readonly order: readonly number[];
}

/**
 * A side with remedies applied to it, in any order; of one control the last wins. Their seconds are
 * those of the side as it was: they go with the tracks that they lie in.
 */
export function applyRemedies(cut: Cut, remedies: readonly Remedy[]): Cut {
  const arranged = arrangeCut(cut, remedies);
  const later = laterIn(cut, arranged);
  const moved = remedies.map((remedy) => movedRemedy(remedy, later));
  const changed = moved.reduce(applyRemedy, arranged);
  if (changed.silence === cut.silence) return changed;
  // What is set by hand along the program comes later with it.
  const quarters = changed.silence - cut.silence;
  const delay = (quarters * 60) / changed.settings.rpm / 4;
  return { ...changed, hand: delayed(changed.hand, delay) };
}

function applyRemedy(cut: Cut, remedy: Remedy): Cut {
  const { settings, hand, edits, baked } = cut;
  switch (remedy.kind) {
    case 'pitch-there': {
      const column = hand.basePitch.map(({ fromSeconds, pitch }) => ({
        fromSeconds,
        value: pitch,
      }));
      const basePitch = setBetween(column, settings.basePitch, remedy, remedy.pitch).map(
        ({ fromSeconds, value }) => ({ fromSeconds, pitch: value }),
      );
      return { ...cut, hand: { ...hand, basePitch } };
    }
    case 'width-there': {
      const column = hand.baseWidth.map(({ fromSeconds, width }) => ({
        fromSeconds,
        value: width,
      }));
      const baseWidth = setBetween(column, settings.baseWidth, remedy, remedy.width).map(
        ({ fromSeconds, value }) => ({ fromSeconds, width: value }),
      );
      return { ...cut, hand: { ...hand, baseWidth } };
    }
    case 'level-there':
      return { ...cut, edits: [...edits, { ...remedy, kind: 'level' }] };
    case 'elliptical-there':
      return { ...cut, edits: [...edits, { ...remedy, kind: 'elliptical' }] };
    case 'bell-there':
      return { ...cut, edits: [...edits, { ...remedy, kind: 'bell' }] };
    case 'shelf-there':
      return { ...cut, edits: [...edits, { ...remedy, kind: 'shelf' }] };
    case 'gap':
    case 'track-outward':
    case 'order':
      return cut;
    case 'silence':
      return { ...cut, silence: cut.silence + remedy.quarters };
    case 'base-pitch':
      return { ...cut, settings: { ...settings, basePitch: remedy.pitch } };
    case 'base-width':
      return { ...cut, settings: { ...settings, baseWidth: remedy.width } };
    case 'level':
      return { ...cut, levelDb: cut.levelDb + remedy.gainDb };
    case 'polarity':
      return baking(cut, { polarity: remedy.polarity }, baked);
    case 'elliptical':
      return baking(cut, { ellipticalHz: remedy.corner, ellipticalOrder: remedy.order }, baked);
    case 'rpm':
      return baking(cut, { rpm: remedy.rpm }, baked);
  }
}

function baking(cut: Cut, change: Baked, baked: Baked): Cut {
  return { ...cut, settings: { ...cut.settings, ...change }, baked: { ...baked, ...change } };
}

interface Step {
  readonly fromSeconds: Seconds;
  readonly value: number;
}

/** A column of steps with another value between two times; what holds after them goes on. */
function setBetween(
  steps: readonly Step[],
  before: number,
  { fromSeconds, untilSeconds }: { readonly fromSeconds: Seconds; readonly untilSeconds: Seconds },
  value: number,
): Step[] {
  const after = steps.findLast((step) => step.fromSeconds <= untilSeconds)?.value ?? before;
  return [
    ...steps.filter((step) => step.fromSeconds < fromSeconds),
    { fromSeconds, value },
    { fromSeconds: untilSeconds, value: after },
    ...steps.filter((step) => step.fromSeconds > untilSeconds),
  ];
}

function delayed(hand: HandSettings, seconds: Seconds): HandSettings {
  const from = <T extends { readonly fromSeconds: Seconds }>(each: T): T => ({
    ...each,
    fromSeconds: each.fromSeconds + seconds,
  });
  const both = <T extends { readonly fromSeconds: Seconds; readonly untilSeconds: Seconds }>(
    each: T,
  ): T => ({ ...from(each), untilSeconds: each.untilSeconds + seconds });
  return {
    basePitch: hand.basePitch.map(from),
    baseWidth: hand.baseWidth.map(from),
    bands: hand.bands.map(both),
    tracks: hand.tracks.map(both),
  };
}
