import type { Settings } from '../settings.js';
import { INCH } from '../units.js';
import type { Profile } from './profile-schema.js';

type Field = keyof Profile;

export interface BrokenRule {
  /** The fields that do not go together, or the one that is wrong by itself. */
  readonly fields: readonly Field[];
  readonly text: string;
}

interface Rule {
  readonly fields: readonly Field[];
  readonly holds: (settings: Settings) => boolean;
  /** What is expected. */
  readonly text: string;
}

/** Lengths that may be nothing. */
const MAY_BE_ZERO: readonly Field[] = [
  'pitchTolerance',
  'depthTolerance',
  'landMin',
  'echoLand',
  'bottomRadius',
];

/** What no field can say of itself. */
const RULES: readonly Rule[] = [
  {
    fields: ['startDiameter', 'disc'],
    holds: ({ startDiameter, disc }) => startDiameter < disc * INCH,
    text: 'the program must start inside the disc',
  },
  {
    fields: ['innerDiameter', 'startDiameter'],
    holds: ({ innerDiameter, startDiameter }) => innerDiameter < startDiameter,
    text: 'innerDiameter must be under startDiameter',
  },
  {
    fields: ['finishingDiameter', 'innerDiameter'],
    holds: ({ finishingDiameter, innerDiameter }) => finishingDiameter <= innerDiameter,
    text: 'the finishing groove must not lie where program may lie',
  },
  {
    fields: ['preferredEndDiameter', 'innerDiameter', 'startDiameter'],
    holds: ({ preferredEndDiameter: end, innerDiameter, startDiameter }) =>
      end === null || (end >= innerDiameter && end < startDiameter),
    text: 'preferredEndDiameter must lie between innerDiameter and startDiameter',
  },
  {
    fields: ['basePitch', 'pitchMax'],
    holds: ({ basePitch, pitchMax }) => basePitch <= pitchMax,
    text: 'basePitch must be at most pitchMax',
  },
  {
    fields: ['widthMin', 'baseWidth'],
    holds: ({ widthMin, baseWidth }) => widthMin <= baseWidth,
    text: 'widthMin must be at most baseWidth',
  },
  {
    fields: ['baseWidth', 'bottomRadius', 'depthMax'],
    holds: ({ baseWidth, bottomRadius, depthMax }) =>
      baseWidth / 2 - (Math.SQRT2 - 1) * bottomRadius <= depthMax,
    text: 'the unmodulated groove must not be deeper than depthMax',
  },
  {
    fields: ['lineTip', 'playbackTip'],
    holds: ({ lineTip, playbackTip }) => lineTip <= playbackTip,
    text: 'lineTip must be at most playbackTip',
  },
  {
    fields: ['facetCaution', 'facetFault'],
    holds: ({ facetCaution, facetFault }) => facetCaution <= facetFault,
    text: 'facetCaution must be at most facetFault',
  },
  {
    fields: ['ellipticalHz', 'ellipticalSteps'],
    holds: ({ ellipticalHz, ellipticalSteps: steps }) =>
      ellipticalHz === null || steps === null || steps.includes(ellipticalHz),
    text: 'ellipticalHz must be one of ellipticalSteps',
  },
  {
    fields: ['depthMeter'],
    holds: ({ depthMeter: rows }) =>
      (rows ?? []).every(({ reading, width }, index) => {
        const before = rows?.[index - 1] ?? { reading: Number.NEGATIVE_INFINITY, width: 0 };
        return reading > before.reading && width > before.width;
      }),
    text: 'readings and widths must rise from entry to entry',
  },
  {
    fields: ['machine'],
    holds: ({ machine: { openSlew, closeSlew } }) =>
      (openSlew === null || openSlew > 0) && (closeSlew === null || closeSlew > 0),
    text: 'openSlew and closeSlew must be over zero, or null',
  },
];

/** Everything about a complete profile that its fields' own schemas cannot see. */
export function brokenRules(
  profile: Profile,
  settings: Settings,
  isGiven: (field: Field) => boolean,
): BrokenRule[] {
  const broken = brokenLengths(profile, settings);
  if (profile.medium === 'metal' && !(isGiven('depthMax') && isGiven('landMin'))) {
    const text = 'metal needs depthMax and landMin in the profile: the defaults are for lacquer';
    broken.push({ fields: ['medium'], text });
  }
  for (const { fields, holds, text } of RULES) {
    if (holds(settings)) continue;
    const found = fields.map((field) => `${field} ${JSON.stringify(profile[field])}`).join(', ');
    broken.push({ fields, text: `${text}; found ${found}` });
  }
  return broken;
}

/** Fields written with a unit: each must be a finite number, over zero where it has to be. */
function brokenLengths(profile: Profile, settings: Settings): BrokenRule[] {
  const fields = Object.keys(profile).filter(isField(profile));
  return fields.flatMap((field) => {
    const value = settings[field];
    const mayBeZero = MAY_BE_ZERO.includes(field);
    if (typeof profile[field] !== 'string' || typeof value !== 'number') return [];
    if (value > 0 || (mayBeZero && value === 0)) return [];
    const expected = mayBeZero ? 'zero or more' : 'more than zero';
    return [{ fields: [field], text: `found "${profile[field]}", expected ${expected}` }];
  });
}

function isField(profile: Profile) {
  return (key: string): key is Field => Object.hasOwn(profile, key);
}
