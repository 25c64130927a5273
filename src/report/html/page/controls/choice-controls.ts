import { PLANNERS } from '../../../../settings.js';
import type { PageHead } from '../../data/page-head.js';
import { formatsFor } from '../../formats.js';
import type { WhatIf } from '../what-if.js';

/** One of a few that can be tried. */
export interface ChoiceControl {
  readonly name: string;
  readonly label: string;
  readonly choices: readonly (readonly [value: string, text: string])[];
  readonly shown: (whatIf: WhatIf) => string;
  /** An unknown value changes nothing. */
  readonly tried: (whatIf: WhatIf, value: string, head: PageHead) => WhatIf;
}

const EXECUTES = [
  ['machine', 'its own automation'],
  ['plan', 'the plan'],
  ['fixed', 'fixed pitch and depth'],
] as const;
const UNITS = [
  ['metric', 'µm, mm'],
  ['us', 'mil, inch'],
] as const;

export const CHOICE_CONTROLS: readonly ChoiceControl[] = [
  {
    name: 'planner',
    label: 'The plan',
    choices: PLANNERS.map((planner) => [planner, planner]),
    shown: ({ planner }) => planner,
    tried: (whatIf, value) => {
      const planner = PLANNERS.find((one) => one === value);
      return planner === undefined ? whatIf : { ...whatIf, planner };
    },
  },
  {
    name: 'executes',
    label: 'The lathe executes',
    choices: EXECUTES,
    shown: ({ tried }) => tried.executes,
    tried: (whatIf, value) => {
      const executes = EXECUTES.find(([one]) => one === value)?.[0];
      if (executes === undefined) return whatIf;
      return { ...whatIf, tried: { ...whatIf.tried, executes, executesIsSet: true } };
    },
  },
  {
    name: 'disc',
    label: 'Disc',
    choices: [12, 10, 7].map((disc) => [String(disc), `${disc}-inch`]),
    shown: ({ tried }) => String(tried.disc),
    tried: (whatIf, value, { settings }) => {
      const format = formatsFor(settings).find(({ disc }) => String(disc) === value);
      return format === undefined ? whatIf : { ...whatIf, tried: { ...whatIf.tried, ...format } };
    },
  },
  {
    name: 'units',
    label: 'Units',
    choices: UNITS,
    shown: ({ units }) => units,
    tried: (whatIf, value) => {
      const units = UNITS.find(([one]) => one === value)?.[0];
      return units === undefined ? whatIf : { ...whatIf, units };
    },
  },
];
