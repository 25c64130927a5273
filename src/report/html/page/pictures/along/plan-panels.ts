import { binLand } from '../../../../../model/bin-land.js';
import type { Plan } from '../../../../../model/plan.js';
import { landTolerance } from '../../../../../model/planned-side.js';
import type { Verified } from '../../../../../model/verify.js';
import { lengthText, lpiText } from '../../../../length-text.js';
import type { PageSide } from '../../page-side.js';
import { binRow, type LineInk, largest, type Panel, type PanelLine, quarterRow } from './panel.js';

/** What machine and plan do: pitch, with what it starts from. */
export function pitchPanel({ side, machine, plan, executed, settings, units }: PageSide): Panel {
  const row = ({ pitch }: Plan) => quarterRow(side, pitch);
  const lines: PanelLine[] = [
    { name: 'machine', ink: 'machine', row: row(machine.plan), shows: 'both' },
    { name: 'plan', ink: 'plan', row: row(plan.plan), shows: 'both' },
  ];
  if (settings.executes === 'fixed') {
    lines.push({ name: 'fixed', ink: 'fixed', row: row(executed.plan), shows: 'both' });
  }
  const isByHand = side.hand.basePitch.length > 0;
  if (isByHand) {
    lines.push({
      name: 'base',
      ink: 'second',
      row: quarterRow(side, side.basePitch),
      shows: 'both',
    });
  }
  const least = -largest(side.basePitch.map((pitch) => -pitch));
  const widest = largest(...lines.map((line) => line.row.values));
  return {
    id: 'pitch',
    judged: 0,
    title: 'Pitch',
    lines,
    limits: [
      ...(isByHand ? [] : [{ name: 'base', value: settings.basePitch }]),
      ...(widest > 0.7 * settings.pitchMax ? [{ name: 'widest', value: settings.pitchMax }] : []),
    ],
    domain: [0.8 * least, 1.08 * Math.max(widest, 1.2 * least)],
    scale: 'pitch',
    valueText: (value) => `${lengthText(value, units)}, ${lpiText(value)}`,
  };
}

/** What that leaves: land of each, against what is to be kept. */
export function landPanel({ side, machine, plan, executed, settings, units }: PageSide): Panel {
  const line = (ink: LineInk, verified: Verified): PanelLine => ({
    name: ink,
    ink,
    row: binRow(side, binLand(side, verified.plan)),
    shows: 'least',
    // The quarter turn's, as everywhere else that land is told of a place along the side.
    told: quarterRow(side, verified.land),
  });
  const lines = [line('machine', machine), line('plan', plan)];
  if (settings.executes === 'fixed') lines.push(line('fixed', executed));
  const least = -largest(executed.land.map((land) => -land));
  const { landMin, basePitch, baseWidth } = settings;
  const unmodulated = basePitch - baseWidth - landTolerance(settings);
  const top = 1.5 * Math.max(unmodulated, 2 * landMin);
  return {
    id: 'land',
    judged: lines.findIndex(({ ink }) => ink === settings.executes),
    title: 'Land, the least',
    lines,
    limits: [
      { name: 'to be kept', value: landMin },
      { name: '', value: 0 },
    ],
    domain: [Math.min(1.1 * least, -0.06 * top), top],
    scale: 'length',
    valueText: (value) => lengthText(value, units),
  };
}
