import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { execa } from 'execa';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { forecastFile } from '../../../../src/forecast-side.js';
import { htmlPage } from '../../../../src/report/html/html-page.js';
import { bundlePage } from '../../../../src/report/html/page/bundle.mjs';
import { findingSection } from '../../../../src/report/html/sections/finding-section.js';
import { headSection } from '../../../../src/report/html/sections/head-section.js';
import { diameterText } from '../../../../src/report/length-text.js';
import { SHELL_COMMAND } from '../../../support/run-furrow.js';
import { type InventedPage, inventedPage } from './invented-page.js';
import { alive, closeBrowser, needBrowser, withPage } from './open-page.js';

let folder = '';
let side: InventedPage;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'furrow-what-if-'));
  side = await inventedPage(folder);
}, 60_000);
beforeEach(needBrowser);
afterAll(async () => {
  await closeBrowser();
  await rm(folder, { recursive: true });
});

const END = '[data-figure="end-plan"]';

describe('what if', () => {
  it.for([-6, -2.5, 3])('a level of %d dB ends where the command ends at it', async (levelDb) => {
    const request = { levelDb, planner: 'turn-ahead' } as const;
    const { forecast } = await forecastFile(side.path, side.settings, request);
    const shown = await withPage(side.html, async ({ page }) => {
      await alive(page);
      await page.locator('#level').fill(String(levelDb));
      return await page.locator(END).textContent();
    });
    expect(shown).toBe(diameterText(forecast.plan.endDiameter, 'metric'));
    expect(shown).not.toBe(diameterText(side.file.forecast.plan.endDiameter, 'metric'));
  });

  it('the tightest plan ends where the command ends, and holds the same level', async () => {
    const settings = { ...side.settings, executes: 'plan', executesIsSet: true } as const;
    const request = { levelDb: -3, planner: 'tightest' } as const;
    const file = await forecastFile(side.path, settings, request);
    await withPage(side.html, async ({ page }) => {
      await alive(page);
      await page.locator('#executes').selectOption('plan');
      await page.locator('#planner').selectOption('tightest');
      await page.locator('#level').fill('-3');
      await page.locator('#head', { hasText: 'at -3.0 dB' }).waitFor();
      const written = headSection(file, 'metric').html;
      const parsed = `(new DOMParser().parseFromString(${JSON.stringify(written)}, 'text/html')).body`;
      expect(await page.locator('#head').textContent()).toBe(
        await page.evaluate(`${parsed}.textContent`),
      );
      expect(await page.locator(END).textContent()).toBe(
        diameterText(file.forecast.plan.endDiameter, 'metric'),
      );
    });
  });

  it('a slider follows the arrow keys, and tables and headline follow it', async () => {
    await withPage(side.html, async ({ page }) => {
      await alive(page);
      const before = await page.locator(END).textContent();
      await page.locator('input.slider').first().focus();
      for (let step = 0; step < 20; step++) await page.keyboard.press('ArrowLeft');
      expect(await page.locator('#level').inputValue()).toBe('-2');
      const after = await page.locator(END).textContent();
      expect(after).not.toBe(before);
      await page.locator('#head', { hasText: 'at -2.0 dB' }).waitFor();
      const millimetres = after?.replace(' mm', '') ?? '';
      expect(await page.locator('.plans').textContent()).toContain(millimetres);
      expect(await page.locator('#changed').textContent()).toContain('level -2 dB');
    });
  });

  it('a number that cannot be is refused in words and changes nothing', async () => {
    await withPage(side.html, async ({ page }) => {
      await alive(page);
      const before = await page.locator(END).textContent();
      await page.locator('#basePitch').fill('0');
      expect(await page.locator('#basePitch-error').textContent()).toContain('from');
      expect(await page.locator('#basePitch').getAttribute('aria-invalid')).toBe('true');
      expect(await page.locator(END).textContent()).toBe(before);
    });
  });

  it('reset brings the forecast back as it was written', async () => {
    await withPage(side.html, async ({ page }) => {
      await alive(page);
      const asWritten = await page.locator('#report').innerHTML();
      await page.locator('#level').fill('-5');
      await page.locator('#disc').selectOption('12');
      await page.locator('#planner').selectOption('machine');
      await page.locator('#changed:not([hidden])').waitFor();
      expect(await page.locator('#report').innerHTML()).not.toBe(asWritten);
      await page.locator('#reset').click();
      await page.locator('#changed').waitFor({ state: 'hidden' });
      expect(await page.locator('#report').innerHTML()).toBe(asWritten);
      expect(await page.locator('#reset').isDisabled()).toBe(true);
    });
  });

  it('findings are told in the very words of the command', async () => {
    const request = { levelDb: -3, planner: 'turn-ahead' } as const;
    const forecast = await forecastFile(side.path, side.settings, request);
    const written = findingSection(forecast, 'us').html;
    await withPage(side.html, async ({ page }) => {
      await alive(page);
      await page.locator('#units').selectOption('us');
      await page.locator('#level').fill('-3');
      await page.locator('#changed:not([hidden])').waitFor();
      const shown = await page.locator('.all-findings').textContent();
      const parsed = `(new DOMParser().parseFromString(${JSON.stringify(written)}, 'text/html')).body`;
      expect(shown).toBe(await page.evaluate(`${parsed}.textContent`));
      expect(shown?.length).toBeGreaterThan(500);
    });
  });

  it('the command is copied, or marked where a page may not copy', async () => {
    await withPage(side.html, async ({ page }) => {
      await alive(page);
      await page.getByText('The same as a command').click();
      await page.locator('#copy').click();
      await page.locator('.copied', { hasText: /Copied|Marked/ }).waitFor();
      const command = await page.locator('#command').textContent();
      expect(await page.evaluate('String(getSelection())')).toBe(command);
    });
  });

  it('of a sheet the command is said to be about all of its sides', async () => {
    const { file } = side;
    const assets = await bundlePage();
    const sheet = { command: ['furrow', 'side'], paths: ['album.sheet.json'] };
    const html = htmlPage(file, [], { units: 'metric', assets, version: '0.0.0', ...sheet });
    const told = async (text: string) =>
      await withPage(text, async ({ page }) => {
        await alive(page);
        await page.getByText('The same as a command').click();
        return await page.getByText('every side of the sheet').count();
      });
    expect([await told(html), await told(side.html)]).toEqual([1, 0]);
  });

  it('tells a screen reader what came of it, once', async () => {
    await withPage(side.html, async ({ page }) => {
      await alive(page);
      const spoken = page.locator('.spoken[role="status"]');
      expect(await spoken.textContent()).toBe('');
      await page.locator('#level').fill('-4');
      await page.locator('#changed:not([hidden])').waitFor();
      expect(await spoken.textContent()).toContain((await page.locator(END).textContent()) ?? '-');
    });
  });

  it('the command that is copied forecasts the same', async () => {
    const [command, end] = await withPage(side.html, async ({ page }) => {
      await alive(page);
      await page.locator('#level').fill('-1.5');
      await page.locator('#basePitch').fill('280');
      await page.getByText('Tolerances and diameters').click();
      await page.locator('#depthTolerance').fill('1.3');
      await page.locator('#landMin').fill('20');
      return await Promise.all([
        page.locator('#command').textContent(),
        page.locator(END).textContent(),
      ]);
    });
    const line = (command ?? '').replace('furrow forecast', `${SHELL_COMMAND} forecast --json`);
    const { stdout } = await execa('sh', ['-c', line], { cwd: folder });
    const { sides } = JSON.parse(stdout);
    expect(`${sides[0].plan.endDiameterMm.toFixed(1)} mm`).toBe(end);
    expect(sides[0].settings.depthTolerance).toBe('1.3um');
  });
});
