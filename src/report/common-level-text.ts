import type { ChalkInstance } from 'chalk';
import type { CommonLevel, CommonLevelShare, CommonLevelSide } from '../model/common-level.js';
import { asciiText } from './ascii-text.js';
import { levelOption, stepLevelText } from './common-level-digits.js';
import { widthOf } from './folder-clusters.js';
import { folderLabels } from './folder-labels.js';
import { padded } from './folder-layout.js';
import { timeText } from './place-text.js';
import { wrapText } from './wrap-text.js';

export interface CommonLevelOptions {
  readonly paint: ChalkInstance;
  /** How many inputs could not be read, and so have no say. */
  readonly failures?: number;
  /** Nothing beyond ASCII, but for names. */
  readonly ascii?: boolean;
}

/** Columns that a side's name may take. */
const NAME = 40;
/** No higher level is looked at, so one as high as this is not a limit. */
const HIGHEST_DB = 12;
/** Sides that are named as those that set the level; more are only marked. */
const MOST_NAMES = 2;

/** The one level for all sides, who sets it, and what the others give away. */
export function commonLevelText(
  common: CommonLevel,
  { paint, failures = 0, ascii = false }: CommonLevelOptions,
): string {
  const names = namesOf(common, ascii);
  const lines = [
    ...wrapText(paint.bold(headText(common, names)), '', '  ').split('\n'),
    ...shareLines(common, names),
    ...common.leftOut.map((side) => `  ${names.get(side) ?? ''} is silent and left out.`),
    ...(failures === 0
      ? []
      : [`  ${failures} could not be read and ${failures === 1 ? 'has' : 'have'} no say.`]),
    '',
  ].join('\n');
  return ascii ? asciiText(lines) : lines;
}

function headText({ levelDb, setBy }: CommonLevel, names: ReadonlyMap<CommonLevelSide, string>) {
  const [first] = setBy;
  if (first === undefined) return 'No common level: no side has sound.';
  const who =
    setBy.length > MOST_NAMES
      ? `${setBy.length} sides, marked >`
      : setBy.map((side) => `${names.get(side) ?? ''}${limitText(side)}`).join(' and ');
  if (levelDb === null) {
    if (first.headroom.recommendedDb !== null) {
      return 'No common level: the level controls have no step in common that holds.';
    }
    const hold = setBy.length === 1 ? 'holds' : 'hold';
    return `No common level: ${who} ${hold} at no level from -12 to +12 dB.`;
  }
  const level = stepLevelText(levelDb, first.levelStep);
  if (levelDb >= HIGHEST_DB) return `Common level: ${level}, the highest looked at.`;
  return `Common level: ${level}, set by ${who}. ${levelOption(levelDb)} shows every side at it.`;
}

/** ` (overcut at 02:24.1)`. */
function limitText({ headroom: { limitedBy } }: CommonLevelSide): string {
  if (limitedBy === null) return '';
  const at = limitedBy.atSeconds === null ? '' : ` at ${timeText(limitedBy.atSeconds)}`;
  return ` (${limitedBy.id}${at})`;
}

/** A line a side: how loud it could go alone, and what it gives away. */
function shareLines(
  { shares, setBy }: CommonLevel,
  names: ReadonlyMap<CommonLevelSide, string>,
): string[] {
  if (shares.length === 0) return [];
  const width = Math.max(0, ...shares.map(({ side }) => widthOf(names.get(side) ?? '')));
  const lines = shares.map((share) => {
    const mark = setBy.includes(share.side) ? '>' : ' ';
    const name = padded(names.get(share.side) ?? '', width, 'left');
    return `${mark} ${name}  ${aloneText(share.side).padStart(10)}  ${givenText(share)}`.trimEnd();
  });
  return [`  ${'side'.padEnd(width)}  fits up to  gives away`, ...lines];
}

function aloneText({ headroom: { recommendedDb }, levelStep }: CommonLevelSide): string {
  return recommendedDb === null ? 'none' : stepLevelText(recommendedDb, levelStep);
}

/** The difference without a sign; what was not looked at may be more. */
function givenText({ side: { headroom, levelStep }, givesAwayDb }: CommonLevelShare): string {
  if (givesAwayDb === null) return '';
  const more = (headroom.recommendedDb ?? 0) >= HIGHEST_DB ? ' or more' : '';
  return `${stepLevelText(givesAwayDb, levelStep).replace('+', '')}${more}`;
}

function namesOf({ shares, leftOut }: CommonLevel, ascii: boolean): Map<CommonLevelSide, string> {
  const sides = [...shares.map(({ side }) => side), ...leftOut];
  const labels = folderLabels(sides, NAME, ascii ? '~' : '…');
  return new Map(sides.map((side, index) => [side, labels[index] ?? '']));
}
