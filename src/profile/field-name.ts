/** Letters of a name that are shown: a name that is unknown may be of any length. */
const MOST_SHOWN = 60;

/** Where something stands in a document: `sides[0].tracks[2].gapSeconds`. */
export function fieldName(path: readonly PropertyKey[]): string {
  return path
    .map((key) => (typeof key === 'number' ? `[${key}]` : `.${clipped(String(key))}`))
    .join('')
    .replace(/^\./, '');
}

/** A name from outside, at a length that leaves room for what is said of it. */
export function clipped(name: string): string {
  return name.length > MOST_SHOWN ? `${name.slice(0, MOST_SHOWN - 3)}…` : name;
}
