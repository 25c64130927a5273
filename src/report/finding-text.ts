import type { Finding } from '../model/forecast-types.js';
import type { Settings } from '../settings.js';
import {
  diameterText,
  fixed,
  frequencyText,
  lengthText,
  levelText,
  pitchText,
  shareText,
  type Units,
} from './length-text.js';
import { placeText } from './place-text.js';

/** Digits that may be added to tell a value from its limit. */
const MOST_DIGITS = 6;

export interface FindingContext {
  readonly settings: Settings;
  readonly units: Units;
}

export interface FindingText {
  /** What, where, how much, against which limit. */
  readonly message: string;
  /** What would mend it. */
  readonly remedy: string;
}

/** A finding in a mastering engineer's words; every text of every report comes from here. */
export function findingText(finding: Finding, context: FindingContext): FindingText {
  const { settings, units } = context;
  const [value, limit] = amountTexts(finding, units);
  const at = where(finding, settings);
  const around = sound(finding);
  const tip = (radius: number) => `the ${lengthText(radius, units)} tip`;

  switch (finding.id) {
    case 'overcut':
      return {
        message: `Overcut${at}: land ${value}, so this turn cuts into the one outside it${around}.`,
        remedy: 'Open the pitch ahead of it, cut at a lower level, or narrow the bass there.',
      };
    case 'land-low':
      return {
        message: `Little land${at}: ${value} is left where ${limit} is to be kept${around}.`,
        remedy: 'Open the pitch a little ahead of it, or take the level down by a step.',
      };
    case 'lift':
      return {
        message: isGone(finding)
          ? `The cutter leaves the lacquer${at}: width ${value}, at least ${limit} is needed${around}.`
          : `The groove gets too narrow${at}: ${value} wide, at least ${limit} is needed${around}.`,
        remedy:
          'Deepen the groove ahead of it, or take out difference between the channels: ' +
          'an elliptical filter for out-of-phase bass, less width, a lower level.',
      };
    case 'too-deep':
      return {
        message: `Too deep${at}: the cut goes down ${value}, the coating allows ${limit}${around}.`,
        remedy:
          'Set a shallower base width, or take out-of-phase bass down with an elliptical filter; ' +
          'cutting through the coating ruins the stylus.',
      };
    case 'too-long':
      return {
        message:
          finding.severity === 'fault'
            ? `Too long${at}: the program ends ${diameter(finding, value)}, inside the limit of ${limit}.`
            : `Ends far in: ${diameter(finding, value)}, inside the ${limit} that the house prefers.`,
        remedy: 'Lower the level, tighten the base pitch, or move a track to another side.',
      };
    case 'facet':
      return {
        message:
          `Too steep${at}: for ${value} of the worst second the wall moves at over ` +
          `${facetLimit(finding, settings)} of the groove speed, where the cutter's facets ` +
          `begin to rub; ${limit} is tolerable${around}.`,
        remedy: 'Take treble or level down there, use a de-esser, or move it to a larger diameter.',
      };
    case 'tight-bend':
      return {
        message:
          finding.severity === 'fault'
            ? `Bends too tight${at}: for ${value} of the worst second even ${tip(settings.lineTip)} ` +
              `cannot follow; ${limit} is tolerable${around}.`
            : `Tight bends${at}: for ${value} of the worst second ${tip(settings.playbackTip)} ` +
              `cannot follow; ${limit} is tolerable${around}.`,
        remedy: 'Tame sibilance and cymbals there, lower the level, or end the side further out.',
      };
    case 'low-vertical':
      return {
        message:
          `Much vertical bass${at}: it moves the groove up and down by ${value}, ` +
          `${limit} is what the least width tolerates${around}.`,
        remedy: 'Bring the bass towards mono: an elliptical filter, or check its phase in the mix.',
      };
    case 'echo-risk':
      return {
        message:
          `Risk of groove echo${at}: a quiet turn lies beside a loud one with ${value} of land, ` +
          `${limit} is wanted.`,
        remedy: 'Open the pitch by hand before the loud passage and after it.',
      };
    case 'pitch-limit':
      return finding.detail === 'ramp'
        ? {
            message:
              `Loud too soon${at}: the turn up to there would need a mean pitch of ${value}, ` +
              `opening from base pitch gives ${limit}.`,
            remedy: 'Leave more silence before it, open the pitch by hand, or fade it in.',
          }
        : {
            message: `The pitch cannot open enough${at}: ${value} is needed, the widest is ${limit}.`,
            remedy:
              'Lower the level there, narrow or reduce the bass, or make the groove narrower.',
          };
    case 'ultrasonic':
      return {
        message: `Energy above the audible band${at}: ${value}, more than ${limit}; it heats the head unheard.`,
        remedy: "Low-pass the program at 20 kHz; the head's thermal limit is its maker's.",
      };
    case 'clipped':
      return {
        message: `Clipped: ${value} runs of samples at full scale${finding.atSeconds === null ? '' : `, the first${at}`}.`,
        remedy: 'Ask for a premaster without clipping; flat tops turn into treble on the disc.',
      };
    case 'over-peak':
      return {
        message: `Peaks between the samples reach ${value}${at}, over ${limit}.`,
        remedy: 'Play it with headroom before any converter or filter.',
      };
    case 'dc-offset':
      return {
        message: `DC offset of ${value}${channel(finding)}, more than ${limit}.`,
        remedy: 'High-pass the program below 20 Hz, or ask for a file without the offset.',
      };
    case 'silent':
      return {
        message: `The file is silent: nothing in it reaches ${limit}.`,
        remedy: 'Check that it is the right file and that the export worked.',
      };
    case 'one-sided':
      return {
        message: `Only the ${finding.wall === 'left' ? 'left' : 'right'} channel carries sound.`,
        remedy: 'Check the export; if it is meant so, expect a groove moved by one wall.',
      };
    case 'mono':
      return {
        message: 'Both channels are the same: the groove moves sideways only.',
        remedy: 'Nothing to mend, if the program is meant to be mono.',
      };
    case 'polarity':
      return {
        message: `The channels oppose each other: correlation ${value}, under ${limit}.`,
        remedy: 'Turn one channel over if it is a mistake; else expect much vertical motion.',
      };
    case 'truncated':
      return {
        message: 'The head of the file gives no valid length, or the file breaks off.',
        remedy: 'Ask for the file again if it should be longer; what is there was read to the end.',
      };
    case 'rate-low':
      return {
        message: `Sample rate of ${value}: treble above half of it is missing.`,
        remedy: `Ask for a file of at least ${limit}.`,
      };
  }
}

/** ` at 03:12.4, turn 106`; nothing for the whole file. */
function where({ atSeconds, untilSeconds }: Finding, settings: Settings): string {
  if (atSeconds === null) return '';
  const lasts = untilSeconds !== null && untilSeconds - atSeconds >= 0.1;
  if (!lasts) return ` at ${placeText(atSeconds, settings)}`;
  return ` from ${placeText(atSeconds, settings)} to ${placeText(untilSeconds, settings)}`;
}

/** ` (left, inner wall; mostly 60 Hz)`: channel and frequency, as far as they are known. */
function sound({ wall, frequency }: Finding): string {
  const parts = [
    wall === 'left' ? 'left, inner wall' : wall === 'right' ? 'right, outer wall' : '',
    frequency === null || frequency <= 0 ? '' : `mostly ${frequencyText(frequency)}`,
  ].filter((part) => part !== '');
  return parts.length === 0 ? '' : ` (${parts.join('; ')})`;
}

function channel({ wall }: Finding): string {
  return wall === 'left' || wall === 'right' ? ` in the ${wall} channel` : '';
}

function isGone({ value }: Finding): boolean {
  return value !== null && value <= 0;
}

function facetLimit({ severity }: Finding, settings: Settings): string {
  return fixed(severity === 'fault' ? settings.facetFault : settings.facetCaution, 2);
}

/** ` at a diameter of 99.4 mm`, or ` past the centre`. */
function diameter({ value }: Finding, text: string): string {
  return value === null || value > 0 ? `at a diameter of ${text}` : text;
}

/** Value and limit with as many digits as it takes to tell them apart. */
function amountTexts(finding: Finding, units: Units): [value: string, limit: string] {
  const texts = (more: number): [string, string] => [
    amountText(finding.value, finding, units, more),
    amountText(finding.limit, finding, units, more),
  ];
  for (let more = 0; more <= MOST_DIGITS; more++) {
    const [value, limit] = texts(more);
    if (value !== limit) return [value, limit];
  }
  return texts(0);
}

function amountText(
  value: number | null,
  { id, unit }: Finding,
  units: Units,
  more: number,
): string {
  if (value === null) return 'an unknown amount';
  switch (unit) {
    case 'metre':
      if (id === 'pitch-limit') return pitchText(value, units, more);
      return id === 'too-long' ? diameterText(value, units, more) : lengthText(value, units, more);
    case 'ratio':
      return id === 'polarity' ? fixed(value, 2 + more) : shareText(value, more);
    case 'decibel-full-scale':
      return `${levelText(value, more)}FS`;
    case 'hertz':
      return frequencyText(value, more);
    case 'count':
    case 'none':
      return String(value);
  }
}
