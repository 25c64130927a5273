import {
  applyEdits,
  type Edit,
  findNodeAtLocation,
  modify,
  type Node,
  parseTree,
  stripComments,
} from 'jsonc-parser';
import { jsonText } from '../report/json-text.js';
import { ACCEPTED_FORMAT, type AcceptedEntry } from './accepted-schema.js';
import type { AcceptedFile } from './read-accepted.js';

/**
 * The text of a file of accepted findings with one more entry, in place of older ones for the same
 * finding: same file, same id, and a stretch that overlaps. Everything else stays as it was
 * written, comments too.
 * @param file what there is, checked; null if there is nothing yet
 */
export function withEntry(file: AcceptedFile | null, entry: AcceptedEntry): string {
  if (file === null) return firstText(entry);
  const older = file.entries.flatMap((each, index) =>
    isOfSameFinding(each, entry) ? [index] : [],
  );
  const [first, ...others] = older;
  const text = file.text.replace(/^\ufeff/, '');
  if (first === undefined) return appended(text, entry);
  // From the last on, so that the places of the others stay the same.
  const fewer = others.reverse().reduce((json, index) => {
    const edits = modify(json, ['accepted', index], undefined, {});
    return applyEdits(json, edits);
  }, text);
  return replaced(fewer, first, entry);
}

function firstText(entry: AcceptedEntry): string {
  const json = jsonText({ format: ACCEPTED_FORMAT, accepted: [entry] }, 2);
  const why =
    '// Findings that the house knows and cuts all the same. Each holds for one file, for as long\n' +
    '// as its sound stays the same.\n';
  return `${why}${json}\n`;
}

function isOfSameFinding(one: AcceptedEntry, other: AcceptedEntry): boolean {
  if (one.side !== other.side || one.id !== other.id) return false;
  const [from, until] = [one.fromSeconds, one.untilSeconds];
  const [otherFrom, otherUntil] = [other.fromSeconds, other.untilSeconds];
  if (from === null || until === null) return otherFrom === null;
  return otherFrom !== null && otherUntil !== null && from <= otherUntil && until >= otherFrom;
}

/** Field by field, so that comments inside of the entry stay; what it did not say yet is added. */
function replaced(json: string, index: number, entry: AcceptedEntry): string {
  const root = rootOf(json);
  const placeOf = (field: string) => findNodeAtLocation(root, ['accepted', index, field]);
  const edits = Object.entries(entry).flatMap(([field, value]): Edit[] => {
    const node = placeOf(field);
    if (node === undefined) return [];
    return [{ offset: node.offset, length: node.length, content: jsonText(value) }];
  });
  const added = Object.entries(entry).filter(([field]) => placeOf(field) === undefined);
  return added.reduce(
    (text, [field, value]) => applyEdits(text, modify(text, ['accepted', index, field], value, {})),
    applyEdits(json, edits),
  );
}

/** Behind the last entry and whatever is said behind it. */
function appended(json: string, entry: AcceptedEntry): string {
  const list = findNodeAtLocation(rootOf(json), ['accepted']);
  if (list === undefined) throw new RangeError('a list of accepted findings without its list');
  const end = list.offset + list.length - 1;
  const last = list.children?.at(-1);
  const lastEnd = last === undefined ? list.offset + 1 : last.offset + last.length;
  const tail = json.slice(lastEnd, end);
  const needsComma = last !== undefined && !stripComments(tail).includes(',');
  const line = json.slice(json.lastIndexOf('\n', list.offset) + 1, list.offset);
  const indent = /^\s*/.exec(line)?.[0] ?? '';
  const eol = json.includes('\r\n') ? '\r\n' : '\n';
  const lines = jsonText(entry, 2).split('\n');
  const text = lines.map((each) => `${eol}${indent}  ${each}`).join('');
  const kept = tail.trimEnd();
  return (
    json.slice(0, lastEnd) +
    `${needsComma ? ',' : ''}${kept}${text}${eol}${indent}` +
    json.slice(end)
  );
}

function rootOf(json: string): Node {
  const root = parseTree(json, [], { allowTrailingComma: true });
  if (root === undefined) throw new RangeError('a list of accepted findings without content');
  return root;
}
