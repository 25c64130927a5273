import stringWidth from 'string-width';
import { safeText } from './safe-text.js';

/** What a reader sees as one character, and how many columns a terminal gives it: 1 or 2. */
export interface Cluster {
  readonly text: string;
  readonly columns: number;
}

const SEGMENTER = new Intl.Segmenter('en', { granularity: 'grapheme' });
/** What may be joined or coloured by characters that have no width of their own. */
const PICTURE = /\p{Extended_Pictographic}|\u20e3/u;
/** What needs no looking up: it is most of what a table holds. */
const PLAIN = /^[ -~]*$/;
const INVISIBLE = /\p{Default_Ignorable_Code_Point}/u;

/**
 * A name as clusters, so that it can be cut between them and measured. Controls are shown as
 * \u{…} (safeText), and so is what has no width and is no part of a picture: two names that differ
 * look different. What is shown so is one cluster, never cut inside.
 * Source: Unicode Standard Annexes 29 (clusters) and 11 (width, by the string-width library).
 */
export function clustersOf(name: string): Cluster[] {
  if (PLAIN.test(name)) return Array.from(name, (text) => ({ text, columns: 1 }));
  const shown: Cluster[] = [];
  for (const { segment } of SEGMENTER.segment(name)) {
    for (const text of visible(segment)) shown.push({ text, columns: stringWidth(text) });
  }
  return shown;
}

/** Columns of a text that is fit for the terminal. */
export function widthOf(text: string): number {
  return PLAIN.test(text) ? text.length : stringWidth(text);
}

/** Columns of what is shown. */
export function columnsOf(clusters: readonly Cluster[]): number {
  return clusters.reduce((sum, { columns }) => sum + columns, 0);
}

/** Clusters as text. */
export function textOf(clusters: readonly Cluster[]): string {
  return clusters.map(({ text }) => text).join('');
}

/** A cluster as it is, or taken apart where something in it would act or not be seen. */
function visible(cluster: string): string[] {
  if (safeText(cluster) !== cluster) return Array.from(cluster, safeText);
  if (stringWidth(cluster) === 0) return Array.from(cluster, escaped);
  if (PICTURE.test(cluster) || !INVISIBLE.test(cluster)) return [cluster];
  return Array.from(cluster, (each) => (INVISIBLE.test(each) ? escaped(each) : each));
}

function escaped(character: string): string {
  return `\\u{${(character.codePointAt(0) ?? 0).toString(16)}}`;
}
