import type { Planner, Settings } from '../../../settings.js';
import type { Units } from '../../length-text.js';
import type { PageHead } from '../data/page-head.js';

/** The settings that a page can change without hearing the audio again. */
export type TriedSettings = Pick<
  Settings,
  | 'basePitch'
  | 'baseWidth'
  | 'landMin'
  | 'depthTolerance'
  | 'pitchTolerance'
  | 'timingTolerance'
  | 'executes'
  | 'executesIsSet'
  | 'disc'
  | 'startDiameter'
  | 'innerDiameter'
  | 'finishingDiameter'
  | 'preferredEndDiameter'
>;

/** What is tried at this moment. */
export interface WhatIf {
  readonly levelDb: number;
  readonly planner: Planner;
  readonly units: Units;
  readonly tried: TriedSettings;
}

/** The side as it was forecast. */
export function asForecast(head: PageHead): WhatIf {
  const { levelDb, units, settings, planner } = head;
  return {
    levelDb,
    planner,
    units,
    tried: {
      basePitch: settings.basePitch,
      baseWidth: settings.baseWidth,
      landMin: settings.landMin,
      depthTolerance: settings.depthTolerance,
      pitchTolerance: settings.pitchTolerance,
      timingTolerance: settings.timingTolerance,
      executes: settings.executes,
      executesIsSet: settings.executesIsSet,
      disc: settings.disc,
      startDiameter: settings.startDiameter,
      innerDiameter: settings.innerDiameter,
      finishingDiameter: settings.finishingDiameter,
      preferredEndDiameter: settings.preferredEndDiameter,
    },
  };
}

/** The same forecast, whatever units it is told in. */
export function isSameForecast(one: WhatIf, other: WhatIf): boolean {
  return JSON.stringify({ ...one, units: null }) === JSON.stringify({ ...other, units: null });
}

/**
 * The settings that are tried; a preferred end that does not lie between the diameters is left out,
 * as a profile could not have it.
 */
export function settingsOf({ settings }: PageHead, { tried }: WhatIf): Settings {
  const { preferredEndDiameter: preferred, innerDiameter, startDiameter } = tried;
  const isPossible = preferred !== null && preferred >= innerDiameter && preferred < startDiameter;
  return { ...settings, ...tried, preferredEndDiameter: isPossible ? preferred : null };
}
