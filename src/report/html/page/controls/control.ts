import type { WhatIf } from '../what-if.js';

/** A row of the panel. */
export interface Control {
  readonly element: HTMLElement;
  /** Shows what is tried; what the reader is typing is left alone. */
  show(whatIf: WhatIf): void;
}

/** Told of every change by hand. */
export type Change = (change: (whatIf: WhatIf) => WhatIf) => void;
