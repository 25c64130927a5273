// Names that are written inside of what is read: of sides and tracks, marks, rules, reasons.
import { mkdir, readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { encodeMotion } from '../../src/motion-file/encode-motion.js';
import { emptyMotion } from '../support/empty-motion.js';
import { filledFolder } from '../support/filled-folder.js';
import { runFurrow } from '../support/run-furrow.js';
import { savedMotion } from '../support/saved-motion.js';
import { programWav, type SideFile } from '../support/side-files.js';
import { ascii, chunk, joined, wordBytes } from '../support/wav-writer.js';

const NAME = 'T\u001b[31m\u009b2J\u202e<img src=x onerror=alert(1)>\n=1+1';
/** Controls but for the line break that ends a line, and what turns the direction of writing. */
const RAW = /[^\P{Cc}\n]|\p{Bidi_Control}/u;

const SHEET = JSON.stringify({
  format: 'furrow.sheet/1',
  sides: [
    {
      name: `=A${NAME}`,
      tracks: [
        { file: 'a.wav', name: NAME },
        { file: 'a.wav', name: `@${NAME}`, gapSeconds: 2, marker: true },
      ],
    },
  ],
});
const ACCEPTED = JSON.stringify({
  format: 'furrow.accepted/1',
  accepted: [
    {
      id: 'overcut',
      side: 'a.wav',
      fromSeconds: null,
      untilSeconds: null,
      reason: NAME,
      audioSha256: '0'.repeat(64),
    },
  ],
});

/** A program with a mark at its first sample. */
function markedWav(): Uint8Array {
  const numbers = (...values: number[]) => wordBytes(values, 'pcm', 32);
  const label = joined([numbers(1), ascii(NAME.replace('\u202e', '')), ascii('\0')]);
  return joined([
    programWav(3),
    chunk('cue ', joined([numbers(1, 1, 0), ascii('data'), numbers(0, 0, 0)])),
    chunk('LIST', joined([ascii('adtl'), chunk('labl', label)])),
  ]);
}

const files = (): SideFile[] => [
  ['a.wav', markedWav()],
  ['album.json', SHEET],
  ['furrow.accepted.json', ACCEPTED],
  ['m.motion', encodeMotion(savedMotion(emptyMotion(4), { name: NAME }))],
];

test.each([
  ['a side', 'side album.json --details'],
  ['its JSON', 'side album.json --json'],
  ['its scale', 'side album.json --scale'],
  ['its files', 'side album.json --table out/t.csv --html out/ --cutsheet out/c.html --csv out'],
  ['what would mend it', 'fit album.json'],
  ['tracks from marks', 'side --from-cues a.wav'],
  ['reasons', 'forecast a.wav --details --html out/a.html'],
  ['saved motion', 'forecast m.motion --brief --client out/c.txt --markers out'],
])('%s: none of them gets out raw', async (_, command) => {
  const cwd = await filledFolder(files());
  await mkdir(join(cwd, 'out'));
  const { stdout, stderr, exitCode } = await runFurrow(command.split(' '), { cwd });
  expect(exitCode, stderr).toBe(0);
  const texts = [stdout.replaceAll('\n\f', '\n'), stderr];
  for (const name of await readdir(join(cwd, 'out'))) {
    const text = await readFile(join(cwd, 'out', name), 'utf8');
    expect(name.endsWith('.html') && text.includes('<img src=x'), name).toBe(false);
    texts.push(text.replaceAll('\r\n', '\n'));
  }
  for (const text of texts) expect(RAW.exec(text)?.[0]).toBeUndefined();
  // It was there to get out.
  expect(texts.join('\n')).toMatch(/\\u(\{1b\}|001b)/);
});
