import { joined } from '../../support/wav-writer.js';
import { bytesWrong } from './bytes.js';
import type { Draw } from './draw.js';
import { type Mutation, oneOf } from './mutation.js';

/** What can go wrong in JSON with comments. */
export const textWrong: Mutation = oneOf([
  [4, numberLies],
  [4, textLies],
  [2, valueReplaced],
  [2, nameDoubled],
  [1, linesMoved],
  [1, nestedDeeply],
  [1, noUtf8],
  [1, bytesWrong],
]);

const NUMBERS = ['0', '-0', '-1', '1e999', '-1e999', '1e-320', '1e308', '9007199254740993', '0.1'];
const TEXTS = [
  '',
  ' ',
  '__proto__',
  'constructor',
  '\\u001b[2J\\u0000',
  '\u009b31m\u202e',
  '=1+1',
  '<script>',
  '\\ud800',
  '1e999um',
  '-0lpi',
  'NaNmm',
  '../../../x',
  'a'.repeat(3000),
];
const VALUES = ['null', 'true', '[]', '{}', '[[]]', '{"a":1}', '""', '0', 'NaN', "'x'"];

/** Texts and bare words, which numbers are among. */
const TOKEN = /"(?:[^"\\]|\\.)*"|-?[\w.+]+/g;
const NUMBER = /(?<=[:,[\s])-?\d[\w.+-]*/g;
const TEXT = /(?<=")(?:[^"\\\n]|\\.)*(?=")/g;

function numberLies(bytes: Uint8Array, draw: Draw): Uint8Array | null {
  return withOne(bytes, NUMBER, draw.any(NUMBERS) ?? '', draw);
}

function textLies(bytes: Uint8Array, draw: Draw): Uint8Array | null {
  return withOne(bytes, TEXT, draw.any(TEXTS) ?? '', draw);
}

function valueReplaced(bytes: Uint8Array, draw: Draw): Uint8Array | null {
  return withOne(bytes, TOKEN, draw.any(VALUES) ?? '', draw);
}

function nameDoubled(bytes: Uint8Array, draw: Draw): Uint8Array | null {
  const names = Array.from(
    Buffer.from(bytes)
      .toString()
      .matchAll(/"\w+"\s*:/g),
    ([name]) => name,
  );
  const name = draw.any(names);
  return name === null ? null : withOne(bytes, /\{/g, `{${name} ${draw.any(VALUES)},`, draw);
}

function linesMoved(bytes: Uint8Array, draw: Draw): Uint8Array {
  const lines = Buffer.from(bytes).toString().split('\n');
  const line = lines.splice(draw.below(lines.length), 1);
  for (let left = draw.pick([0, 1, 2]); left > 0; left--) {
    lines.splice(draw.below(lines.length + 1), 0, ...line);
  }
  return Buffer.from(lines.join('\n'));
}

/** Lists in lists, or names in names, as a value; closed or not. */
function nestedDeeply(bytes: Uint8Array, draw: Draw): Uint8Array | null {
  const depth = draw.pick([3, 50, 700, 1500, 2500, 3500, 6000]);
  const [open, close] = draw.pick([
    ['[', ']'],
    ['{"a":', '}'],
  ]);
  const end = draw.chance(0.8) ? `1${close.repeat(depth)}` : '';
  return withOne(bytes, TOKEN, open.repeat(depth) + end, draw);
}

function noUtf8(bytes: Uint8Array, draw: Draw): Uint8Array {
  const at = draw.below(bytes.length);
  const put = draw.pick([[0xff], [0xc0, 0x80], [0xed, 0xa0, 0x80], [0], [0xef, 0xbb, 0xbf]]);
  return joined([bytes.subarray(0, at), Uint8Array.from(put), bytes.subarray(at)]);
}

/** One of what matches becomes another. */
function withOne(bytes: Uint8Array, like: RegExp, put: string, draw: Draw): Uint8Array | null {
  const text = Buffer.from(bytes).toString();
  const found = draw.any([...text.matchAll(like)]);
  if (found === null) return null;
  const until = found.index + found[0].length;
  return Buffer.from(text.slice(0, found.index) + put + text.slice(until));
}
