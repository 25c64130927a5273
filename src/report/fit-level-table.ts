import type { SideFit } from '../fit/fit-result.js';
import type { Judgement } from '../model/fit-judge.js';
import { diameterText, fixed, largeLengthText, levelText, type Units } from './length-text.js';
import { plainTable } from './plain-table.js';

/** Levels against the room, whole decibels: each planner's end and faults. */
export function levelTable({ levels, planners, executed }: SideFit, units: Units): string[] {
  const rows = levels.filter(isWholeDecibel);
  const heads = planners.map((planner) => `${planner}${planner === executed ? ' *' : ''}`);
  // Three planners side by side leave no room for where each ends.
  const withEnds = planners.length <= 2;
  const ends = withEnds ? ['ends at'] : [];
  const head = [
    '* is judged',
    ...heads.flatMap((name) => [...ends.map(() => name), ...(withEnds ? [''] : [name]), '']),
  ];
  const subheads = ['', ...planners.flatMap(() => [...ends, 'spare', 'faults'])];
  const cells = rows.map(({ levelDb, judgements }) => [
    levelText(levelDb),
    ...judgements.flatMap((judgement) => judgementCells(judgement, units, withEnds)),
  ]);
  return plainTable(
    [
      { align: 'left', gap: 2 },
      ...planners.flatMap(() => [
        ...ends.map(() => ({ align: 'right', gap: 3 }) as const),
        { align: 'right', gap: withEnds ? 2 : 3 } as const,
        { align: 'right', gap: 2 } as const,
      ]),
    ],
    [head, subheads, ...cells],
  );
}

export function isWholeDecibel({ levelDb }: SideFit['levels'][number]): boolean {
  return Number.isInteger(levelDb);
}

/** @param withEnd tells the end diameter first */
export function judgementCells(
  { endDiameter, spare, faults }: Judgement,
  units: Units,
  withEnd: boolean,
): string[] {
  return [
    ...(withEnd ? [diameterText(endDiameter, units)] : []),
    largeLengthText(spare, units),
    faults.length === 0 ? '–' : fixed(faults.length, 0),
  ];
}
