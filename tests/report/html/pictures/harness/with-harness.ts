import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { type OpenOptions, withPage } from '../../browser/open-page.js';
import type { HarnessData } from './harness-data.js';
import { harnessHtml } from './harness-html.js';

/** Opens the pictures of a side; nothing may be complained of or asked of the network. */
export async function withHarness(
  data: HarnessData,
  use: (page: Page) => Promise<void>,
  options: OpenOptions = {},
): Promise<void> {
  await withPage(
    await harnessHtml(data),
    async ({ page, complaints, requests, dialogs }) => {
      await page.waitForSelector('#alongTheSide .panel');
      await use(page);
      expect(complaints).toEqual([]);
      expect(requests).toEqual([]);
      expect(dialogs).toEqual([]);
    },
    options,
  );
}
