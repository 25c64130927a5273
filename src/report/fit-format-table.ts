import type { SideFit } from '../fit/fit-result.js';
import { fixed, largeLengthText, levelText, type Units } from './length-text.js';
import { plainTable } from './plain-table.js';

/** What other sizes and speeds of disc make of the program; the side's own is marked. */
export function formatTable(fit: SideFit, units: Units): string[] {
  return plainTable(
    [
      { align: 'left', gap: 2 },
      ...Array.from({ length: 5 }, () => ({ align: 'right', gap: 2 }) as const),
    ],
    formatRows(fit, units),
  );
}

/** The cells of the table, its heads first. */
export function formatRows({ formats, levelDb }: SideFit, units: Units): string[][] {
  const rows = formats.map(({ disc, rpm, isOwn, headroom, spare, faults }) => [
    `${disc}-inch, ${Number(fixed(rpm, 2))} rpm${isOwn ? ' *' : ''}`,
    levelOrNone(headroom.fillDb),
    levelOrNone(headroom.traceDb),
    levelOrNone(headroom.recommendedDb),
    largeLengthText(spare, units),
    faults === 0 ? '–' : fixed(faults, 0),
  ]);
  const at = levelText(levelDb);
  return [[`at ${at}`, 'fits to', 'faultless to', 'dial in', 'spare', 'faults'], ...rows];
}

function levelOrNone(decibels: number | null): string {
  if (decibels === null) return 'none';
  return decibels >= 12 ? '+12 or more' : levelText(decibels);
}
