import { BASE_PITCH, LEAD_OUT_ROOM } from '../model/finding-details.js';
import type { Finding } from '../model/forecast-types.js';
import type { HandTrack } from '../model/side-plan-input.js';
import type { Settings } from '../settings.js';
import { amountTexts } from './finding-amount.js';
import { findingPlace } from './finding-place.js';
import { fixed, largeLengthText, lengthText, type Units } from './length-text.js';
import { clippedWords, gapWords, jumpWords } from './sample-words.js';
import { standardWords } from './standard-words.js';

export interface FindingContext {
  readonly settings: Settings;
  readonly units: Units;
  /** Of a side of several: a place is told in its track's time too. */
  readonly tracks?: readonly HandTrack[] | undefined;
}

export interface FindingText extends FindingWords {
  /** Time, turn, wall and frequency, as far as they are known; empty for the whole file. */
  readonly where: string;
  /** All of it in one: `where: what`. */
  readonly message: string;
}

interface FindingWords {
  /** What, how much, against which limit; up to the colon, if there is one, a headline. */
  readonly what: string;
  /** What would mend it. */
  readonly remedy: string;
}

/** A finding in a mastering engineer's words; every text of every report comes from here. */
export function findingText(finding: Finding, context: FindingContext): FindingText {
  const words = findingWords(finding, context);
  const where = findingPlace(finding, context.settings, context.tracks);
  return { ...words, where, message: where === '' ? words.what : `${where}: ${words.what}` };
}

function findingWords(finding: Finding, { settings, units }: FindingContext): FindingWords {
  const [value, limit] = amountTexts(finding, units);
  const tip = (radius: number) => `the ${lengthText(radius, units)} tip`;

  switch (finding.id) {
    case 'overcut':
      return {
        what: `Overcut, land ${value}: this turn cuts into the one outside it.`,
        remedy: 'Open the pitch ahead of it, cut at a lower level, or narrow the bass there.',
      };
    case 'land-low':
      return {
        what: `Little land: ${value} is left, ${limit} is to be kept.`,
        remedy: 'Open the pitch a little ahead of it, or take the level down by a step.',
      };
    case 'lift':
      return {
        what: isGone(finding)
          ? `The cutter leaves the lacquer: width ${value}, at least ${limit} is needed.`
          : `The groove gets too narrow: ${value} wide, at least ${limit} is needed.`,
        remedy:
          'Deepen the groove ahead of it, or take out difference between the channels: ' +
          'an elliptical filter for out-of-phase bass, less width, a lower level.',
      };
    case 'too-deep':
      return {
        what: `Too deep: the cut goes down ${value}, the coating allows ${limit}.`,
        remedy:
          'Set a shallower base width, or take out-of-phase bass down with an elliptical filter; ' +
          'cutting through the coating ruins the stylus.',
      };
    case 'too-long':
      if (finding.detail === LEAD_OUT_ROOM) return leadOutWords(settings, units, value, limit);
      return {
        what:
          finding.severity === 'fault'
            ? `Too long: ends ${diameter(finding, value)}, inside the limit of ${limit}.`
            : `Ends far in, ${diameter(finding, value)}, inside the ${limit} that the house prefers.`,
        remedy:
          finding.detail === BASE_PITCH
            ? 'Tighten the base pitch or move a track to another side; a lower level is not enough.'
            : 'Lower the level, tighten the base pitch, or move a track to another side.',
      };
    case 'facet':
      return {
        what:
          `Too steep: for ${value} of the worst second the wall moves at over ` +
          `${facetLimit(finding, settings)} of the groove speed, where the cutter's facets ` +
          `begin to rub; ${limit} is tolerable.`,
        remedy: 'Take treble or level down there, use a de-esser, or move it to a larger diameter.',
      };
    case 'tight-bend':
      return {
        what:
          finding.severity === 'fault'
            ? `Bends too tight: for ${value} of the worst second even ${tip(settings.lineTip)} ` +
              `cannot follow; ${limit} is tolerable.`
            : `Tight bends: for ${value} of the worst second ${tip(settings.playbackTip)} ` +
              `cannot follow; ${limit} is tolerable.`,
        remedy: 'Tame sibilance and cymbals there, lower the level, or end the side further out.',
      };
    case 'low-vertical':
      return {
        what:
          `Much vertical bass: it moves the groove up and down by ${value}, ` +
          `${limit} is what the least width tolerates.`,
        remedy: 'Bring the bass towards mono: an elliptical filter, or check its phase in the mix.',
      };
    case 'echo-risk':
      return {
        what:
          `Risk of groove echo: a quiet turn lies beside a loud one with ${value} of land, ` +
          `${limit} is wanted.`,
        remedy: 'Open the pitch by hand before the loud passage and after it.',
      };
    case 'pitch-limit':
      return finding.detail === 'ramp'
        ? {
            what:
              `Loud too soon: the turn up to there would need a mean pitch of ${value}, ` +
              `opening from base pitch gives ${limit}.`,
            remedy: 'Leave more silence before it, open the pitch by hand, or fade it in.',
          }
        : {
            what: `The pitch cannot open enough: ${value} is needed, the widest is ${limit}.`,
            remedy:
              'Lower the level there, narrow or reduce the bass, or make the groove narrower.',
          };
    case 'off-standard':
      return finding.detail === LEAD_OUT_ROOM
        ? leadOutWords(settings, units, value, limit)
        : standardWords(finding, value, limit);
    case 'ultrasonic':
      return {
        what: `Energy above the audible band: ${value}, more than ${limit}; it heats the head unheard.`,
        remedy: "Low-pass the program at 20 kHz; the head's thermal limit is its maker's.",
      };
    case 'clipped':
      return clippedWords(finding);
    case 'over-peak':
      return {
        what: `Peaks between the samples reach ${value}, over ${limit}.`,
        remedy: 'Play it with headroom before any converter or filter.',
      };
    case 'jump':
      return jumpWords(finding, value, limit);
    case 'gap-inside':
      return gapWords(finding, value, limit);
    case 'dc-offset':
      return {
        what: `DC offset of ${value}${channel(finding)}, more than ${limit}.`,
        remedy: 'High-pass the program below 20 Hz, or ask for a file without the offset.',
      };
    case 'silent':
      return {
        what: `The file is silent: nothing in it reaches ${limit}.`,
        remedy: 'Check that it is the right file and that the export worked.',
      };
    case 'one-sided':
      return {
        what: `Only the ${finding.wall === 'left' ? 'left' : 'right'} channel carries sound.`,
        remedy: 'Check the export; if it is meant so, expect a groove moved by one wall.',
      };
    case 'mono':
      return {
        what: 'Both channels are the same: the groove moves sideways only.',
        remedy: 'Nothing to mend, if the program is meant to be mono.',
      };
    case 'polarity':
      return {
        what: `The channels oppose each other: correlation ${value}, under ${limit}.`,
        remedy: 'Turn one channel over if it is a mistake; else expect much vertical motion.',
      };
    case 'truncated':
      return {
        what: 'The head of the file gives no valid length, or the file breaks off.',
        remedy: 'Ask for the file again if it should be longer; what is there was read to the end.',
      };
    case 'rate-low':
      return {
        what: `Sample rate of ${value}: treble above half of it is missing.`,
        remedy: `Ask for a file of at least ${limit}.`,
      };
  }
}

function leadOutWords(
  { leadOutPitch }: Settings,
  units: Units,
  value: string,
  limit: string,
): FindingWords {
  return {
    what:
      `Little room for the lead-out: the silence ends at diameter ${value}, ` +
      `a turn at ${largeLengthText(leadOutPitch, units)} before the finishing groove needs ${limit}.`,
    remedy:
      'End the side further out, or lead out at a tighter pitch; the standard wants a turn ' +
      'at least, of 3.2 to 9.6 mm.',
  };
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

/** `at diameter 99.4 mm`, or `past the centre`. */
function diameter({ value }: Finding, text: string): string {
  return value === null || value > 0 ? `at diameter ${text}` : text;
}
