import type { ProfileValue } from '../profile/profile-values.js';
import { jsonText } from './json-text.js';

export interface ProfileValuesContext {
  /** Of the profile file, as it was given or found; null without one. */
  readonly path: string | null;
  readonly version: string;
}

/**
 * Each value with where it comes from, as one JSON document, `furrow.profile-values/1`: `values`
 * holds { value, from, isDefault } by field, `from` being default, disc, file or option, and beside
 * it which disc, line or option. A field of `machine` has a point in its name.
 */
export function profileValuesJson(
  values: readonly ProfileValue[],
  { path, version }: ProfileValuesContext,
): string {
  const document = {
    format: 'furrow.profile-values/1',
    furrow: version,
    profile: path,
    values: Object.fromEntries(
      values.map(({ field, value, isDefault, origin }) => [field, { value, ...origin, isDefault }]),
    ),
  };
  return `${jsonText(document, 2)}\n`;
}
