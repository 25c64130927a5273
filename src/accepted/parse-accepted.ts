import {
  getNodeValue,
  type Node,
  type ParseError,
  parseTree,
  printParseErrorCode,
} from 'jsonc-parser';
import { z } from 'zod';
import { UsageError } from '../errors.js';
import { issueTexts } from '../profile/issue-text.js';
import { nearest } from '../profile/nearest.js';
import { type AcceptedEntry, acceptedEntrySchema, acceptedSchema } from './accepted-schema.js';

/** Far above any list that was written by hand or by `furrow accept`. */
const LARGEST = 10_000_000;
const FIELDS = [...Object.keys(acceptedSchema.shape), ...Object.keys(acceptedEntrySchema.shape)];

/**
 * The entries of a file of accepted findings: JSON with comments, a comma behind the last entry is
 * allowed.
 * @throws UsageError that says all that is wrong, each with path and place: `accepted[2].reason`
 */
export function parseAccepted(path: string, text: string): AcceptedEntry[] {
  if (text.length > LARGEST) {
    throw new UsageError(`${path}: is too large to be a list of accepted findings`);
  }
  const value: unknown = getNodeValue(treeOf(path, text.replace(/^\ufeff/, '')));
  const result = acceptedSchema.safeParse(value);
  if (result.success) return result.data.accepted;
  throw new UsageError(wrongTexts(result.error, value, path).join('\n'));
}

function treeOf(path: string, json: string): Node {
  const errors: ParseError[] = [];
  let root: Node | undefined;
  try {
    root = parseTree(json, errors, { allowTrailingComma: true });
  } catch (cause) {
    // The parser calls itself for each level.
    throw new UsageError(`${path}: is nested too deeply to be a list of accepted findings`, {
      cause,
    });
  }
  const [error] = errors;
  if (error !== undefined) {
    const line = json.slice(0, error.offset).split(/\r\n|\r|\n/).length;
    const what = printParseErrorCode(error.error).replace(/(?<=[a-z])(?=[A-Z])/g, ' ');
    throw new UsageError(`${path}:${line}: ${what.toLowerCase()}`);
  }
  if (root === undefined) throw new UsageError(`${path}: is empty, expected { … }`);
  return root;
}

function wrongTexts(error: z.ZodError, value: unknown, path: string): string[] {
  const placeOf = (place: readonly PropertyKey[]) =>
    place.length === 0 ? path : `${path}: ${placeText(place)}`;
  const [unknown, others] = [
    error.issues.filter((issue) => issue.code === 'unrecognized_keys'),
    error.issues.filter((issue) => issue.code !== 'unrecognized_keys'),
  ];
  const unknownTexts = unknown.flatMap((issue) =>
    issue.keys.map((key) => {
      const near = nearest(key, FIELDS);
      const hint = near === null ? 'see `furrow schema accepted`' : `the nearest is "${near}"`;
      return `${placeOf([...issue.path, key])}: found an unknown field; ${hint}`;
    }),
  );
  return [...issueTexts(new z.ZodError(others), value, FIELDS, placeOf), ...unknownTexts];
}

/** `accepted[2].reason`. */
function placeText(place: readonly PropertyKey[]): string {
  return place
    .map((key) => (typeof key === 'number' ? `[${key}]` : `.${String(key)}`))
    .join('')
    .replace(/^\./, '');
}
