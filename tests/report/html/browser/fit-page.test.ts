import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import axe from 'axe-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { fitSentence } from '../../../../src/report/fit-sentence.js';
import { timeText } from '../../../../src/report/place-text.js';
import { fitPage } from './fit-page.js';
import { alive, closeBrowser, needBrowser, withPage } from './open-page.js';

const HOSTILE = '</script><script>alert(1)</script></svg><img src=x onerror=alert(2)>" onfocus="';
const FOUND =
  'axe.run().then(({ violations }) => violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => id + " " + target)))';

let folder = '';
let side: Awaited<ReturnType<typeof fitPage>>;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'furrow-fit-page-'));
  side = await fitPage(folder, HOSTILE);
}, 60_000);
beforeEach(needBrowser);
afterAll(async () => {
  await closeBrowser();
  await rm(folder, { recursive: true });
});

describe('the page of a fit', () => {
  it('begins with what is to be done, and keeps it while levels are tried', async () => {
    await withPage(side.html, async ({ page }) => {
      await alive(page);
      const sentence = page.locator('.masthead .fit-sentence');
      expect(await sentence.textContent()).toContain(fitSentence(side.fit, 'metric'));
      await page.locator('#level').fill('-5');
      await page.locator('#changed:not([hidden])').waitFor();
      expect(await sentence.textContent()).toContain(fitSentence(side.fit, 'metric'));
    });
  });

  it('draws every level of every planner, and leaves those with a fault open', async () => {
    const { levels } = side.fit;
    const judged = levels.flatMap(({ judgements }) => judgements);
    const faulty = judged.filter(({ faults }) => faults.length > 0);
    await withPage(side.html, async ({ page }) => {
      expect(await page.locator('.level-chart circle').count()).toBe(judged.length);
      expect(await page.locator('.level-chart .faulty').count()).toBe(faulty.length);
    });
    expect(faulty.length).toBeGreaterThan(0);
    expect(faulty.length).toBeLessThan(judged.length);
  });

  it('leads from what limits the level to its place', async () => {
    const [limit] = side.fit.limits;
    await withPage(side.html, async ({ page }) => {
      await alive(page);
      await page.locator('.limits .go').first().click();
      const place = page.locator('#unrolled [role="slider"]');
      const said = await place.getAttribute('aria-valuetext');
      expect(said).toContain(timeText(limit?.atSeconds ?? Number.NaN));
    });
  });

  it('shows a hostile name as it is, and runs nothing of it', async () => {
    await withPage(side.html, async ({ page, complaints, dialogs, requests }) => {
      await alive(page);
      await page.locator('h1').hover();
      expect(await page.locator('h1').textContent()).toBe(HOSTILE);
      expect([...dialogs, ...requests, ...complaints]).toEqual([]);
      expect(await page.locator('img, [onfocus], [onerror]').count()).toBe(0);
    });
  });

  it.for([
    [1280, 'light'],
    [1280, 'dark'],
    [390, 'light'],
    [390, 'dark'],
  ] as const)(
    '%d px wide and %s has nothing that axe-core finds, and no sideways scroll',
    async ([width, scheme]) => {
      await withPage(
        side.html,
        async ({ page }) => {
          await alive(page);
          await page.evaluate(axe.source);
          expect(await page.evaluate(FOUND)).toEqual([]);
          expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(width);
        },
        { width, scheme },
      );
    },
  );

  it('prints on two sheets, as every side does', async () => {
    await withPage(side.html, async ({ page }) => {
      await alive(page);
      const pdf = await page.pdf({ preferCSSPageSize: true, printBackground: true });
      expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length).toBe(2);
    });
  });
});
