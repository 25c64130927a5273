import { existsSync } from 'node:fs';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Browser, chromium, type Page } from 'playwright-core';
import type { TestContext } from 'vitest';
import { isCi } from '../../../support/outside-program.js';

/** Where Debian's package chromium puts it. */
const CHROMIUM = '/usr/bin/chromium';

/** Like needProgram: without the browser a test is skipped and says what to install; not in CI. */
export function needBrowser(context: TestContext): void {
  if (existsSync(CHROMIUM)) return;
  const advice = "no browser found: install Debian's package chromium";
  if (isCi()) throw new Error(advice);
  context.skip(advice);
}

export interface OpenOptions {
  readonly width?: number;
  readonly height?: number;
  readonly scheme?: 'light' | 'dark';
}

/** What a page was seen to do beside what it shows. */
export interface Opened {
  readonly page: Page;
  /** Errors and violations of its policy, as the console tells them. */
  readonly complaints: readonly string[];
  /** Everything that it asked the network or the disk for, but itself. */
  readonly requests: readonly string[];
  /** Dialogs that were opened. */
  readonly dialogs: readonly string[];
}

let shared: Promise<Browser> | undefined;

/** Opens a page from a file, as a reader would, and hands it to `use` once it is alive. */
export async function withPage<T>(
  html: string,
  use: (opened: Opened) => Promise<T>,
  { width = 1280, height = 900, scheme = 'light' }: OpenOptions = {},
): Promise<T> {
  shared ??= chromium.launch({ executablePath: CHROMIUM, args: ['--no-sandbox'] });
  const browser = await shared;
  const folder = await mkdtemp(join(tmpdir(), 'furrow-page-'));
  const path = join(folder, 'side.html');
  await writeFile(path, html);
  const page = await browser.newPage({ viewport: { width, height }, colorScheme: scheme });
  const opened = { page, complaints: [], requests: [], dialogs: [] } satisfies Opened;
  try {
    watch(page, pathToFileURL(path).href, opened);
    await page.goto(pathToFileURL(path).href);
    return await use(opened);
  } finally {
    await page.close();
    await rm(folder, { recursive: true });
  }
}

export async function closeBrowser(): Promise<void> {
  await (await shared)?.close();
  shared = undefined;
}

/** Waits until the pictures and controls are there. */
export async function alive(page: Page): Promise<void> {
  await page.waitForSelector('html[data-alive]');
}

function watch(
  page: Page,
  href: string,
  seen: { complaints: string[]; requests: string[]; dialogs: string[] },
): void {
  page.on('console', (message) => {
    if (message.type() !== 'debug') seen.complaints.push(message.text());
  });
  page.on('pageerror', (error) => seen.complaints.push(error.message));
  page.on('request', (request) => {
    if (request.url() !== href) seen.requests.push(request.url());
  });
  page.on('dialog', (dialog) => {
    seen.dialogs.push(dialog.message());
    void dialog.dismiss();
  });
}
