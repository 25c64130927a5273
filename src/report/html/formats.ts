import { DISC_DEFAULTS } from '../../profile/profile-defaults.js';
import type { Settings } from '../../settings.js';
import { type Metres, parseLength } from '../../units.js';

/** Where the program of a disc may lie. */
export type Format = Pick<
  Settings,
  'disc' | 'startDiameter' | 'innerDiameter' | 'finishingDiameter'
>;

/** The formats that can be tried: the side's own, and the others by their defaults. */
export function formatsFor(settings: Settings): readonly Format[] {
  return ([12, 10, 7] as const).map((disc) => {
    if (disc === settings.disc) return formatOf(settings);
    const { startDiameter, innerDiameter, finishingDiameter } = DISC_DEFAULTS[disc];
    return {
      disc,
      startDiameter: metres(startDiameter),
      innerDiameter: metres(innerDiameter),
      finishingDiameter: metres(finishingDiameter),
    };
  });
}

/** The innermost diameter at which any of the formats is judged. */
export function innermostOf(formats: readonly Format[]): Metres {
  return Math.min(...formats.map(({ finishingDiameter }) => finishingDiameter));
}

function formatOf({ disc, startDiameter, innerDiameter, finishingDiameter }: Settings): Format {
  return { disc, startDiameter, innerDiameter, finishingDiameter };
}

function metres(text: string): Metres {
  return parseLength(text) ?? Number.NaN;
}
