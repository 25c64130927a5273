import {
  findNodeAtLocation,
  getNodeValue,
  type Node,
  type ParseError,
  parseTree,
  printParseErrorCode,
} from 'jsonc-parser';
import { UsageError } from '../errors.js';
import { clipped } from './field-name.js';
import { readText } from './read-text.js';

/** What messages call a file, unless it is another kind that is written alike. */
const PROFILE = 'profile';

/** Far above any profile; a larger file is not one. */
const LARGEST = 1_000_000;

/** Nodes within nodes: ten times what any of them has. Whoever walks the tree calls itself. */
const MOST_LEVELS = 100;

/** Letters of what is no JSON that are shown. */
const MOST_SHOWN = 40;

const PLAIN_JSON = 'expected names and texts in double quotes, and numbers in plain digits';

/** A profile file's content, not yet checked. */
export interface ProfileFile {
  /** As it is to be shown. */
  readonly path: string;
  readonly value: unknown;
  /** Line of a field, from 1 on; null if it is not in the file. */
  lineOf(path: readonly PropertyKey[]): number | null;
}

/** Reads a profile; a UsageError if it cannot be read or is no JSON with comments. */
export async function readProfile(
  path: string,
  shownPath = path,
  kind = PROFILE,
): Promise<ProfileFile> {
  let text: string;
  try {
    text = await readText(path, LARGEST);
  } catch (cause) {
    throw new UsageError(`${shownPath}: cannot be read as a ${kind}: ${reasonOf(cause)}`, {
      cause,
    });
  }
  return parseProfile(shownPath, text, kind);
}

function reasonOf(cause: unknown): string {
  if (!(cause instanceof Error)) return 'unknown reason';
  switch ('code' in cause ? cause.code : null) {
    case 'ENOENT':
    case 'ENOTDIR':
      return 'there is no such file';
    case 'EACCES':
    case 'EPERM':
      return 'it may not be read (permissions)';
    default:
      return cause.message.split(',')[0] ?? '';
  }
}

/**
 * The content of a profile file; comments and a comma behind the last entry are allowed.
 * @param largest letters that a file of this kind may have
 */
export function parseProfile(
  path: string,
  text: string,
  kind = PROFILE,
  largest = LARGEST,
): ProfileFile {
  if (text.length > largest) throw new UsageError(`${path}: is too large to be a ${kind}`);
  const json = text.replace(/^\ufeff/, '');
  const root = parsed(path, json, kind);
  const twice = findTwice(root);
  if (twice !== null) {
    const name = clipped(String(twice.value));
    throw new UsageError(`${path}:${lineAt(json, twice.offset)}: "${name}" is set twice`);
  }
  return {
    path,
    value: getNodeValue(root),
    lineOf: (place) => {
      const keys = place.map((key) => (typeof key === 'number' ? key : String(key)));
      const node = findNodeAtLocation(root, keys);
      return node === undefined ? null : lineAt(json, (node.parent ?? node).offset);
    },
  };
}

function parsed(path: string, json: string, kind: string): Node {
  const errors: ParseError[] = [];
  let root: Node | undefined;
  try {
    root = parseTree(json, errors, { allowTrailingComma: true });
  } catch (cause) {
    // The parser calls itself for each level.
    throw new UsageError(`${path}: is nested too deeply to be a ${kind}`, { cause });
  }
  const [error] = errors;
  if (root !== undefined && error === undefined) {
    if (!isDeeper(root, MOST_LEVELS)) return root;
    throw new UsageError(`${path}: is nested too deeply to be a ${kind}`);
  }
  // Where nothing was there at all, the error has no length.
  if (error === undefined || (root === undefined && error.length === 0)) {
    throw new UsageError(`${path}: is empty, expected { … }`);
  }
  throw new UsageError(`${path}:${lineAt(json, error.offset)}: ${errorText(json, error)}`);
}

/** Such as `found ",", expected property name`. */
function errorText(json: string, { error, offset, length }: ParseError): string {
  const words = printParseErrorCode(error)
    .replace(/(?<=[a-z])(?=[A-Z])/g, ' ')
    .toLowerCase();
  const what =
    words === 'invalid symbol' ? PLAIN_JSON : words.replace(/^(.*) expected$/, 'expected $1');
  const found = json.slice(offset, offset + Math.min(length, MOST_SHOWN));
  return found === ''
    ? `found the end of the file, ${what}`
    : `found ${JSON.stringify(found)}, ${what}`;
}

/** Level by level, so that no depth is too deep to be found out. */
function isDeeper(root: Node, most: number): boolean {
  let nodes: readonly Node[] = [root];
  for (let level = 0; nodes.length > 0; level++) {
    if (level > most) return true;
    nodes = nodes.flatMap(({ children = [] }) => children);
  }
  return false;
}

/** The first name that an object in the tree holds a second time. */
function findTwice(node: Node): Node | null {
  const seen = new Set<unknown>();
  for (const child of node.children ?? []) {
    const name = child.type === 'property' ? child.children?.[0] : undefined;
    if (name !== undefined && seen.has(name.value)) return name;
    seen.add(name?.value);
    const inside = findTwice(child);
    if (inside !== null) return inside;
  }
  return null;
}

function lineAt(text: string, offset: number): number {
  return text.slice(0, offset).split(/\r\n|\r|\n/).length;
}
