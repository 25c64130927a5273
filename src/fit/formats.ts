import type { MotionSummary } from '../analysis/motion.js';
import { judge } from '../model/fit-judge.js';
import { headroom } from '../model/level.js';
import { plannedSide } from '../model/planned-side.js';
import { DISC_DEFAULTS } from '../profile/profile-defaults.js';
import type { Settings } from '../settings.js';
import { parseLength } from '../units.js';
import type { FormatFit } from './fit-result.js';
import type { Patient } from './trial.js';

const DISCS = [12, 10, 7] as const;

/** What each size of disc makes of the program, at each speed that was measured. */
export function formatFits(
  { cut, planner, source }: Patient,
  motions: readonly { readonly rpm: number; readonly motion: MotionSummary }[],
): FormatFit[] {
  return motions.flatMap(({ rpm, motion }) =>
    DISCS.map((disc): FormatFit => {
      const settings = { ...onDisc(cut.settings, disc), rpm };
      const side = plannedSide(motion, settings, cut.hand);
      const { spare, endDiameter, faults } = judge(side, planner, cut.levelDb, source);
      return {
        disc,
        rpm,
        isOwn: disc === cut.settings.disc && rpm === cut.settings.rpm,
        headroom: headroom(side, planner),
        spare,
        endDiameter,
        faults: faults.length,
      };
    }),
  );
}

/** A lathe's settings with another size of disc, whose diameters are the profile's defaults. */
export function onDisc(settings: Settings, disc: 12 | 10 | 7): Settings {
  if (disc === settings.disc) return settings;
  const { startDiameter, innerDiameter, finishingDiameter } = DISC_DEFAULTS[disc];
  const metres = (text: string) => {
    const length = parseLength(text);
    if (length === null) throw new Error(`no length: ${text}`);
    return length;
  };
  return {
    ...settings,
    disc,
    startDiameter: metres(startDiameter),
    innerDiameter: metres(innerDiameter),
    finishingDiameter: metres(finishingDiameter),
    preferredEndDiameter: null,
  };
}
