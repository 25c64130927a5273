import { basename, dirname } from 'node:path';
import type { SideInput } from '../open-side.js';

/** Where what is accepted of a side is written down. */
export interface AcceptedPlace {
  /** That the list lies in. */
  readonly folder: string;
  /** What the list calls the side: the file's name, of a sheet its name and the side's. */
  readonly side: string;
}

export function acceptedPlace(input: SideInput): AcceptedPlace {
  if (typeof input === 'string') return { folder: dirname(input), side: basename(input) };
  const { sheet, name } = input;
  return { folder: dirname(sheet), side: `${basename(sheet)}: ${name}` };
}
