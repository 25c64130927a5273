import { stepLevelText } from './common-level-digits.js';
import { widthOf } from './folder-clusters.js';
import { minutesText } from './folder-columns.js';
import { padded } from './folder-layout.js';
import type { FolderRank } from './folder-rank.js';
import type { FolderRow } from './folder-row.js';
import { largeLengthText, levelText, type Units } from './length-text.js';
import { timeText } from './place-text.js';
import { wrapText } from './wrap-text.js';

export interface FolderSummary {
  readonly rows: readonly FolderRow[];
  /** How many inputs could not be read. */
  readonly failures: number;
  readonly rank: FolderRank;
  readonly units: Units;
  /** What the sides are called, in so many columns less than a line has. */
  readonly names: ReadonlyMap<FolderRow, string>;
}

/** Columns that what is said of a side that stands out leaves no name. */
export const SUMMARY_WIDTH = 60;

/** Under the table: what it is about, how many of what, and the sides that stand out. */
export function folderSummary(summary: FolderSummary): string[] {
  const { rows, failures } = summary;
  const unread = failures === 0 ? '' : `; ${failures} could not be read`;
  if (rows.length === 0) return [`No side was forecast${unread}.`];
  const sides = `${rows.length} side${rows.length === 1 ? '' : 's'}`;
  return [
    ...wrapText(`${aboutText(rows)}.`, '', '  ').split('\n'),
    `${sides}: ${countsText(rows)}${acceptedText(rows)}${unread}.`,
    ...standingOut(summary),
  ];
}

function countsText(rows: readonly FolderRow[]): string {
  const counts = (['fault', 'caution', 'clear'] as const).flatMap((verdict) => {
    const count = rows.filter((row) => row.verdict === verdict).length;
    return count === 0 ? [] : [`${count} ${verdict}`];
  });
  return counts.join(', ');
}

/** What does not count is not passed over. */
function acceptedText(rows: readonly FolderRow[]): string {
  const count = rows.reduce((sum, { accepted }) => sum + accepted, 0);
  return count === 0 ? '' : `; ${count} finding${count === 1 ? '' : 's'} accepted`;
}

/** What the verdicts hold for, as far as it is the same for all. */
function aboutText(rows: readonly FolderRow[]): string {
  const [first] = rows;
  if (first === undefined) return '';
  const sameLathe = rows.every(({ holdsFor }) => holdsFor === first.holdsFor);
  const sameLevel = rows.every(({ levelDb }) => levelDb === first.levelDb);
  const star = sameLathe && first.executes !== 'fixed' ? '* ' : '';
  const lathe = sameLathe ? first.holdsFor : 'what each lathe executes';
  const level = sameLevel ? `level ${levelText(first.levelDb)}` : 'the level of each';
  return `${star}Verdict, land, level and finding are for ${lathe} at ${level}`;
}

function standingOut({ rank, names, units }: FolderSummary): string[] {
  const { worst, tightest, longest } = rank;
  const told: (readonly [string, FolderRow, string])[] = [];
  if (worst !== null) told.push(['> worst', worst, worstText(worst)]);
  if (tightest !== null) {
    const mark = tightest.executes === 'fixed' ? ' ' : '<';
    const spare = largeLengthText(tightest.executed.spare, units);
    told.push([`${mark} tightest`, tightest, `spare ${spare}`]);
  }
  if (longest !== null) told.push(['  longest', longest, minutesText(longest.durationSeconds)]);
  const labels = told.map(([, row]) => names.get(row) ?? '');
  const width = Math.max(0, ...labels.map((label) => widthOf(label)));
  return told.map(
    ([what, , text], index) =>
      `${what.padEnd(12)}${padded(labels[index] ?? '', width, 'left')}  ${text}`,
  );
}

/** At most 46 columns. */
function worstText({ worst, headroom, levelStep, isSilent }: FolderRow): string {
  const at = worst === null || worst.atSeconds === null ? '' : ` at ${timeText(worst.atSeconds)}`;
  const { recommendedDb } = headroom;
  const found = `${worst?.id ?? ''}${at}`;
  if (isSilent) return found;
  if (recommendedDb === null) return `${found}, no level fits`;
  return `${found}, fits up to ${stepLevelText(recommendedDb, levelStep)}`;
}
