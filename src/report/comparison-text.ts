import { moved } from '../model/compare-findings.js';
import type { Change, Comparison, FindingChange, LandChange } from '../model/compare-types.js';
import type { Finding } from '../model/forecast-types.js';
import type { Settings } from '../settings.js';
import { earlierAmountText } from './comparison-amount.js';
import { untoldLand } from './comparison-land.js';
import { type FindingContext, findingText } from './finding-text.js';
import { headline } from './headline.js';
import { diameterText, fixed, largeLengthText, lengthText, levelText } from './length-text.js';
import { timeText } from './place-text.js';
import { safeText } from './safe-text.js';
import { wrapText } from './wrap-text.js';

export interface ComparisonContext extends FindingContext {
  /** Of the terminal; 80 by default. */
  readonly columns?: number;
  /** Every change, however long that gets. */
  readonly details?: boolean;
}

/** Changes that are shown without `details`. */
const MOST_CHANGES = 40;

/**
 * What became of a side since another file: the figures in a sentence, then findings, and land
 * where no finding tells of it, in time order, one a line. All times are the new file's.
 */
export function comparisonText(comparison: Comparison, context: ComparisonContext): string {
  const { columns, details = false } = context;
  const changes = [
    ...untoldLand(comparison, context.settings).map((land) => ({
      at: land.atSeconds,
      text: landText(land, context),
    })),
    ...comparison.findings.map((finding) => ({
      at: finding.atSeconds ?? Number.NEGATIVE_INFINITY,
      text: findingChangeText(finding, comparison.offsetSeconds ?? 0, context),
    })),
  ].sort((one, other) => (one.at === other.at ? 0 : one.at - other.at));
  const shown = changes
    .slice(0, details ? changes.length : MOST_CHANGES)
    .map(({ text }) => wrapText(text, '    ', '      ', columns));
  const rest = changes.length - shown.length;
  if (rest > 0) shown.push(`    and ${rest} more (--details: all of them)`);
  const figures = figureTexts(comparison, context);
  const parts = [
    ...shiftTexts(comparison.offsetSeconds),
    ...figures,
    ...(figures.length + changes.length > 0 ? [] : [nothingText(comparison)]),
  ];
  const head = `Against ${safeText(comparison.name)}: ${parts.join('; ') || 'the places below'}.`;
  return [wrapText(head, '  ', '    ', columns), ...shown].join('\n');
}

function shiftTexts(offset: number | null): string[] {
  if (offset === null) {
    return ['no shift makes the two programs alike, so that times are compared as they stand'];
  }
  if (offset === 0) return [];
  return [`the program starts ${fixed(Math.abs(offset), 1)} s ${offset > 0 ? 'later' : 'earlier'}`];
}

function nothingText({ offsetSeconds }: Comparison): string {
  return `nothing ${offsetSeconds === 0 ? '' : 'else '}that matters has changed`;
}

function figureTexts(comparison: Comparison, { units }: FindingContext): string[] {
  const { verdict } = comparison;
  const level = (decibels: number | null) => (decibels === null ? 'none' : levelText(decibels));
  const lufs = (loudness: number | null) =>
    loudness === null ? 'none' : `${fixed(loudness, 1)} LUFS`;
  const metres = (length: number) => largeLengthText(length, units);
  return [
    changeText('verdict', verdict.before === verdict.after ? null : verdict, (word) => word),
    changeText('lasts', comparison.durationSeconds, timeText),
    changeText('loudness', comparison.loudnessLufs, lufs),
    changeText('ends at', comparison.endDiameter, (length) => diameterText(length, units)),
    changeText('spare radius', comparison.spare, metres),
    changeText('recommended level', comparison.recommendedDb, level),
    changeText('fits up to', comparison.fillDb, level),
    changeText('without a fault up to', comparison.traceDb, level),
  ].filter((text) => text !== '');
}

/** `ends at 120.1 mm, was 121.4 mm`; empty without a change. */
function changeText<Value>(
  what: string,
  change: Change<Value> | null,
  write: (value: Value) => string,
): string {
  if (change === null) return '';
  return `${what} ${write(change.after)}, was ${write(change.before)}`;
}

function landText(land: LandChange, { settings, units }: FindingContext): string {
  const amount = (length: number) =>
    `${lengthText(length, units)}${length >= widestLimit(settings) ? ' or more' : ''}`;
  const where = `${timeText(land.atSeconds)} to ${timeText(land.untilSeconds)}`;
  return `land ${land.change} from ${where}: ${amount(land.after)} is left, was ${amount(land.before)}.`;
}

function widestLimit({ landMin, echoLand }: Settings): number {
  return Math.max(landMin, echoLand);
}

function findingChangeText(
  { change, before, after }: FindingChange,
  offset: number,
  context: ComparisonContext,
): string {
  const was = before === null ? null : moved(before, offset);
  const told = after ?? was;
  if (told === null) return '';
  const accepted = after?.accepted === undefined ? '' : ' (accepted)';
  const { where, what, message } = findingText(told, context);
  // What is gone needs no limit and no reason, only to be known again.
  const isBrief = change === 'gone' && context.details !== true;
  const text = isBrief ? [where, headline(what)].filter((part) => part !== '').join(': ') : message;
  return `${change} ${told.severity}${accepted}: ${text}${earlierText(was, after, context)}`;
}

/** What is now worse or better, as it was; empty for what is new or gone. */
function earlierText(was: Finding | null, is: Finding | null, { units }: FindingContext): string {
  if (was === null || is === null) return '';
  // The amounts of another finding would have to be told with its words.
  if (was.id !== is.id) return ` It was a ${was.severity}.`;
  const severity = was.severity === is.severity ? '' : `a ${was.severity}, `;
  return ` Before: ${severity}${earlierAmountText(was, units)}.`;
}
