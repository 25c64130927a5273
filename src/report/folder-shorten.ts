import { type Cluster, clustersOf, columnsOf, textOf, widthOf } from './folder-clusters.js';
import { placesByText } from './folder-groups.js';

/** One column: what was left out stands here. */
export type Ellipsis = '…' | '~';

/** What is kept before the place at which names begin to differ. */
const LEAD_CLUSTERS = 1;
export const EXTENSION = /\.[^.\s/]{1,5}$/u;

/**
 * Names in at most `columns` columns. Those that are too long lose their middle, all at the same
 * place, so that beginning and extension stay: the place nearest to the middle at which no two of
 * them come out alike. Where no such place is, those that do are shown from where they differ.
 * @param columns at least 10
 */
export function shortenNames(
  names: readonly string[],
  columns: number,
  ellipsis: Ellipsis,
): string[] {
  const whole = names.map(clustersOf);
  const isLong = (name: readonly Cluster[]) => columnsOf(name) > columns;
  if (!whole.some(isLong)) return whole.map(textOf);
  let best: string[] = [];
  let fewest = Number.POSITIVE_INFINITY;
  for (const head of headsNearestTheMiddle(columns)) {
    const cut = whole.map((name) =>
      isLong(name) ? cutAt(name, head, columns, ellipsis) : textOf(name),
    );
    const alike = groupsAlike(names, cut).flat().length;
    if (alike < fewest) [best, fewest] = [cut, alike];
    if (alike === 0) break;
  }
  const shortened = [...best];
  for (const group of groupsAlike(names, best)) {
    showDifference(group, { names, whole, columns, ellipsis, shortened });
  }
  return shortened;
}

/** Columns that may be kept before the ellipsis, so that an extension and one more stay after. */
function headsNearestTheMiddle(columns: number): number[] {
  const heads = Array.from({ length: columns - 5 }, (_, head) => head);
  const middle = Math.floor((columns - 1) / 2);
  return heads.sort((one, other) => Math.abs(one - middle) - Math.abs(other - middle));
}

function cutAt(
  name: readonly Cluster[],
  head: number,
  columns: number,
  ellipsis: Ellipsis,
): string {
  const begin = textOf(beginning(name, head));
  const end = textOf(ending(name, columns - 1 - head));
  return `${begin}${ellipsis}${end}`;
}

interface Shortening {
  readonly names: readonly string[];
  readonly whole: readonly (readonly Cluster[])[];
  readonly columns: number;
  readonly ellipsis: Ellipsis;
  readonly shortened: string[];
}

/**
 * `…07 b….wav`: names that differ far inside, from just before they do. What stays alike is parted
 * again further in, behind what was told so far: `…x…p….wav`.
 */
function showDifference(
  group: readonly number[],
  shortening: Shortening,
  told = '',
  at = -1,
): void {
  const { names, whole, columns, ellipsis, shortened } = shortening;
  const same = sharedClusters(group.map((index) => whole[index] ?? []));
  if (same <= at) return;
  const from = Math.max(0, same - LEAD_CLUSTERS);
  const room = columns - widthOf(told) - 1;
  for (const index of group) {
    const rest = (whole[index] ?? []).slice(from);
    const extension = EXTENSION.exec(textOf(whole[index] ?? []))?.[0] ?? '';
    const window = textOf(beginning(rest, room - 1 - widthOf(extension)));
    const shown = columnsOf(rest) <= room ? textOf(rest) : `${window}${ellipsis}${extension}`;
    shortened[index] = `${told}${ellipsis}${shown}`;
  }
  for (const alike of groupsAlike(names, shortened, group)) {
    const difference = textOf((whole[alike[0] ?? 0] ?? []).slice(same, same + 1));
    const next = `${told}${ellipsis}${difference}`;
    // What has no room for an extension and two clusters more stays as it is.
    if (widthOf(next) + 9 <= columns) showDifference(alike, shortening, next, same);
  }
}

/** How many clusters all begin with. */
function sharedClusters(members: readonly (readonly Cluster[])[]): number {
  const [first = [], ...others] = members;
  const differs = first.findIndex(({ text }, place) =>
    others.some((other) => other[place]?.text !== text),
  );
  return differs < 0 ? first.length : differs;
}

/** Places of different names that are shown alike, group by group. */
function groupsAlike(
  names: readonly string[],
  shown: readonly string[],
  places?: readonly number[],
): number[][] {
  return placesByText(shown, places).filter(
    (group) => new Set(group.map((place) => names[place])).size > 1,
  );
}

/** As many clusters from the beginning as fit. */
function beginning(name: readonly Cluster[], columns: number): Cluster[] {
  const kept: Cluster[] = [];
  let used = 0;
  for (const cluster of name) {
    used += cluster.columns;
    if (used > columns) break;
    kept.push(cluster);
  }
  return kept;
}

function ending(name: readonly Cluster[], columns: number): Cluster[] {
  return beginning(name.toReversed(), columns).reverse();
}
