import type { Settings } from '../settings.js';
import { formatDiameter, formatLength, formatSpeed } from '../units.js';
import type { Profile } from './profile-schema.js';

/**
 * Resolved settings in the notation of a profile, every field; read again they are the same to
 * 1e-12 of each value. That `executes` was left to its default is lost, since it is now written.
 */
export function settingsToJson(settings: Settings): Profile {
  const { executesIsSet: _, ...plain } = settings;
  const { machine, depthMeter, ellipticalSteps } = plain;
  return {
    ...plain,
    speedFactor: settings.speedFactor === 0.5 ? 0.5 : 1,
    startDiameter: formatDiameter(settings.startDiameter),
    innerDiameter: formatDiameter(settings.innerDiameter),
    preferredEndDiameter: orNull(settings.preferredEndDiameter, formatDiameter),
    leadInPitch: formatLength(settings.leadInPitch),
    leadOutPitch: formatLength(settings.leadOutPitch),
    finishingDiameter: formatDiameter(settings.finishingDiameter),
    bandPitch: formatLength(settings.bandPitch),

    referenceVelocity: formatSpeed(settings.referenceVelocity),
    ellipticalSteps: ellipticalSteps === null ? null : [...ellipticalSteps],

    basePitch: formatLength(settings.basePitch),
    pitchStep: orNull(settings.pitchStep, formatLength),
    pitchMax: formatLength(settings.pitchMax),
    pitchOpenSlew: formatLength(settings.pitchOpenSlew),
    pitchCloseSlew: formatLength(settings.pitchCloseSlew),
    pitchTolerance: formatLength(settings.pitchTolerance),
    landMin: formatLength(settings.landMin),
    echoLand: formatLength(settings.echoLand),
    machine: {
      ...machine,
      openSlew: orNull(machine.openSlew, formatLength),
      closeSlew: orNull(machine.closeSlew, formatLength),
    },

    baseWidth: formatLength(settings.baseWidth),
    widthMin: formatLength(settings.widthMin),
    depthMax: formatLength(settings.depthMax),
    depthOpenSlew: formatLength(settings.depthOpenSlew),
    depthCloseSlew: formatLength(settings.depthCloseSlew),
    depthTolerance: formatLength(settings.depthTolerance),
    bottomRadius: formatLength(settings.bottomRadius),
    depthMeter:
      depthMeter?.map(({ reading, width }) => ({ reading, width: formatLength(width) })) ?? null,

    playbackTip: formatLength(settings.playbackTip),
    lineTip: formatLength(settings.lineTip),
  };
}

function orNull(value: number | null, format: (value: number) => string): string | null {
  return value === null ? null : format(value);
}
