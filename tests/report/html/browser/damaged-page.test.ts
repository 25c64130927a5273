import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { contentPolicy } from '../../../../src/report/html/content-policy.js';
import { type InventedPage, inventedPage } from './invented-page.js';
import { alive, closeBrowser, needBrowser, withPage } from './open-page.js';

let folder = '';
let side: InventedPage;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'furrow-damaged-page-test-'));
  side = await inventedPage(folder);
}, 60_000);
beforeEach(needBrowser);
afterAll(async () => {
  await closeBrowser();
  await rm(folder, { recursive: true });
});

describe('a page that cannot be drawn', () => {
  it.for([
    ['cut off', (data: string) => data.slice(0, data.length / 2)],
    ['empty', () => ''],
  ] as const)('says so where its data are %s, and keeps the tables', async ([, damage]) => {
    const html = side.html.replace(
      /(id="side-data">)([^<]*)/,
      (_, tag: string, data: string) => tag + damage(data),
    );
    await withPage(html, async ({ page, complaints }) => {
      await page.waitForSelector('.needs-life:has-text("could not be drawn")');
      expect(complaints.length).toBe(1);
      expect(await page.locator('.plans').isVisible()).toBe(true);
    });
  });

  it('asks for a newer browser where this one cannot inflate', async () => {
    const old = side.html.replaceAll('DecompressionStream', 'NoSuchStream');
    const policy = contentPolicy([between(old, '<script type="module">', '</script>')], []);
    const allowed = String(/script-src '[^']*'/.exec(policy));
    const html = old.replace(/script-src '[^']*'/, () => allowed);
    await withPage(html, async ({ page, complaints }) => {
      await page.waitForSelector('.needs-life:has-text("need a newer browser")');
      expect(complaints).toEqual([]);
    });
  });

  it('is no page that can: that one says that the pictures follow, until they are there', async () => {
    await withPage(side.html, async ({ page }) => {
      await alive(page);
      expect(await page.locator('.needs-life').textContent()).toContain('follow in a moment');
      expect(await page.locator('.needs-life').isVisible()).toBe(false);
    });
  });
});

function between(text: string, from: string, to: string): string {
  const start = text.indexOf(from) + from.length;
  return text.slice(start, text.indexOf(to, start));
}
