import type { Settings } from '../../../../settings.js';
import { INCH, linesPerInch, type Metres, MICROMETRE, MIL, MILLIMETRE } from '../../../../units.js';
import type { Units } from '../../../length-text.js';
import type { PageHead } from '../../data/page-head.js';
import type { TriedSettings, WhatIf } from '../what-if.js';

/** A number that can be tried, as the reader sees it: in a unit, between two ends, by steps. */
export interface NumberControl {
  readonly name: string;
  readonly label: string;
  readonly unit: (units: Units) => string;
  readonly step: (units: Units) => number;
  readonly ends: (head: PageHead, whatIf: WhatIf) => readonly [least: number, most: number];
  readonly shown: (whatIf: WhatIf) => number;
  readonly tried: (whatIf: WhatIf, shown: number) => WhatIf;
  /** Has a slider too. */
  readonly slides: boolean;
}

/** Least that two diameters lie apart, m. */
const APART: Metres = 5 * MILLIMETRE;
/** Tightest usual machine limit: 600 lines per inch; common practice, no published source. */
const TIGHTEST_LPI = 600;
/** Twice the half-width less the rounded bottom; a groove as deep as the coating allows. */
const widest = ({ depthMax, bottomRadius }: Settings): Metres =>
  2 * (depthMax + (Math.SQRT2 - 1) * bottomRadius);

export const NUMBER_CONTROLS: readonly NumberControl[] = [
  {
    name: 'level',
    label: 'Level',
    unit: () => 'dB',
    step: () => 0.1,
    ends: ({ levels }) => [levels.least, levels.most],
    shown: ({ levelDb }) => levelDb,
    tried: (whatIf, levelDb) => ({ ...whatIf, levelDb }),
    slides: true,
  },
  {
    name: 'basePitch',
    label: 'Base pitch',
    unit: () => 'LPI',
    step: () => 1,
    ends: ({ settings }) => [
      linesPerInch(settings.pitchMax),
      Math.max(TIGHTEST_LPI, linesPerInch(settings.basePitch)),
    ],
    shown: ({ tried }) => linesPerInch(tried.basePitch),
    tried: (whatIf, lines) => withTried(whatIf, { basePitch: INCH / lines }),
    slides: true,
  },
  small('baseWidth', 'Base width', true, ({ settings }) => [settings.widthMin, widest(settings)]),
  small('landMin', 'Land to keep', true, ({ settings }) => [
    0,
    Math.max(80 * MICROMETRE, settings.landMin),
  ]),
  small('depthTolerance', 'Depth tolerance', false, ({ settings }) => [
    0,
    Math.max(20 * MICROMETRE, settings.depthTolerance),
  ]),
  small('pitchTolerance', 'Pitch tolerance', false, ({ settings }) => [
    0,
    Math.max(20 * MICROMETRE, settings.pitchTolerance),
  ]),
  {
    name: 'timingTolerance',
    label: 'Timing tolerance',
    unit: () => 'quarters',
    step: () => 1,
    ends: ({ settings }) => [0, Math.max(8, settings.timingTolerance)],
    shown: ({ tried }) => tried.timingTolerance,
    tried: (whatIf, timingTolerance) => withTried(whatIf, { timingTolerance }),
    slides: false,
  },
  large('startDiameter', 'Starts at diameter', (_, { tried }) => [
    tried.innerDiameter + APART,
    tried.disc * INCH - MILLIMETRE,
  ]),
  large('innerDiameter', 'Innermost diameter', (_, { tried }) => [
    tried.finishingDiameter,
    tried.startDiameter - APART,
  ]),
];

function small(
  name: 'baseWidth' | 'landMin' | 'depthTolerance' | 'pitchTolerance',
  label: string,
  slides: boolean,
  ends: NumberControl['ends'],
): NumberControl {
  const units = {
    metric: { name: 'µm', length: MICROMETRE, step: 0.1 },
    us: { name: 'mil', length: MIL, step: 0.01 },
  };
  return length(name, label, slides, units, ends);
}

function large(
  name: 'startDiameter' | 'innerDiameter',
  label: string,
  ends: NumberControl['ends'],
): NumberControl {
  const units = {
    metric: { name: 'mm', length: MILLIMETRE, step: 0.01 },
    us: { name: 'in', length: INCH, step: 0.001 },
  };
  return length(name, label, false, units, ends);
}

type LengthUnits = Readonly<
  Record<Units, { readonly name: string; readonly length: Metres; readonly step: number }>
>;

function length(
  name: keyof TriedSettings,
  label: string,
  slides: boolean,
  units: LengthUnits,
  ends: NumberControl['ends'],
): NumberControl {
  return {
    name,
    label,
    slides,
    unit: (of) => units[of].name,
    step: (of) => units[of].step,
    ends: (head, whatIf) => {
      const [least, most] = ends(head, whatIf);
      return [least / units[whatIf.units].length, most / units[whatIf.units].length];
    },
    shown: (whatIf) => Number(whatIf.tried[name]) / units[whatIf.units].length,
    tried: (whatIf, shown) => withTried(whatIf, { [name]: shown * units[whatIf.units].length }),
  };
}

function withTried(whatIf: WhatIf, changes: Partial<TriedSettings>): WhatIf {
  return { ...whatIf, tried: { ...whatIf.tried, ...changes } };
}
