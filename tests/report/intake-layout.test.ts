import { stripVTControlCharacters } from 'node:util';
import { Chalk } from 'chalk';
import fc from 'fast-check';
import stringWidth from 'string-width';
import { describe, expect, test } from 'vitest';
import { INTAKE_IDS } from '../../src/intake/broken-rule.js';
import { FAILURE_CODES } from '../../src/report/failure.js';
import { tabbedLayout, terminalLayout } from '../../src/report/intake-layout.js';

const plain = new Chalk({ level: 0 });
const numbers = { time: '120:00', spare: '-104.3', level: '+12.00' };
const clear = { verdict: 'clear', worst: '-', time: '00:04', spare: '85.5', level: '+12.0' };
const facts = { columns: 80, ascii: false, paint: plain, units: 'metric' } as const;

describe('a line a file for programs', () => {
  test('has six cells and one end, whatever the path holds', () => {
    const path = fc.string({ unit: 'binary', minLength: 1 });
    fc.assert(
      fc.property(path, (text) => {
        const line = tabbedLayout([text]).line(0, clear);
        expect(line.split('\t')).toHaveLength(6);
        expect(line.indexOf('\n')).toBe(line.length - 1);
      }),
    );
  });

  test('keeps a whole path, and has no head', () => {
    const path = `${'deep/'.repeat(50)}a.wav`;
    const layout = tabbedLayout([path]);
    expect(layout.line(0, clear)).toBe(`${path}\tclear\t-\t00:04\t85.5\t+12.0\n`);
    expect(layout.head).toBe('');
  });
});

describe('a line a file for a reader', () => {
  const named = fc.array(fc.string({ unit: 'grapheme', minLength: 1, maxLength: 200 }), {
    minLength: 1,
    maxLength: 5,
  });

  test('fits the terminal with any name and any finding, its cells under one another', () => {
    fc.assert(
      fc.property(named, fc.constantFrom(...INTAKE_IDS), (paths, worst) => {
        const layout = terminalLayout(paths, facts);
        const cells = { verdict: 'caution', worst, ...numbers };
        const lines = paths.map((_, at) => layout.line(at, cells).slice(0, -1));
        for (const line of [...lines, layout.head.slice(0, -1)]) {
          expect(stringWidth(line)).toBeLessThanOrEqual(80);
        }
        const places = lines.map((line) => stringWidth(line.slice(0, line.lastIndexOf('caution'))));
        expect(new Set(places).size).toBe(1);
      }),
    );
  });

  test('tells every code of a failure whole, and a folder, within the terminal', () => {
    const paths = [`${'a'.repeat(70)}.wav`];
    const layout = terminalLayout(paths, facts);
    for (const code of FAILURE_CODES) {
      const cells = { verdict: 'failed', worst: code, time: '-', spare: '-', level: '-' };
      const lines = [layout.line(0, cells), layout.line(1, cells, 'in/'.repeat(40))];
      for (const line of lines) {
        expect(line).toMatch(new RegExp(` failed   ${code}\n$`));
        expect(line.length).toBeLessThanOrEqual(81);
      }
    }
  });

  test('gets no control and no mark of direction from a name', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', minLength: 1 }), (path) => {
        const layout = terminalLayout([path, 'a.wav'], facts);
        const lines = layout.line(0, clear) + layout.line(2, clear, path);
        expect(lines).not.toMatch(/[^\P{Cc}\n]|[\p{Bidi_Control}\p{Cs}]/u);
        expect(lines.split('\n')).toHaveLength(3);
      }),
    );
  });

  test('says in colour nothing that its words do not', () => {
    const cells = { ...clear, verdict: 'fault', worst: 'overcut' };
    const paint = new Chalk({ level: 1 });
    const coloured = terminalLayout(['a.wav'], { ...facts, paint }).line(0, cells);
    const bare = stripVTControlCharacters(coloured);
    expect(bare).toBe(terminalLayout(['a.wav'], facts).line(0, cells));
    expect(coloured).not.toBe(bare);
  });
});
