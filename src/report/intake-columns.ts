import type { IntakeResult } from '../intake/intake-result.js';
import type { MixedFolder } from '../intake/mixed-folders.js';
import { stepLevelText } from './common-level-digits.js';
import type { Failure } from './failure.js';
import { minutesText } from './folder-columns.js';
import { largeLengthText, type Units } from './length-text.js';

/** What stands behind the path of a file, in this order. */
export interface IntakeCells {
  readonly verdict: string;
  /** Id of the worst finding, or code of the failure. */
  readonly worst: string;
  /** Minutes and seconds. */
  readonly time: string;
  /** Radius that is left, mm or inches. */
  readonly spare: string;
  /** Recommended level, dB. */
  readonly level: string;
}

/** Where there is nothing to tell; one sign, so that every line has as many words. */
export const NOTHING = '-';
const NO_CELLS = { time: NOTHING, spare: NOTHING, level: NOTHING };

/** Cells of a file that was judged: numbers without their units. */
export function fileCells(result: IntakeResult, units: Units): IntakeCells {
  return {
    verdict: result.verdict,
    worst: result.worst?.id ?? NOTHING,
    time: minutesText(result.durationSeconds),
    spare: bare(largeLengthText(result.spare, units)),
    level: levelCell(result),
  };
}

/** Cells of one that could not be. */
export function failureCells({ code }: Failure): IntakeCells {
  return { ...NO_CELLS, verdict: 'failed', worst: code };
}

/** Cells of a folder whose files differ in format. */
export function folderCells({ severity }: Pick<MixedFolder, 'severity'>): IntakeCells {
  return { ...NO_CELLS, verdict: severity, worst: 'mixed-formats' };
}

function levelCell({ recommendedDb, isSilent, settings }: IntakeResult): string {
  if (isSilent) return NOTHING;
  return recommendedDb === null ? 'none' : bare(stepLevelText(recommendedDb, settings.levelStep));
}

function bare(text: string): string {
  return text.replace(/ \S+$/, '');
}
