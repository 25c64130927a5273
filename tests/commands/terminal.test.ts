// What the engineer sees: the command in a real terminal, by tmux.
import stringWidth from 'string-width';
import { beforeEach, describe, expect, test } from 'vitest';
import { filledFolder } from '../support/filled-folder.js';
import { onTerminal } from '../support/on-terminal.js';
import { needProgram } from '../support/outside-program.js';
import { longWav, mixedSides, NARROW_LATHE, programWav } from '../support/side-files.js';

beforeEach((context) => needProgram('tmux', context));

const ESCAPE = '\u001b';

describe.each([80, 100])('at %d columns', (columns) => {
  test('a table takes one line a side, each cell under its head', async () => {
    const cwd = await filledFolder([...mixedSides(), NARROW_LATHE]);
    const { lines, exitCode } = await onTerminal('forecast --brief .', { cwd, columns });
    const head = lines.findIndex((line) => line.startsWith('  side'));
    const rows = lines.slice(head + 2, head + 2 + mixedSides().length);
    expect(rows.map((row) => row.slice(2, 4).trim())).toEqual(['1', '2', '3', '4', '5', '6', '10']);
    const verdictAt = lines[head]?.indexOf('verdict') ?? -1;
    const told = rows.filter((row) => !row.includes('could not be read'));
    for (const row of told) expect(row.slice(verdictAt)).toMatch(/^(fault|caution|clear) /);
    expect(Math.max(...rows.map((row) => stringWidth(row)))).toBeLessThanOrEqual(columns);
    // stderr: the profile and what cannot be read, which the terminal breaks where it must.
    expect(lines.slice(0, head - 1).join('')).toContain('furrow: profile furrow.profile.json');
    expect(exitCode).toBe(3);
  });

  test('a side with every kind of trouble is one screen, what to dial in first', async () => {
    const cwd = await filledFolder([['side.wav', programWav(30, 8)], NARROW_LATHE]);
    const { lines } = await onTerminal('forecast --quiet side.wav', { cwd, columns });
    expect(lines[0]).toMatch(/^side\.wav: dial in level/);
    expect(lines.join(' ').replaceAll(/\s+/g, ' ')).toMatch(
      /dial in level .* dB, base pitch 282\.2 LPI \(90 µm\), groove 2\.00 mil \(50\.8 µm\), elliptical out/,
    );
    const text = lines.join('\n');
    for (const part of ['FAULT', 'turns at', 'LUFS', 'Widest pitch', 'Least land', 'Findings']) {
      expect(text).toContain(part);
    }
    expect(text).toMatch(/[⠁-⣿]/);
    const cautions = lines.findIndex((line) => line.startsWith('Before the cut:'));
    expect(cautions).toBeGreaterThan(20);
    expect(cautions).toBeLessThanOrEqual(columns === 100 ? 47 : 56);
    // A line that were too long would have been broken here, at the edge and without an indent.
    const side = lines.slice(1, cautions).filter((line) => line !== '');
    expect(side.filter((line) => !line.startsWith('  '))).toEqual([]);
  });
});

test('colours mean nothing that words do not: NO_COLOR leaves the same text', async () => {
  const cwd = await filledFolder([...mixedSides(), NARROW_LATHE]);
  const args = 'forecast --quiet .';
  const plain = { NO_COLOR: '1' };
  const [painted, bare] = [
    await onTerminal(args, { cwd, columns: 100 }),
    await onTerminal(args, { cwd, columns: 100, environment: plain }),
  ];
  expect(painted.coloured).toContain(`${ESCAPE}[`);
  expect(bare.coloured).not.toContain(ESCAPE);
  expect(bare.lines).toEqual(painted.lines);
});

test('a locale without UTF-8 gets the same places in ASCII', async () => {
  const cwd = await filledFolder([['side.wav', programWav(20, 8)], NARROW_LATHE]);
  const { lines } = await onTerminal('forecast --quiet side.wav', {
    cwd,
    columns: 80,
    environment: { LC_ALL: 'C' },
  });
  const text = lines.join('\n');
  expect(text).toMatch(/^ +pitch [\d.]+ um/m);
  expect(text).toMatch(/^[\n -~]+$/);
});

describe('a long run', () => {
  const TWO = [1, 2].map((side) => [`side ${side}.wav`, longWav(600)] as const);

  test('shows how far it is in one line, which is gone in the end', async () => {
    const cwd = await filledFolder(TWO);
    const { lines } = await onTerminal('forecast --brief .', {
      cwd,
      columns: 80,
      whenShown: /^\d of 2 files done, \d+ %.*, now side \d\.wav/m,
    });
    expect(lines.filter((line) => line.includes('files done'))).toEqual([]);
    expect(lines[0]).toBe('furrow: no profile file: built-in defaults');
    expect(lines.slice(1).join('\n')).toMatch(/^ +machine \*/);
  });

  test('is ended by Ctrl-C at once, with 130 and nothing left on the screen', async () => {
    const cwd = await filledFolder(TWO);
    const { lines, exitCode } = await onTerminal('forecast --save-motion . .', {
      cwd,
      columns: 80,
      whenShown: /files done/,
      keys: 'C-c',
    });
    expect(exitCode).toBe(130);
    // Some shells write ^C where it was typed.
    const said = lines.map((line) => line.replace('^C', '')).filter((line) => line !== '');
    expect(said).toEqual(['furrow: no profile file: built-in defaults']);
  });
});
