/** What decides about colour on one stream. */
export interface ColourFacts {
  readonly environment: Readonly<Record<string, string | undefined>>;
  readonly isTerminal: boolean;
}

/**
 * Whether a stream gets colour: 0, or 1 for the sixteen that every terminal has.
 * FORCE_COLOR decides if it is set (0 and false: none), then NO_COLOR if it is not empty; else
 * terminals get colour unless they call themselves dumb, and pipes and files get none.
 * Source: no-color.org and force-color.org, as they stood in 2024 (from memory).
 */
export function colourLevel({ environment, isTerminal }: ColourFacts): 0 | 1 {
  const { FORCE_COLOR: forced, NO_COLOR: refused, TERM: terminal } = environment;
  if (forced !== undefined) return forced === '0' || forced === 'false' ? 0 : 1;
  if (refused !== undefined && refused !== '') return 0;
  return isTerminal && terminal !== 'dumb' ? 1 : 0;
}
