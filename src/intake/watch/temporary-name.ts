/** Endings under which browsers, transfer programs and editors keep what is not yet whole. */
const ENDING =
  /(?:\.(?:part|partial|filepart|tmp|temp|crdownload|download|opdownload|!ut|swp)|~)$/i;
/** A point hides a file, `~` and `#` are what editors and office programs put before a copy. */
const BEGINNING = /^[.~#]/;

/**
 * Whether a name is one that files have only while they are written: it is left alone until it has
 * taken its own. Common practice, no published source.
 */
export function isTemporaryName(name: string): boolean {
  return BEGINNING.test(name) || ENDING.test(name);
}
