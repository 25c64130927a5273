import { RE2JS } from 're2js';

/** What the name of a file must look like. */
export interface NamePattern {
  /** As a house wrote it. */
  readonly text: string;
  /** Whether the whole of a name is as the pattern has it. */
  readonly matches: (name: string) => boolean;
}

/**
 * A regular expression of RE2: matching takes time in proportion to the name, whatever pattern and
 * name are, so that no name that a client made up can hold the run up. For that it has neither
 * back references nor looks ahead or behind. Letters with marks that come in two pieces, as some
 * systems write them, match like those in one.
 * Source: Unicode normalization form C.
 * @throws RE2JSException where it is none
 */
export function namePattern(text: string): NamePattern {
  const compiled = RE2JS.compile(text.normalize('NFC'));
  return { text, matches: (name) => compiled.matches(name.normalize('NFC')) };
}
