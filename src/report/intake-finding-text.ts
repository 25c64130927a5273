import { type BrokenRule, type IntakeFinding, isBrokenRule } from '../intake/broken-rule.js';
import { type FindingContext, type FindingText, findingText } from './finding-text.js';
import { fixed, frequencyText, lengthText, levelText, type Units } from './length-text.js';
import { placeText } from './place-text.js';

/** A finding of intake in words, the forecast's or of a house's rules. */
export function intakeFindingText(finding: IntakeFinding, context: FindingContext): FindingText {
  if (!isBrokenRule(finding)) return findingText(finding, context);
  const { atSeconds } = finding;
  const where = atSeconds === null ? '' : placeText(atSeconds, context.settings);
  const what = `${ruleText(finding, context.units)}.`;
  return {
    what,
    where,
    message: where === '' ? what : `${where}: ${what}`,
    remedy: remedyText(finding),
  };
}

/** What was found and what is allowed. */
function ruleText(rule: BrokenRule, units: Units): string {
  switch (rule.id) {
    case 'rule-container':
      return `House rule on containers: found ${rule.found === 'RIFF' ? 'WAV' : rule.found}, allowed ${listText(rule.allowed)}`;
    case 'rule-rate':
      return (
        `House rule on sample rates: found ${rateText(rule.found)}, ` +
        `allowed ${listText(rule.allowed.map(rateText))}`
      );
    case 'rule-depth':
      return (
        `House rule on bit depths: found ${depthText(rule.found)}, ` +
        `allowed ${listText(rule.allowed.map((one) => (one === 'float' ? one : `${one} bit`)))}`
      );
    case 'rule-name':
      return `House rule on names: found ${rule.found}, allowed ${rule.allowed}`;
    case 'rule-longest':
      return (
        `House rule on the longest side: found ${minutesText(rule.found)}, allowed ` +
        `${minutesText(rule.most)} on ${rule.disc}-inch at ${Number(fixed(rule.rpm, 2))} rpm` +
        (rule.fromLevelDb === null ? '' : ` from ${levelText(rule.fromLevelDb)} on`)
      );
    case 'rule-land':
      return (
        `House rule on the least land: found ${lengthText(rule.found, units)}, ` +
        `at least ${lengthText(rule.least, units)} is allowed`
      );
    case 'rule-vertical':
      return (
        `House rule on vertical bass: found ${lengthText(rule.found, units)}, ` +
        `at most ${lengthText(rule.most, units)} is allowed`
      );
    case 'rule-head':
    case 'rule-tail':
      return (
        `House rule on silence ${rule.id === 'rule-head' ? 'before' : 'behind'} the sound: ` +
        `found ${secondsText(rule.found)} under ${levelText(rule.silenceDbfs)}FS, ` +
        `allowed ${rangeText(rule.least, rule.most)}`
      );
  }
}

function remedyText({ id }: BrokenRule): string {
  switch (id) {
    case 'rule-container':
    case 'rule-rate':
    case 'rule-depth':
      return 'Ask for an export as the house wants it, not for a conversion of this one.';
    case 'rule-name':
      return 'Ask for the name that the house wants, or rename it.';
    case 'rule-longest':
      return 'Move a track to another side, take the level down, or ask for a shorter side.';
    case 'rule-land':
      return 'Open the base pitch, cut at a lower level, or narrow the bass.';
    case 'rule-vertical':
      return 'Bring the bass towards mono: an elliptical filter, or check its phase in the mix.';
    case 'rule-head':
    case 'rule-tail':
      return 'Trim or lengthen the silence, or lay the file out in a side sheet that does.';
  }
}

function listText(entries: readonly string[]): string {
  return entries.join(', ');
}

function rateText(hertz: number): string {
  return hertz >= 1000 ? `${hertz / 1000} kHz` : frequencyText(hertz);
}

function depthText({
  encoding,
  bitDepth,
}: {
  encoding: 'pcm' | 'float';
  bitDepth: number;
}): string {
  return encoding === 'float' ? `${bitDepth} bit float` : `${bitDepth} bit`;
}

/** `22 min`, `21 min 30.5 s`. */
function minutesText(seconds: number): string {
  const tenths = Math.round(10 * seconds);
  const rest = (tenths % 600) / 10;
  return `${Math.floor(tenths / 600)} min${rest === 0 ? '' : ` ${rest} s`}`;
}

function secondsText(seconds: number): string {
  return `${Number(fixed(seconds, 3))} s`;
}

function rangeText(least: number | null, most: number | null): string {
  if (least === null) return `at most ${secondsText(most ?? 0)}`;
  if (most === null) return `at least ${secondsText(least)}`;
  return `${secondsText(least)} to ${secondsText(most)}`;
}
