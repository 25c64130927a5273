import type { RuleBreach } from '../intake/broken-rule.js';
import { toldApart } from './finding-amount.js';
import { fixed, frequencyText, lengthText, levelText, type Units } from './length-text.js';

/** What a rule is on, what was found and what the house wants. */
export function ruleText(rule: RuleBreach, units: Units): string {
  switch (rule.id) {
    case 'rule-container': {
      const found = rule.found === 'RIFF' ? 'WAV' : rule.found;
      return `containers: found ${found}, allowed ${listText(rule.allowed)}`;
    }
    case 'rule-rate': {
      const allowed = listText(rule.allowed.map(rateText));
      return `sample rates: found ${rateText(rule.found)}, allowed ${allowed}`;
    }
    case 'rule-depth': {
      const { encoding, bitDepth } = rule.found;
      const found = `${bitDepth} bit${encoding === 'float' ? ' float' : ''}`;
      const allowed = rule.allowed.map((one) => (one === 'float' ? one : `${one} bit`));
      return `bit depths: found ${found}, allowed ${listText(allowed)}`;
    }
    case 'rule-name':
      return `names: found ${rule.found}, expected a match of "${rule.allowed}"`;
    case 'rule-longest': {
      const [found, most] = apart(rule.found, rule.most, minutesText);
      const { disc, rpm, fromLevelDb } = rule;
      const level = fromLevelDb === null ? '' : ` from ${levelText(fromLevelDb)} on`;
      const format = `${disc}-inch at ${Number(fixed(rpm, 2))} rpm${level}`;
      return `the longest side: found ${found}, allowed ${most} on ${format}`;
    }
    case 'rule-land': {
      const [found, least] = apart(rule.found, rule.least, lengthIn(units));
      return `the least land: found ${found}, at least ${least} is asked for`;
    }
    case 'rule-vertical': {
      const [found, most] = apart(rule.found, rule.most, lengthIn(units));
      return `vertical bass: found ${found}, at most ${most} is allowed`;
    }
    case 'rule-head':
    case 'rule-tail':
      return `silence ${rule.id === 'rule-head' ? 'before' : 'behind'} the sound: ${silenceText(rule)}`;
  }
}

/** What would mend it. */
export function ruleRemedy(rule: RuleBreach): string {
  switch (rule.id) {
    case 'rule-container':
    case 'rule-rate':
    case 'rule-depth':
      return 'Ask for an export as the house wants it, not for a conversion of this one.';
    case 'rule-name':
      return 'Ask for the name that the house wants, or rename it.';
    case 'rule-longest':
      return rule.fromLevelDb === null
        ? 'Move a track to another side, or ask for a shorter side.'
        : 'Move a track to another side, take the level down, or ask for a shorter side.';
    case 'rule-land':
      return 'Open the base pitch, cut at a lower level, or narrow the bass.';
    case 'rule-vertical':
      return 'Bring the bass towards mono: an elliptical filter, or check its phase in the mix.';
    case 'rule-head':
    case 'rule-tail':
      return rule.most !== null && rule.found > rule.most
        ? 'Trim it, or lay the file out in a side sheet that does.'
        : 'Lengthen it, or lay the file out in a side sheet that does.';
  }
}

function silenceText({
  found,
  least,
  most,
  silenceDbfs,
}: RuleBreach & { readonly id: 'rule-head' | 'rule-tail' }): string {
  const broken = most !== null && found > most ? most : least;
  const [text, limit] = apart(found, broken ?? found, secondsText);
  const wanted =
    least !== null && most !== null
      ? `${secondsText(least)} to ${secondsText(most)} is asked for`
      : `at ${most === null ? 'least' : 'most'} ${limit} is ${most === null ? 'asked for' : 'allowed'}`;
  return `found ${text} under ${levelText(silenceDbfs)}FS, ${wanted}`;
}

type AmountText = (value: number, more: number) => string;

function apart(found: number, limit: number, text: AmountText): [string, string] {
  return toldApart((more) => [text(found, more), text(limit, more)]);
}

function lengthIn(units: Units): AmountText {
  return (length, more) => lengthText(length, units, more);
}

function listText(entries: readonly string[]): string {
  return entries.join(', ');
}

function rateText(hertz: number): string {
  return hertz >= 1000 ? `${hertz / 1000} kHz` : frequencyText(hertz);
}

/** `22 min`, `21 min 30.5 s`. */
function minutesText(seconds: number, more: number): string {
  const rounded = Number(fixed(seconds, 1 + more));
  const minutes = Math.floor(rounded / 60);
  const rest = Number(fixed(rounded - 60 * minutes, 1 + more));
  return `${minutes} min${rest === 0 ? '' : ` ${rest} s`}`;
}

function secondsText(seconds: number, more = 0): string {
  return `${Number(fixed(seconds, 3 + more))} s`;
}
