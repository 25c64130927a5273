import { type IntakeFinding, isBrokenRule } from '../intake/broken-rule.js';
import { type FindingContext, type FindingText, findingText } from './finding-text.js';
import { placeText } from './place-text.js';
import { ruleRemedy, ruleText } from './rule-text.js';

/** A finding of intake in words, the forecast's or of a house's rules. */
export function intakeFindingText(finding: IntakeFinding, context: FindingContext): FindingText {
  if (!isBrokenRule(finding)) return findingText(finding, context);
  const { atSeconds } = finding;
  const where = atSeconds === null ? '' : placeText(atSeconds, context.settings);
  const what = `House rule on ${ruleText(finding, context.units)}.`;
  const message = where === '' ? what : `${where}: ${what}`;
  return { what, where, message, remedy: ruleRemedy(finding) };
}
