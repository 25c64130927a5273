import { describe, expect, test } from 'vitest';
import { cuePlaces } from '../../src/sheet/cue-places.js';
import { parseSheet } from '../../src/sheet/read-sheet.js';
import { sheetFromCues } from '../../src/sheet/sheet-from-cues.js';
import { ascii, chunk, joined } from '../support/wav-writer.js';

/** A cue point as it lies in a file: name, position, chunk, chunk start, block start, sample. */
function point(name: number, sample: number): Uint8Array {
  const bytes = new Uint8Array(24);
  const view = new DataView(bytes.buffer);
  view.setUint32(0, name, true);
  view.setUint32(4, 999, true);
  bytes.set(ascii('data'), 8);
  view.setUint32(20, sample, true);
  return bytes;
}

function label(name: number, text: Uint8Array): Uint8Array {
  const head = new Uint8Array(4);
  new DataView(head.buffer).setUint32(0, name, true);
  return chunk('labl', joined([head, text, new Uint8Array(1)]));
}

describe('the marks of a file', () => {
  test('come in order of time with their labels, one a sample, none behind the end', () => {
    const places = cuePlaces(
      {
        points: [point(3, 5000), point(1, 0), point(7, 5000), point(9, 8000), point(2, 7999)],
        labels: [label(7, ascii('Slow Kite')), label(1, ascii('Tin Bell')), label(1, ascii('no'))],
      },
      8000,
    );
    expect(places).toEqual([
      { sample: 0, label: 'Tin Bell' },
      { sample: 5000, label: 'Slow Kite' },
      { sample: 7999, label: '' },
    ]);
  });

  test('are read as UTF-8, and as Latin-1 where they are none', () => {
    const labels = [
      label(1, new TextEncoder().encode('Größe')),
      label(2, Uint8Array.from([0x47, 0xf6, 0x6c])),
    ];
    const places = cuePlaces({ points: [point(1, 0), point(2, 10)], labels }, 100);
    expect(places.map(({ label: text }) => text)).toEqual(['Größe', 'Göl']);
  });

  test('may have a label that is cut off', () => {
    const cut = label(1, ascii('Tin Bell')).subarray(0, 10);
    expect(cuePlaces({ points: [point(1, 0)], labels: [cut] }, 100)).toEqual([
      { sample: 0, label: '' },
    ]);
  });
});

test('become tracks that are the whole file, to the sample and without gaps', () => {
  const places = [
    { sample: 100, label: 'Tin "Bell"' },
    { sample: 5000, label: '' },
  ];
  const text = sheetFromCues('sides/a.wav', 'a.wav', places, 8000);
  const [side] = parseSheet('sheet.json', text).sheet.sides;
  expect(side).toEqual({
    name: 'a.wav',
    tracks: [
      { name: 'start', file: 'sides/a.wav', untilSample: 100 },
      { name: 'Tin "Bell"', file: 'sides/a.wav', fromSample: 100, untilSample: 5000 },
      { name: 'track 3', file: 'sides/a.wav', fromSample: 5000 },
    ],
  });
});

test('are written so that no label acts on a terminal, and read as they were', () => {
  const name = '\u009b31m\u202eTin\u0007 Bell\u2028\x1b[2J';
  const text = sheetFromCues(name, name, [{ sample: 0, label: name }], 8000);
  expect(text).not.toMatch(/[^\n\P{Cc}]|[\p{Bidi_Control}\u2028\u2029]/u);
  const [side] = parseSheet('sheet.json', text).sheet.sides;
  expect(side).toEqual({ name, tracks: [{ name, file: name }] });
});
