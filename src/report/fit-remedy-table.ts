import type { SideFit, WeighedRemedy } from '../fit/fit-result.js';
import { spanOf } from '../fit/remedy.js';
import { clockText, remedyDeed } from './fit-remedy-text.js';
import { largeLengthText, levelText, type Units } from './length-text.js';
import { plainTable } from './plain-table.js';

/** Less than this is not told as a gain: it would read as nothing. */
const LEAST_DB = 0.05;
const LEAST_ROOM = 0.05e-3;

/**
 * Remedies, each by itself: how many faults it mends and how many new ones it
 * brings, what it gains in level and room.
 * Without `details` those that do nothing are left out, and of one control those that a milder
 * position does as well as.
 */
export function remedyTable(fit: SideFit, units: Units, details: boolean): string[] {
  const told = toldRemedies(fit, details);
  if (told.length === 0) return [];
  const rows = told.map((weighed) => [placeOf(weighed, fit), ...remedyCells(weighed, fit, units)]);
  return plainTable(
    [
      { align: 'left', gap: 2 },
      { align: 'left', gap: 2 },
      ...Array.from({ length: 4 }, () => ({ align: 'right', gap: 1 }) as const),
    ],
    [['where', ...REMEDY_HEADS], ...rows],
  );
}

/** What the table tells of a remedy beside where it is done. */
export const REMEDY_HEADS = ['what', 'mends', 'new', 'level', 'room'] as const;

export function remedyCells(weighed: WeighedRemedy, fit: SideFit, units: Units): string[] {
  return [
    remedyDeed(weighed.remedy, fit.settings, units),
    countText(weighed.mends.length),
    countText(weighed.brings.length),
    gained(weighed, fit),
    roomText(weighed.spareGain, units),
  ];
}

/** All remedies for `details`; else without those that do nothing, or no more than a milder one. */
export function toldRemedies({ remedies }: SideFit, details: boolean): readonly WeighedRemedy[] {
  return details ? remedies : remedies.filter((each) => isTold(each, remedies));
}

function placeOf({ remedy }: WeighedRemedy, { settings }: SideFit): string {
  const span = spanOf(remedy);
  if (span === null) return 'all';
  return `${clockText(span.fromSeconds, settings)}–${clockText(span.untilSeconds, settings)}`;
}

function isTold(weighed: WeighedRemedy, all: readonly WeighedRemedy[]): boolean {
  const { remedy, mends, brings, spareGain } = weighed;
  const gains = worthDb(weighed) >= LEAST_DB || spareGain >= LEAST_ROOM;
  if (mends.length === 0 && !gains) return false;
  // A control that is turned further for nothing.
  return !all.some(
    (other) =>
      other !== weighed &&
      other.remedy.kind === remedy.kind &&
      spanOf(other.remedy)?.fromSeconds === spanOf(remedy)?.fromSeconds &&
      other.cost < weighed.cost &&
      mends.every((fault) => other.mends.includes(fault)) &&
      other.brings.length <= brings.length &&
      worthDb(other) >= worthDb(weighed) - LEAST_DB &&
      other.spareGain >= spareGain - LEAST_ROOM,
  );
}

function countText(count: number): string {
  return count === 0 ? '–' : String(count);
}

/** Where the side held at no level before, the one that it holds then; where at none then, that. */
function gained(weighed: WeighedRemedy, { headrooms, planners, executed }: SideFit): string {
  const { gainDb } = weighed;
  if (gainDb === null) {
    const then = holdsDb(weighed);
    if (then !== null) return `to ${levelText(then)}`;
    const before = headrooms[planners.indexOf(executed)];
    return before === undefined || holdsDb(before) === null ? '–' : 'none';
  }
  return Math.abs(gainDb) < LEAST_DB ? '–' : levelText(gainDb);
}

/** The highest level at which a side fits and traces; null where there is none. */
function holdsDb({ fillDb, traceDb }: Pick<WeighedRemedy, 'fillDb' | 'traceDb'>): number | null {
  return fillDb === null || traceDb === null ? null : Math.min(fillDb, traceDb);
}

/** What a remedy gains in level, to compare by: to hold at all is more than any gain. */
function worthDb(weighed: WeighedRemedy): number {
  if (weighed.gainDb !== null) return weighed.gainDb;
  const then = holdsDb(weighed);
  return then === null ? 0 : 100 + then;
}

function roomText(spareGain: number, units: Units): string {
  if (Math.abs(spareGain) < LEAST_ROOM) return '–';
  const text = largeLengthText(spareGain, units);
  return spareGain > 0 ? `+${text}` : text;
}
