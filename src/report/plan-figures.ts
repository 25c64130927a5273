import type { PlanReport } from '../model/forecast-types.js';
import {
  INCH,
  linesPerInch,
  type Metres,
  type MetresPerTurn,
  MICROMETRE,
  MIL,
  MILLIMETRE,
} from '../units.js';
import { fixed, type Units } from './length-text.js';
import { timeText } from './place-text.js';

/** One figure of a plan: its heading of two lines, and its cell. */
export interface PlanFigure {
  readonly head: string;
  readonly unit: string;
  /** Left out where the screen is narrow. */
  readonly isWide: boolean;
  readonly cell: (plan: PlanReport) => string;
  /** Of the radius alone, where that is all that is known of a plan. */
  readonly radiusCell?: (radius: Metres) => string;
}

/** The figures by which plans are compared, the most asked for first. */
export function planFigures(units: Units): readonly PlanFigure[] {
  const small = SMALL[units];
  const large = LARGE[units];
  const wide = PITCH[units];
  return [
    {
      head: 'ends at',
      unit: large.name,
      isWide: false,
      // A spiral that has crossed the centre has no diameter.
      cell: ({ endDiameter }) => (endDiameter > 0 ? large.text(endDiameter) : '–'),
    },
    { head: 'spare', unit: large.name, isWide: false, cell: ({ spare }) => large.text(spare) },
    {
      head: 'takes',
      unit: large.name,
      isWide: false,
      cell: ({ radiusUsed }) => large.text(radiusUsed),
      radiusCell: large.text,
    },
    {
      head: 'mean',
      unit: 'LPI',
      isWide: false,
      cell: ({ pitchMean }) => fixed(linesPerInch(pitchMean), 1),
    },
    { head: 'widest', unit: wide.name, isWide: false, cell: ({ pitchMax }) => wide.text(pitchMax) },
    {
      head: 'least',
      unit: `land ${small.name}`,
      isWide: false,
      cell: ({ landMin }) => small.text(landMin),
    },
    { head: 'at', unit: '', isWide: false, cell: (plan) => timeText(plan.landMinAtSeconds) },
    {
      head: 'least',
      unit: `width ${small.name}`,
      isWide: false,
      cell: ({ widthMin }) => small.text(widthMin),
    },
    {
      head: 'deepest',
      unit: `cut ${small.name}`,
      isWide: true,
      cell: ({ cutDepthMax }) => small.text(cutDepthMax),
    },
    {
      head: 'steepest',
      unit: '1: rubs',
      isWide: true,
      cell: ({ facetMax }) => fixed(facetMax, 2),
    },
  ];
}

interface Told<Length> {
  readonly name: string;
  readonly text: (length: Length) => string;
}

const SMALL: Readonly<Record<Units, Told<Metres>>> = {
  metric: { name: 'µm', text: (length) => fixed(length / MICROMETRE, 1) },
  us: { name: 'mil', text: (length) => fixed(length / MIL, 2) },
};

const LARGE: Readonly<Record<Units, Told<Metres>>> = {
  metric: { name: 'mm', text: (length) => fixed(length / MILLIMETRE, 1) },
  us: { name: 'in', text: (length) => fixed(length / INCH, 3) },
};

const PITCH: Readonly<Record<Units, Told<MetresPerTurn>>> = {
  metric: SMALL.metric,
  us: { name: 'LPI', text: (pitch) => fixed(linesPerInch(pitch), 1) },
};
