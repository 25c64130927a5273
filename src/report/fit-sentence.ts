import type { SideFit } from '../fit/fit-result.js';
import type { Finding } from '../model/forecast-types.js';
import { findingText } from './finding-text.js';
import { clockText, remedyText } from './fit-remedy-text.js';
import { levelText, type Units } from './length-text.js';

/** What is to be done, in one sentence: the least set of remedies, and how the side then stands. */
export function fitSentence(fit: SideFit, units: Units): string {
  const { leastSet, faults, settings, levelDb } = fit;
  if (fit.findings.some(({ id }) => id === 'silent')) return 'There is nothing to cut.';
  if (faults.length === 0) {
    return `Nothing to mend at ${levelText(levelDb)}; ${standsText(fit.headrooms[fit.planners.indexOf(fit.executed)]?.recommendedDb ?? null, 'the side holds')}.`;
  }
  if (leastSet === null) {
    return `Nothing that was tried mends any of the ${counted(faults.length)} at ${levelText(levelDb)}.`;
  }
  const texts = leastSet.remedies.map((remedy) => remedyText(remedy, settings, units));
  const deeds = listed(texts);
  const start = `${deeds.charAt(0).toUpperCase()}${deeds.slice(1)}`;
  const verb = texts.length === 1 ? 'clears' : 'clear';
  const stands = standsText(leastSet.headroom.recommendedDb, 'the side then holds');
  if (leastSet.left.length === 0) return `${start} ${verb} everything; ${stands}.`;
  const left = leastSet.left.map((fault) => shortText(fault, fit, units));
  return `${start} ${verb} all but ${listed(left.slice(0, 3))}${left.length > 3 ? ` and ${left.length - 3} more` : ''}; ${stands}.`;
}

function standsText(recommendedDb: number | null, subject: string): string {
  if (recommendedDb === null) return `${subject} at no level from -12 to +12 dB`;
  if (recommendedDb >= 12) return `${subject} +12.0 dB or more`;
  return `${subject} ${levelText(recommendedDb)}`;
}

function counted(faults: number): string {
  return `${faults} fault${faults === 1 ? '' : 's'}`;
}

/** `a`, `a and b`, `a, b and c` */
function listed(texts: readonly string[]): string {
  const last = texts.at(-1) ?? '';
  return texts.length < 2 ? last : `${texts.slice(0, -1).join(', ')} and ${last}`;
}

function shortText(fault: Finding, { settings }: SideFit, units: Units): string {
  const [headline = ''] = findingText(fault, { settings, units }).what.split(/: |\.(?= |$)/, 1);
  const text = `${headline.charAt(0).toLowerCase()}${headline.slice(1)}`;
  return fault.atSeconds === null ? text : `${text} at ${clockText(fault.atSeconds, settings)}`;
}
