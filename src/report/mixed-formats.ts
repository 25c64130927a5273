import { dirname, normalize } from 'node:path';
import { WAV_CONTAINERS } from '../analysis/sound-file.js';
import type { SourceFile } from '../forecast-result.js';

/** What the files of a folder are expected to have in common. */
export const FORMAT_ASPECTS = ['rate', 'depth', 'channels', 'container'] as const;
export type FormatAspect = (typeof FORMAT_ASPECTS)[number];

/** What files are compared by: what their heads say, whatever they sound like. */
export type FormatSource = Pick<
  SourceFile,
  'path' | 'container' | 'encoding' | 'bitDepth' | 'sampleRate' | 'channels'
>;

/** Files of a folder that agree in one aspect. */
export interface FormatShare {
  /** `44.1 kHz`, `24 bit`, `32 bit float`, `mono`, `WAV` … */
  readonly value: string;
  /** At least one, in the order they were given. */
  readonly paths: readonly string[];
}

/** An aspect in which files of one folder differ. */
export interface MixedFormat {
  /** As in the paths, without detours; `.` for paths without one. */
  readonly folder: string;
  readonly aspect: FormatAspect;
  /** At least two, the commonest first, equally common ones in the order they were given. */
  readonly shares: readonly FormatShare[];
}

/**
 * In which aspects the files that lie in one folder differ, folder by folder in the order they were
 * given. What lies in different folders is not compared: a folder is a delivery.
 * Source: common practice, no published source.
 * @returns empty where each folder is of one kind
 */
export function mixedFormats(sources: readonly FormatSource[]): readonly MixedFormat[] {
  return [...grouped(sources, ({ path }) => normalize(dirname(path)))].flatMap(([folder, files]) =>
    FORMAT_ASPECTS.flatMap((aspect) => {
      const shares = sharesOf(files, aspect);
      return shares.length > 1 ? [{ folder, aspect, shares }] : [];
    }),
  );
}

function sharesOf(files: readonly FormatSource[], aspect: FormatAspect): FormatShare[] {
  return [...grouped(files, (file) => aspectOf(file, aspect))]
    .map(([value, of]) => ({ value, paths: of.map(({ path }) => path) }))
    .sort((one, other) => other.paths.length - one.paths.length);
}

/** In the order in which the keys come up first. */
function grouped(
  sources: readonly FormatSource[],
  keyOf: (source: FormatSource) => string,
): ReadonlyMap<string, readonly FormatSource[]> {
  const groups = new Map<string, FormatSource[]>();
  for (const source of sources) {
    const key = keyOf(source);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [source]);
    else group.push(source);
  }
  return groups;
}

function aspectOf(file: FormatSource, aspect: FormatAspect): string {
  switch (aspect) {
    case 'rate':
      return `${Number((file.sampleRate / 1000).toFixed(3))} kHz`;
    case 'depth':
      return `${file.bitDepth} bit${file.encoding === 'float' ? ' float' : ''}`;
    case 'channels':
      return file.channels === 1 ? 'mono' : 'stereo';
    case 'container':
      return family(file.container);
  }
}

/** A file becomes RF64 by its length alone, and AIFF-C by who wrote it. */
function family(container: FormatSource['container']): string {
  if (WAV_CONTAINERS.some((one) => one === container)) return 'WAV';
  return container === 'AIFF-C' ? 'AIFF' : container;
}
