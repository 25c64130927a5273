import { UsageError } from '../errors.js';
import { fieldName } from '../profile/field-name.js';
import { issueTexts } from '../profile/issue-text.js';
import { parseProfile } from '../profile/profile-file.js';
import { LARGEST_ACCEPTED } from './accepted-name.js';
import { type AcceptedEntry, acceptedEntrySchema, acceptedSchema } from './accepted-schema.js';

const FIELDS = [...Object.keys(acceptedSchema.shape), ...Object.keys(acceptedEntrySchema.shape)];

/**
 * The entries of a file of accepted findings: JSON with comments, a comma behind the last entry is
 * allowed.
 * @throws UsageError that says all that is wrong, each with path and place: `accepted[2].reason`
 */
export function parseAccepted(path: string, text: string): AcceptedEntry[] {
  const { value } = parseProfile(path, text, 'list of accepted findings', LARGEST_ACCEPTED);
  const result = acceptedSchema.safeParse(value);
  if (result.success) return result.data.accepted;
  const placeOf = (place: readonly PropertyKey[]) =>
    place.length === 0 ? path : `${path}: ${fieldName(place)}`;
  throw new UsageError(issueTexts(result.error, value, FIELDS, placeOf, 'accepted').join('\n'));
}
