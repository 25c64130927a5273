// What the documents point at: links, headings, files of the tree, scripts of npm.
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { codeSpans, DEVELOPERS, headings, prose, README, ROOT, SECURITY } from './markdown.js';

const DOCUMENTS = [
  { name: 'README.md', text: README },
  { name: 'DEVELOPERS.md', text: DEVELOPERS },
  { name: 'SECURITY.md', text: SECURITY },
];
/** Folders whose files the documents name in backticks. */
const IN_THE_TREE = /^(?:src|tests|examples|bin|\.ci)\/[\w./-]+$/;
/** Made by the build or by the demo. */
const MADE = ['src/analysis/kernel/motion-kernel.wasm', 'examples/demo-sides'];

const packageJson = z
  .object({ scripts: z.record(z.string(), z.string()) })
  .parse(JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')));

describe.each(DOCUMENTS)('$name', ({ name, text }) => {
  const links = [...prose(text).matchAll(/\]\(([^)\s]+)\)/g)].map(([, target]) => target ?? '');

  test('links only to files and headings that exist, and nowhere outside', () => {
    const broken = links.filter((link) => !leadsSomewhere(name, text, link));
    expect(broken).toEqual([]);
    expect(links.length).toBeGreaterThan(0);
  });

  test('names only files that exist', () => {
    const named = codeSpans(text).filter((span) => IN_THE_TREE.test(span));
    const missing = named.filter((path) => !MADE.includes(path) && !existsSync(join(ROOT, path)));
    expect(missing).toEqual([]);
    expect(named.length + links.length).toBeGreaterThan(0);
  });

  test('names only scripts that npm has', () => {
    const named = [...text.matchAll(/npm run ([\w:]+)/g)].map(([, script]) => script ?? '');
    expect(named.filter((script) => !Object.hasOwn(packageJson.scripts, script))).toEqual([]);
    expect(named.length).toBeGreaterThan(0);
  });
});

function leadsSomewhere(name: string, text: string, link: string): boolean {
  const [path = '', anchor] = link.split('#');
  if (path === '') return headings(text).some(([, heading]) => anchorOf(heading) === anchor);
  const target = normalize(join(dirname(name), path));
  return !target.startsWith('..') && existsSync(join(ROOT, target));
}

/** The anchor that a heading gets where Markdown is shown as a page. */
function anchorOf(heading: string): string {
  return heading
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N} -]/gu, '')
    .replaceAll(' ', '-');
}
