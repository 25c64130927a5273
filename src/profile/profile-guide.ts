/**
 * What each field of a profile is and where its default is from, in the order and the groups in
 * which a profile is shown. README.md has the same table; a test holds the two together.
 */

/**
 * [field, what it is, where its default is from]; a field of `machine` has a point in its name.
 * Code stands between backticks. The marks are those of SOURCE_MARKS; an empty source is furrow's
 * own choice.
 */
export type GuideRow = readonly [field: string, what: string, from: string];

export interface GuideGroup {
  readonly title: string;
  readonly fields: readonly GuideRow[];
}

/** How sure a source is, as marked in the guide. */
export const SOURCE_MARKS = {
  '[std]': 'published standard',
  '[sec]': 'standard, as quoted by a secondary text',
  '[pub]': 'published text',
  '[mem]': 'from memory',
  '[cp]': 'common practice, no published source',
} as const;

export const PROFILE_GUIDE: readonly GuideGroup[] = [
  {
    title: 'Disc and speed',
    fields: [
      ['disc', 'nominal diameter, inches; 12 unless said', ''],
      ['rpm', 'speed; 33 is 33⅓, anything else as measured', '7-inch: [cp]'],
      [
        'speedTolerance',
        'largest unknown error of the speed, ratio or per cent; a known one belongs into `rpm`',
        'own choice; IEC 60098:2020, 5.6, allows 0.5 % [std]',
      ],
      ['speedFactor', '0.5: lathe and program both run at half speed', ''],
      [
        'medium',
        'what is cut: `lacquer`, or `metal`, which needs its own `depthMax` and `landMin`',
        '',
      ],
      [
        'startDiameter',
        'where the program starts',
        '12: RIAA, 11½″ [sec]; 10, 7: IEC 98:1987, 8.5 [sec]',
      ],
      ['innerDiameter', 'inside of which no program may lie', 'RIAA [sec]; 10: [mem]'],
      ['preferredEndDiameter', 'where the house likes a side to end; null: no wish', ''],
      ['silentTurns', 'unmodulated turns before and after the program', ''],
      [
        'finishingDiameter',
        'diameter of the closed groove; a program is judged no further in than this',
        'IEC 98:1987, 8.9 [sec]',
      ],
      [
        'leadInPitch',
        'from the lead-in to the first silent turn; checked against the standard',
        'IEC 98:1987, 8.4 [sec]',
      ],
      [
        'leadOutPitch',
        'behind the last silent turn; a turn of it has to fit before the closed groove',
        'IEC 98:1987, 8.8 [sec]',
      ],
      [
        'bandPitch',
        'of a marker band between tracks, unless the sheet says another',
        'RIAA, at most 1.5875 mm [sec]',
      ],
      ['bandSeconds', 'length of that band, s, unless the sheet says another', '0.25 to 2 s [cp]'],
    ],
  },
  {
    title: 'Level and chain',
    fields: [
      [
        'referenceVelocity',
        'lateral peak velocity that an in-phase 1 kHz sine of `referenceDbfs` cuts',
        '[cp]',
      ],
      ['referenceDbfs', 'peak of that sine, dBFS', '[cp]'],
      ['levelStep', 'step of the level control, dB', ''],
      ['polarity', '-1 turns both channels over', ''],
      ['swapChannels', 'exchanges the channels', ''],
      [
        'channelBalanceDb',
        'by how many dB the left is louder: left up by half of it, right down by half',
        '',
      ],
      ['subsonicHz', "corner of the chain's own second-order high-pass, Hz", ''],
      ['ellipticalHz', 'corner of the high-pass on the difference, Hz; null: none', ''],
      ['ellipticalOrder', '1 or 2: 6 or 12 dB per octave', ''],
      [
        'ellipticalSteps',
        'corners that the filter can be set to, Hz; others are refused; null: any',
        '',
      ],
    ],
  },
  {
    title: 'Pitch and land',
    fields: [
      ['basePitch', 'pitch without modulation, a turn', '[cp]'],
      [
        'pitchStep',
        'step of the pitch control: the base pitch is rounded up to one, here and in sheets',
        '',
      ],
      ['pitchMax', 'widest pitch, a turn', ''],
      ['pitchOpenSlew', 'how fast the pitch opens, change per quarter turn', ''],
      ['pitchCloseSlew', 'how fast the pitch closes, change per quarter turn', ''],
      ['pitchTolerance', 'how far the advance of a turn may be off', ''],
      ['timingTolerance', 'quarter turns that the plan may be executed early or late', ''],
      ['landMin', 'land to be kept between turns', 'below about that, echo is likely [mem]'],
      ['echoLand', 'land wanted between a quiet and a loud turn', ''],
      [
        'executes',
        'what the lathe cuts and the verdict is about: `machine`, `plan` or `fixed`; left out, the first line says what is assumed',
        '',
      ],
      ['machine.gain', 'factor on the envelopes that the automation reads', ''],
      ['machine.advanceTurns', 'how far ahead of the cut it hears the outer wall, turns', ''],
      ['machine.holdTurns', 'how long it remembers the inner wall, turns', ''],
      [
        'machine.openSlew',
        'its own slew in opening, change per quarter turn; null: `pitchOpenSlew`',
        '',
      ],
      [
        'machine.closeSlew',
        'its own slew in closing, change per quarter turn; null: `pitchCloseSlew`',
        '',
      ],
    ],
  },
  {
    title: 'Groove and depth',
    fields: [
      ['baseWidth', 'top width of the unmodulated groove', '[cp]'],
      ['widthMin', 'least top width at any moment', 'RIAA [sec]'],
      [
        'widthPerLateral',
        'factor by which sideways motion also opens the groove: half-width grows by half of it times the motion',
        '',
      ],
      [
        'depthMax',
        'deepest cut that the coating allows',
        'Boden, *Basic Disc Mastering*, 1981, as quoted [pub]',
      ],
      ['depthOpenSlew', 'how fast the half-width opens, change per quarter turn', ''],
      ['depthCloseSlew', 'how fast the half-width closes, change per quarter turn', ''],
      ['depthTolerance', 'how far the half-width may be off', ''],
      [
        'bottomRadius',
        'radius of the cutting stylus at its bottom',
        'at most that for stereo [mem]',
      ],
      ['depthMeter', 'meter readings and the widths they stand for, rising; null: no table', ''],
    ],
  },
  {
    title: 'Playback and judgement',
    fields: [
      [
        'playbackTip',
        'radius of the spherical playback stylus',
        'comparison tables, 13 to 18 µm [pub]',
      ],
      ['lineTip', 'radius at the wall of the line-contact stylus', 'comparison tables [pub]'],
      [
        'facetCaution',
        'edge velocity over groove speed, from which on for a share of time it is a caution',
        '',
      ],
      ['facetFault', 'the same for a fault; at 1 the wall is as steep as a 45° facet', ''],
      ['lowBandHz', 'under it motion is judged as bass, Hz', ''],
      [
        'headLimit',
        "mean-square acceleration that the house's meter allows, (m/s²)²; the head load is shown against it",
        '',
      ],
    ],
  },
];
