import { BASE_PITCH, LEAD_OUT_ROOM } from '../model/finding-details.js';
import type { Finding, FindingId, Severity } from '../model/forecast-types.js';
import type { Seconds } from '../units.js';
import { aroundText, softer, soundText } from './client-sounds.js';
import { lastingText, minutesText } from './client-times.js';
import { fixed } from './length-text.js';

/** Findings that the same words are for. */
export interface Group {
  readonly id: FindingId;
  readonly severity: Severity;
  readonly first: Finding;
  readonly findings: readonly Finding[];
}

export interface ClientWords {
  /** What is wrong, and what it would sound like or why it cannot go on a disc. */
  readonly problem: string;
  /** Goes on from `What to send instead:`. */
  readonly instead: string;
  /** What is to be done, the same for different ids; absent where nothing else asks for it. */
  readonly cure?: Cure;
}

export type Cure = 'bass in the centre' | 'softer' | 'less loud';

/**
 * A finding in the words of someone who mixes or writes music and has never seen a lathe. null for
 * what the lathe's set-up mends: that is the house's business.
 */
export function clientWords(group: Group, duration: Seconds): ClientWords | null {
  const { first, findings, severity } = group;
  const around = aroundText(findings);
  const bassInCentre = {
    instead: 'a mix with the bass in the centre then: the same on both speakers.',
    cure: 'bass in the centre',
  } as const;
  switch (group.id) {
    case 'overcut':
    case 'land-low':
    case 'pitch-limit':
    case 'off-standard':
    case 'echo-risk':
      return null;
    case 'lift':
      return {
        problem:
          `The bass swings between the two speakers${around}. The groove gets so thin that the ` +
          'needle may jump out of it.',
        ...bassInCentre,
      };
    case 'too-deep':
      return {
        problem:
          `The bass swings between the two speakers${around}. The groove would have to go deeper ` +
          'than the disc allows.',
        ...bassInCentre,
      };
    case 'low-vertical':
      return {
        problem:
          `Much of the bass differs between the two speakers${around}. Not every needle follows that ` +
          'well.',
        ...bassInCentre,
      };
    case 'too-long':
      return first.detail === LEAD_OUT_ROOM ? null : tooLong(first, duration);
    case 'facet':
      return {
        problem:
          severity === 'fault'
            ? `${soundText(findings)} too strong to be cut cleanly and would come out distorted.`
            : `${soundText(findings)} so strong that they may come out rough.`,
        ...softer(findings, around),
      };
    case 'tight-bend':
      return {
        problem:
          severity === 'fault'
            ? `${soundText(findings)} too harsh: even a good needle cannot follow them, and they ` +
              'would come out distorted.'
            : `${soundText(findings)} harsh: simple needles cannot follow them, and on many record ` +
              'players they would come out rough.',
        ...softer(findings, around),
      };
    case 'ultrasonic':
      return {
        problem: 'There is energy above 20 kHz. Nobody hears it, but it heats the cutting machine.',
        instead: 'the same file with everything above 20 kHz filtered out.',
      };
    case 'clipped':
      return {
        problem: `The loudest peaks are cut off flat${countText(first)}. On a record this sounds harsh.`,
        instead:
          'a version from before the peaks were cut off, or with the limiter eased so that they ' +
          'stay whole.',
      };
    case 'over-peak':
      return {
        problem: `Played back, the peaks go${overText(first)} over the maximum, which may distort.`,
        instead: `the same file exported${overText(first)} quieter or more.`,
      };
    case 'jump':
      return {
        problem:
          'There is a click: for a single sample the sound jumps. It would be heard, and it is ' +
          'hard on the cutting machine.',
        instead:
          'the same file with the click repaired, or exported anew if it is not in your own copy.',
      };
    case 'gap-inside':
      return {
        problem: `The sound stops completely${countText({ ...first, value: first.count ?? null })}.`,
        instead: 'nothing, if it is meant to be like this; if not, the file exported anew.',
      };
    case 'dc-offset':
      return {
        problem: `The waveform does not rest in the middle but is shifted all the time${sideText(first)}.`,
        instead:
          'the same file with the DC offset removed; most audio editors have a function of that name.',
      };
    case 'silent':
      return {
        problem: 'There is no sound in this file.',
        instead: 'the file again, after a look at how it was exported.',
      };
    case 'one-sided':
      return {
        problem: `Only the ${first.wall === 'left' ? 'left' : 'right'} speaker plays; the other is silent.`,
        instead: 'a file with sound on both, unless it is meant to be like this.',
      };
    case 'mono':
      return {
        problem: 'Left and right are exactly the same.',
        instead: 'the stereo version; if it is meant to be mono, nothing.',
      };
    case 'polarity':
      return {
        problem:
          'Left and right work against each other: on a single speaker much of the music would ' +
          'vanish, and it is hard to cut.',
        instead:
          'a file with the polarity (often called phase) of one channel turned round, if it is a ' +
          'mistake; playing it in mono will tell.',
      };
    case 'truncated':
      return {
        problem:
          'The file breaks off, or its beginning states a wrong length. What could be read lasts ' +
          `${minutesText(duration)}.`,
        instead: 'the file exported anew; please compare its length with your own copy.',
      };
    case 'rate-low':
      return {
        problem: `The file has a low sampling rate${rateText(first.value, ' of ')}, so that the highest tones are missing.`,
        instead: `the original at${rateText(first.limit, ' ')} or more, not this file converted up.`,
      };
  }
}

/** Where the disc is full is known; the end that lies beyond it is what is too much. */
function tooLong({ severity, atSeconds, detail }: Finding, duration: Seconds): ClientWords {
  const over = atSeconds === null ? 0 : Math.ceil(duration - atSeconds);
  const shorter = over > 0 ? `a side about ${lastingText(over)} shorter` : 'a shorter side';
  return severity === 'fault'
    ? {
        problem:
          detail === BASE_PITCH
            ? 'However quiet, the disc is full here or before, and the music goes on.'
            : 'At the planned loudness the disc is full here, and the music goes on.',
        instead: `${shorter}, or with a song moved to another side.`,
      }
    : {
        problem:
          'From here on the music lies so near the middle of the disc that it sounds duller.',
        instead: `${shorter}, or with a calm song as the last.`,
      };
}

function countText({ value, atSeconds }: Pick<Finding, 'value' | 'atSeconds'>): string {
  if (value === null) return '';
  if (value === 1) return ', once';
  return `, ${value} times${atSeconds === null ? '' : ', the first of them here'}`;
}

/** To a tenth upwards, so that as much as is told is enough. */
function overText({ value }: Finding): string {
  return value === null ? '' : ` ${fixed(Math.ceil(value * 10 - 1e-9) / 10, 1)} dB`;
}

function sideText({ wall }: Finding): string {
  return wall === 'left' || wall === 'right' ? `, on the ${wall}` : '';
}

function rateText(rate: number | null, before: string): string {
  return rate === null ? '' : `${before}${Number(fixed(rate / 1000, 3))} kHz`;
}
