import { ascii, joined } from '../../support/wav-writer.js';
import type { Draw } from './draw.js';
import { fieldLies } from './fields.js';
import { type Mutation, oneOf } from './mutation.js';
import { type ByteOrder, withLie, withNumber } from './numbers.js';
import { chunksOf, type Form, orderOf, replaced } from './pieces.js';
import { samplesWrong } from './samples.js';

/** What can go wrong in a form of chunks: RIFF, RF64, BW64, AIFF and AIFF-C. */
export const chunksWrong: Mutation = oneOf([
  [4, inForm(sizeLies)],
  [5, inForm(fieldLies)],
  [3, inForm(samplesWrong)],
  [1, inForm(dropped)],
  [1, inForm(doubled)],
  [2, inForm(moved)],
  [1, inForm(nested)],
  [1, inForm(unpacked)],
  [1, inForm(inserted)],
  [1, inForm(renamed)],
  [1, inForm(formLies)],
]);

function inForm(mutate: (form: Form, draw: Draw) => Uint8Array | null): Mutation {
  return (bytes, draw) => {
    const order = orderOf(bytes);
    return order === null ? null : mutate({ bytes, order, chunks: chunksOf(bytes, order) }, draw);
  };
}

function sizeLies({ bytes, order, chunks }: Form, draw: Draw): Uint8Array | null {
  const chunk = draw.any(chunks);
  return chunk && withLie(bytes, { at: chunk.at + 4, width: 4, order }, draw);
}

function formLies({ bytes, order }: Form, draw: Draw): Uint8Array {
  if (draw.chance(0.6)) return withLie(bytes, { at: 4, width: 4, order }, draw);
  const copy = Uint8Array.from(bytes);
  copy.set(ascii(draw.pick(['RIFF', 'RF64', 'BW64', 'RIFX', 'FORM', 'fLaC', 'ID3\x04'])), 0);
  return copy;
}

function dropped({ bytes, chunks }: Form, draw: Draw): Uint8Array | null {
  const chunk = draw.any(chunks);
  return chunk && replaced(bytes, chunk.at, chunk.end);
}

function doubled({ bytes, chunks }: Form, draw: Draw): Uint8Array | null {
  const chunk = draw.any(chunks);
  return chunk && replaced(bytes, chunk.end, chunk.end, bytes.slice(chunk.at, chunk.end));
}

function moved({ bytes, chunks }: Form, draw: Draw): Uint8Array | null {
  const [chunk, before] = [draw.any(chunks), draw.any(chunks)];
  if (chunk === null || before === null || chunk === before) return null;
  const order = chunks.filter((one) => one !== chunk);
  order.splice(order.indexOf(before), 0, chunk);
  return joined([bytes.subarray(0, 12), ...order.map(({ at, end }) => bytes.subarray(at, end))]);
}

/** A chunk as the content of another. */
function nested({ bytes, order, chunks }: Form, draw: Draw): Uint8Array | null {
  const chunk = draw.any(chunks);
  if (chunk === null) return null;
  const inside = joined([ascii(draw.pick(['adtl', 'INFO', ''])), bytes.slice(chunk.at, chunk.end)]);
  const head = headOf(draw.pick(['LIST', 'data', 'SSND', 'FORM', 'JUNK']), inside.length, order);
  return replaced(bytes, chunk.at, chunk.end, head, inside);
}

/** A chunk without its head: its content stands where chunks are read. */
function unpacked({ bytes, chunks }: Form, draw: Draw): Uint8Array | null {
  const chunk = draw.any(chunks);
  return chunk && replaced(bytes, chunk.at, chunk.body);
}

function inserted({ bytes, order, chunks }: Form, draw: Draw): Uint8Array {
  const at = draw.any(chunks)?.at ?? bytes.length;
  const content = new Uint8Array(draw.below(40)).fill(draw.below(256));
  const id = draw.pick(['JUNK', 'fmt ', 'data', 'ds64', 'LIST', 'cue ', 'COMM', 'SSND', '\x1b[2J']);
  const put = joined([headOf(id, content.length, order), content]);
  const lying = draw.chance(0.5) ? withLie(put, { at: 4, width: 4, order }, draw) : put;
  return replaced(bytes, at, at, lying);
}

function renamed({ bytes, chunks }: Form, draw: Draw): Uint8Array | null {
  const [chunk, other] = [draw.any(chunks), draw.any(chunks)];
  if (chunk === null || other === null) return null;
  const copy = Uint8Array.from(bytes);
  copy.set(
    ascii(draw.pick([other.id, '\0\0\0\0', '\xff\xff\xff\xff', '\x1b]0;', 'data'])),
    chunk.at,
  );
  return copy;
}

function headOf(id: string, size: number, order: ByteOrder): Uint8Array {
  return withNumber(
    joined([ascii(id), new Uint8Array(4)]),
    { at: 4, width: 4, order },
    BigInt(size),
  );
}
