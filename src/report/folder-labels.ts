import { clustersOf, columnsOf } from './folder-clusters.js';
import { placesByText } from './folder-groups.js';
import { type Ellipsis, EXTENSION, shortenNames } from './folder-shorten.js';

/** Something that is told by its file name. */
export interface Named {
  readonly name: string;
  readonly path: string;
}

/**
 * What each file is called in a list: its name, or, where another folder holds one of that name,
 * as much of the end of its path as tells the two apart; in at most `columns` columns.
 */
export function folderLabels(
  files: readonly Named[],
  columns: number,
  ellipsis: Ellipsis,
): string[] {
  const labels = files.map(({ name }) => name);
  for (const indices of placesByText(files.map(({ name }) => name))) {
    const paths = indices.map((index) => files[index]?.path ?? '');
    if (new Set(paths).size < 2) continue;
    const ends = shortestDistinctEnds(paths);
    for (const [place, index] of indices.entries()) labels[index] = ends[place] ?? '';
  }
  return shortenNames(withoutSameExtension(labels, columns), columns, ellipsis);
}

/** Where room is short, an ending that all have tells nothing: `.wav` goes first. */
function withoutSameExtension(labels: string[], columns: number): string[] {
  const extensions = new Set(labels.map((label) => EXTENSION.exec(label)?.[0].toLowerCase()));
  const isLong = labels.some((label) => columnsOf(clustersOf(label)) > columns);
  if (!isLong || extensions.size !== 1) return labels;
  return labels.map((label) => label.replace(EXTENSION, ''));
}

/** The ends of paths, all with as many folders as it takes to tell the different ones apart. */
function shortestDistinctEnds(paths: readonly string[]): string[] {
  const parts = paths.map((path) => path.split('/'));
  const deepest = Math.max(...parts.map(({ length }) => length));
  const different = new Set(paths).size;
  for (let depth = 2; depth < deepest; depth++) {
    const ends = parts.map((names) => names.slice(-depth).join('/'));
    if (new Set(ends).size === different) return ends;
  }
  return [...paths];
}
