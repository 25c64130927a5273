/** Fields without which a forecast is a guess, the gravest first, and what to put there. */
export const REPLACE_FIRST: readonly (readonly [fields: readonly string[], why: string])[] = [
  [
    ['referenceVelocity', 'referenceDbfs'],
    "the house's own calibration, the lateral peak velocity that a 1 kHz sine of a known level " +
      'cuts; every motion, land and headroom is in proportion to it',
  ],
  [
    ['executes', 'machine'],
    'what the lathe cuts, and what its automation hears and how far ahead; the verdict is about it',
  ],
  [
    ['basePitch', 'pitchMax', 'pitchOpenSlew', 'pitchCloseSlew'],
    'what the pitch drive can do, and how fast',
  ],
  [
    ['baseWidth', 'depthMax', 'depthOpenSlew', 'depthCloseSlew'],
    'the groove the house cuts, what the coating allows, and how fast the depth follows',
  ],
  [
    ['depthMeter'],
    'what the depth meter shows, and the width that the microscope reads then; without it no ' +
      'meter reading is told',
  ],
  [
    ['headLimit'],
    "what the house's head meter allows; without it the head load has no limit to stand against",
  ],
  [
    ['rpm', 'speedTolerance'],
    'the speed as measured, and what is left unknown of it: 0.02% once it is measured',
  ],
];
