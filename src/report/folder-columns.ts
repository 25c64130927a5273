import type { Metres, Seconds } from '../units.js';
import { stepLevelText } from './common-level-digits.js';
import type { FolderRow } from './folder-row.js';
import { diameterText, largeLengthText, lengthText, type Units } from './length-text.js';
import { timeText } from './place-text.js';

/** A column of the table after the name. */
export interface FolderColumn {
  /** What stands over it, from top to bottom. */
  readonly head: readonly [string, string, string];
  /** The first line of the head is for this column and the one before. */
  readonly isPair?: boolean;
  readonly align: 'left' | 'right';
  readonly cell: (row: FolderRow) => string;
}

/** What the columns depend on besides a row. */
export interface FolderColumnFacts {
  readonly units: Units;
  /** Whose end diameter the verdict is about, where that is the same for all. */
  readonly executes: FolderRow['executes'] | null;
  readonly tightest: FolderRow | null;
  /** Whether there is room for the place of the worst finding. */
  readonly withPlace: boolean;
}

/** The columns: time, both plans, land, level, verdict, worst finding. */
export function folderColumns(facts: FolderColumnFacts): FolderColumn[] {
  const { units } = facts;
  const large = units === 'us' ? 'in' : 'mm';
  const small = units === 'us' ? 'mil' : 'µm';
  return [
    right(['', 'time', 'min:s'], ({ durationSeconds }) => minutesText(durationSeconds)),
    ...endColumns('machine', large, facts),
    ...endColumns('plan', large, facts),
    right(['least', 'land', small], ({ landMin }) => bare(lengthText(landMin, units))),
    right(['fits', 'up to', 'dB'], holdsText),
    left(['', 'verdict', ''], ({ verdict }) => verdict),
    left(['worst', 'finding', ''], findingText),
    ...(facts.withPlace ? [right(['', 'at', 'min:s'], placeText)] : []),
  ];
}

/** Where a plan ends, and what is left then; `<` marks the least that is left of all. */
function endColumns(
  of: 'machine' | 'plan',
  unit: string,
  { units, executes, tightest }: FolderColumnFacts,
): FolderColumn[] {
  // A blank stands where no mark does; only what is cut can have one.
  const blank = executes === null || executes === of ? ' ' : '';
  const mark = (row: FolderRow) => (row === tightest && row.executes === of ? '<' : blank);
  const spare = (row: FolderRow) => bare(largeLengthText(row[of].spare, units, fewerDigits(units)));
  return [
    right(['', 'ends', unit], (row) => endText(row[of].endDiameter, units)),
    {
      isPair: true,
      ...right(
        [`${of}${executes === of ? ' *' : ''}${blank}`, `spare${blank}`, `${unit}${blank}`],
        (row) => `${spare(row)}${mark(row)}`,
      ),
    },
  ];
}

function endText(diameter: Metres, units: Units): string {
  return diameter > 0 ? bare(diameterText(diameter, units, fewerDigits(units))) : '< 0';
}

/** Hundredths of an inch are enough to compare sides by, and leave room for their names. */
function fewerDigits(units: Units): number {
  return units === 'us' ? -1 : 0;
}

/** Minutes and whole seconds: `22:31`. */
export function minutesText(seconds: Seconds): string {
  return timeText(Math.round(seconds)).replace(/\.0$/, '');
}

/** A level with its sign, or what there is instead. */
function holdsText({ headroom, levelStep, isSilent }: FolderRow): string {
  if (isSilent) return '–';
  const { recommendedDb } = headroom;
  return recommendedDb === null ? 'none' : bare(stepLevelText(recommendedDb, levelStep));
}

/** The worst that counts; where that is a note at most, how many the house accepts, if any. */
function findingText(row: FolderRow): string {
  return tellsAccepted(row) ? `${row.accepted} accepted` : (row.worst?.id ?? '–');
}

function placeText(row: FolderRow): string {
  const { worst } = row;
  if (worst === null || worst.atSeconds === null || tellsAccepted(row)) return '';
  return timeText(worst.atSeconds);
}

function tellsAccepted({ verdict, accepted }: FolderRow): boolean {
  return verdict === 'clear' && accepted > 0;
}

/** The number of a text with its unit. */
function bare(text: string): string {
  return text.replace(/ \S+$/, '');
}

function right(head: FolderColumn['head'], cell: FolderColumn['cell']): FolderColumn {
  return { head, align: 'right', cell };
}

function left(head: FolderColumn['head'], cell: FolderColumn['cell']): FolderColumn {
  return { head, align: 'left', cell };
}
