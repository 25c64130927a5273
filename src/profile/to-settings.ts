import type { Settings } from '../settings.js';
import { ceilToStep } from '../steps.js';
import { parseLength, parsePercent, parsePitch, parseSpeed } from '../units.js';
import type { Profile } from './profile-schema.js';

/** A complete profile in SI, frozen. `executesIsSet` is for the caller to know. */
export function toSettings(profile: Profile, executesIsSet: boolean): Settings {
  const { machine, depthMeter, ellipticalSteps } = profile;
  return Object.freeze({
    ...profile,
    rpm: profile.rpm === 33 ? 100 / 3 : profile.rpm,
    speedTolerance: ratio(profile.speedTolerance),
    startDiameter: metres(profile.startDiameter),
    innerDiameter: metres(profile.innerDiameter),
    preferredEndDiameter: metresOrNull(profile.preferredEndDiameter),
    leadInPitch: metresPerTurn(profile.leadInPitch),
    leadOutPitch: metresPerTurn(profile.leadOutPitch),
    finishingDiameter: metres(profile.finishingDiameter),
    bandPitch: metresPerTurn(profile.bandPitch),

    referenceVelocity: read(profile.referenceVelocity, parseSpeed),
    ellipticalSteps: ellipticalSteps === null ? null : Object.freeze([...ellipticalSteps]),

    // What can be dialled in is what is planned; a wider pitch leaves more land.
    basePitch: ceilToStep(metresPerTurn(profile.basePitch), metresOrNull(profile.pitchStep)),
    pitchStep: metresOrNull(profile.pitchStep),
    pitchMax: metresPerTurn(profile.pitchMax),
    pitchOpenSlew: metres(profile.pitchOpenSlew),
    pitchCloseSlew: metres(profile.pitchCloseSlew),
    pitchTolerance: metres(profile.pitchTolerance),
    landMin: metres(profile.landMin),
    echoLand: metres(profile.echoLand),
    executesIsSet,
    machine: Object.freeze({
      ...machine,
      openSlew: metresOrNull(machine.openSlew),
      closeSlew: metresOrNull(machine.closeSlew),
    }),

    baseWidth: metres(profile.baseWidth),
    widthMin: metres(profile.widthMin),
    depthMax: metres(profile.depthMax),
    depthOpenSlew: metres(profile.depthOpenSlew),
    depthCloseSlew: metres(profile.depthCloseSlew),
    depthTolerance: metres(profile.depthTolerance),
    bottomRadius: metres(profile.bottomRadius),
    depthMeter: depthMeter === null ? null : depthTable(depthMeter),

    playbackTip: metres(profile.playbackTip),
    lineTip: metres(profile.lineTip),
  });
}

function depthTable(rows: NonNullable<Profile['depthMeter']>): Settings['depthMeter'] {
  return Object.freeze(
    rows.map(({ reading, width }) => Object.freeze({ reading, width: metres(width) })),
  );
}

function metres(text: string): number {
  return read(text, parseLength);
}

function metresOrNull(text: string | null): number | null {
  return text === null ? null : metres(text);
}

function metresPerTurn(text: string): number {
  return read(text, parsePitch);
}

function ratio(value: number | string): number {
  return typeof value === 'number' ? value : read(value, parsePercent);
}

/** The schema lets nothing else pass than what can be read, but for zero lines per inch: NaN. */
function read(text: string, parse: (text: string) => number | null): number {
  return parse(text) ?? Number.NaN;
}
