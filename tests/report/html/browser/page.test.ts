import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import axe from 'axe-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { type InventedPage, inventedPage } from './invented-page.js';
import { alive, closeBrowser, needBrowser, withPage } from './open-page.js';

/** Ends every context that a name could stand in, and would run if it did. */
const HOSTILE =
  '</script><script>alert(1)</script></title></style><img src=x onerror=alert(2)>' +
  "\" onmouseover=\"alert(3)' onfocus='alert(4)' autofocus <!-- \u202egnp.\u2028{alert(5)}`&#x3c;b&gt;";

let folder = '';
let side: InventedPage;
let hostile: InventedPage;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'furrow-page-test-'));
  side = await inventedPage(folder);
  hostile = await inventedPage(folder, HOSTILE);
}, 60_000);
beforeEach(needBrowser);
afterAll(async () => {
  await closeBrowser();
  await rm(folder, { recursive: true });
});

describe('the page', () => {
  it('asks for nothing beside itself, and breaks nothing of its policy', async () => {
    await withPage(side.html, async ({ page, requests, complaints }) => {
      await alive(page);
      await page.locator('#level').fill('-3');
      await page.locator('#changed:not([hidden])').waitFor();
      expect(requests).toEqual([]);
      expect(complaints).toEqual([]);
    });
  });

  it('would be told if its policy were broken', async () => {
    const broken = side.html.replace('<body>', '<body><img src="x.png" onerror="alert(1)" alt="">');
    await withPage(broken, async ({ page, complaints }) => {
      await alive(page);
      expect(complaints.join()).toContain('Content Security Policy');
    });
  });

  it('shows a hostile name as it is, and runs nothing of it', async () => {
    await withPage(hostile.html, async ({ page, complaints, dialogs, requests }) => {
      await alive(page);
      await page.locator('#level').fill('-3');
      await page.locator('#changed:not([hidden])').waitFor();
      await page.locator('h1').hover();
      const title = await page.locator('h1').textContent();
      expect(title).toContain('</script><script>alert(1)</script>');
      expect(title).toContain('\\u{202e}');
      expect(dialogs).toEqual([]);
      expect(requests).toEqual([]);
      expect(complaints).toEqual([]);
      expect(await page.locator('img').count()).toBe(0);
      expect(await page.locator('script').count()).toBe(2);
      expect(await page.locator('[onmouseover], [onfocus], [onerror]').count()).toBe(0);
    });
  });

  it('a finding leads to its place in the pictures', async () => {
    await withPage(side.html, async ({ page }) => {
      await alive(page);
      const place = page.locator('#unrolled [role="slider"]');
      const before = await place.getAttribute('aria-valuetext');
      const go = page.locator('.all-findings .go').last();
      const time = (await go.textContent()) ?? '';
      await go.click();
      expect(await place.getAttribute('aria-valuetext')).not.toBe(before);
      expect(await place.getAttribute('aria-valuetext')).toContain(time);
    });
  });

  it('dragging along the side shows that stretch alone', async () => {
    await withPage(side.html, async ({ page }) => {
      await alive(page);
      const times = page.locator('#along');
      const whole = await times.textContent();
      const surface = page.locator('#along .surface').first();
      await surface.scrollIntoViewIfNeeded();
      const box = await surface.boundingBox();
      if (box === null) throw new Error('the picture is not there');
      const y = box.y + Math.min(40, box.height / 2);
      await page.mouse.move(box.x + 0.3 * box.width, y);
      await page.mouse.down();
      await page.mouse.move(box.x + 0.5 * box.width, y, { steps: 4 });
      await page.mouse.up();
      expect(await times.textContent()).not.toBe(whole);
    });
  });

  it.for([
    [1280, 'light'],
    [1280, 'dark'],
    [390, 'light'],
    [390, 'dark'],
  ] as const)('%d px wide and %s it has nothing that axe-core finds', async ([width, scheme]) => {
    await withPage(
      side.html,
      async ({ page }) => {
        await alive(page);
        for (const summary of await page.locator('summary').all()) {
          if ((await summary.locator('..').getAttribute('open')) === null) await summary.click();
        }
        await page.evaluate(axe.source);
        const found: string[] = await page.evaluate(
          "axe.run().then(({ violations }) => violations.flatMap(({ id, nodes }) => nodes.map(({ target, failureSummary }) => id + ' ' + target + ' ' + failureSummary)))",
        );
        expect(found).toEqual([]);
      },
      { width, scheme },
    );
  });

  it('does not scroll sideways on a narrow screen', async () => {
    await withPage(
      side.html,
      async ({ page }) => {
        await alive(page);
        expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(390);
      },
      { width: 390, height: 844 },
    );
  });

  it.for(['light', 'dark'] as const)(
    'prints from a %s screen on two sheets, light',
    async (scheme) => {
      await withPage(
        side.html,
        async ({ page }) => {
          await alive(page);
          const pdf = await page.pdf({ preferCSSPageSize: true, printBackground: true });
          expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length).toBe(2);
          await page.emulateMedia({ media: 'print', colorScheme: scheme });
          await page.evaluate("document.documentElement.dataset.printing = ''");
          const paper = "getComputedStyle(document.documentElement).getPropertyValue('--paper')";
          expect(await page.evaluate(paper)).toBe('#ffffff');
        },
        { scheme },
      );
    },
  );

  it('without its script still tells verdict, plans, findings and settings', async () => {
    const still = side.html.replace(/<script type="module">.*?<\/script>\n/s, '');
    await withPage(still, async ({ page }) => {
      for (const part of ['#head', '.plans', '.all-findings', '.settings', '.cautions']) {
        expect((await page.locator(part).textContent())?.length).toBeGreaterThan(20);
      }
      expect(await page.locator('.needs-life').isVisible()).toBe(true);
    });
  });
});
