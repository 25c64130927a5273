import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { afterAll, beforeEach, expect, test } from 'vitest';
import type { MotionSummary } from '../../../../src/analysis/motion.js';
import type { Settings } from '../../../../src/settings.js';
import { emptyMotion } from '../../../support/empty-motion.js';
import { SOUND_SOURCE, settingsWith } from '../../../support/model-settings.js';
import { closeBrowser, needBrowser } from '../browser/open-page.js';
import { countOvercut } from './harness/count-overcut.js';
import type { HarnessData } from './harness/harness-data.js';
import { sharedSide } from './harness/invented-side.js';
import { withHarness } from './harness/with-harness.js';

const invented = sharedSide();

beforeEach((context) => needBrowser(context));
afterAll(closeBrowser);

function sideOf(motion: MotionSummary, changes: Partial<Settings> = {}): HarnessData {
  return {
    name: 'odd.wav',
    settings: settingsWith(changes),
    motion,
    source: SOUND_SOURCE,
    levelDb: 0,
    planner: 'turn-ahead',
    units: 'us',
    microscope: [],
  };
}

/** Walls that swing at every second bin, by 20 µm: too much for a fixed pitch. */
function busyMotion(seconds: number): MotionSummary {
  const motion = emptyMotion(seconds);
  for (let bin = 0; bin < motion.approach.length - 128; bin += 2) {
    motion.approach[bin] = 45e-6;
    motion.approachLoose[bin] = 50e-6;
    motion.outward[bin] = 25e-6;
    motion.inward[bin] = 25e-6;
  }
  return motion;
}

const SIDES: readonly [string, HarnessData][] = [
  ['silent', sideOf(emptyMotion(600))],
  ['of one second', sideOf(busyMotion(1))],
  ['of one turn', sideOf(busyMotion(1.8))],
  [
    'of an hour, past the centre',
    sideOf(busyMotion(3600), { executes: 'fixed', basePitch: 90e-6 }),
  ],
  [
    'of one pitch too narrow for the groove',
    sideOf(busyMotion(60), { executes: 'fixed', basePitch: 45e-6 }),
  ],
];

test.each(SIDES)(
  'a side %s is drawn, no number missing or cut off, no picture taller than two screens',
  async (_, data) => {
    await withHarness(data, async (page) => {
      for (const width of [1280, 390]) {
        await page.setViewportSize({ width, height: 850 });
        const axis = page.locator('#alongTheSide .time-axis');
        await expect
          .poll(async () => await axis.getAttribute('viewBox'))
          .toBe(`0 0 ${width - 32} 38`);
        const drawn = await page.locator('main').innerHTML();
        expect(drawn).not.toMatch(/NaN|Infinity|undefined/);
        for (const id of ['sideUnrolled', 'discFromAbove', 'alongTheSide']) {
          const box = await page.locator(`#${id}`).boundingBox();
          expect(box?.height).toBeGreaterThan(30);
          expect(box?.height).toBeLessThan(1700);
        }
        expect(await overflow(page)).toBe(0);
        expect(await cutOff(page, 'sideUnrolled')).toEqual([]);
      }
    });
  },
);

test('one overcut in a side of twenty minutes is seen: three pixels tall in the warning ink', async () => {
  const motion = emptyMotion(1200);
  motion.approach[10_000] = 40e-6;
  motion.approachLoose[10_000] = 40e-6;
  const data = { ...sideOf(motion, { executes: 'fixed' }), units: 'metric' } as const;
  await withHarness(data, async (page) => {
    // A turn has 64 columns; what is beside the plot is not of it.
    const column = (1248 - 2 * 66) / 64;
    expect(await countOvercut(page)).toBeWithin(3 * column, 4, 0);
  });
});

test('an hour of music is drawn anew in a second, the four pictures together', async () => {
  const [, , , hour] = SIDES;
  if (hour === undefined) throw new Error('no such side');
  await withHarness(hour[1], async (page) => {
    const { all }: { all: number } = await page.evaluate('harness.update(1)');
    // Measured: 0.03 s on an idle machine; the machine that tests is not.
    expect(all).toBeLessThan(1000);
  });
});

test.each([
  ['light', 1280],
  ['dark', 1280],
  ['light', 390],
] as const)('an accessibility check finds nothing, %s at %d px', async (scheme, width) => {
  const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
  await withHarness(
    await invented(),
    async (page) => {
      await page.evaluate(axe);
      const found: { violations: { id: string; nodes: { html: string }[] }[] } =
        await page.evaluate('axe.run()');
      const told = found.violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)]);
      expect(told).toEqual([]);
      expect(await overflow(page)).toBe(0);
    },
    { scheme, width },
  );
});

test('on its way to the printer the side is drawn for paper, light, and hides what paper cannot', async () => {
  await withHarness(
    await invented(),
    async (page) => {
      await page.evaluate("document.documentElement.dataset['printing'] = ''");
      await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
      const box = await page.locator('#alongTheSide .time-axis').getAttribute('viewBox');
      // A4 less margins of 12 mm is 703 CSS pixels; furrow's own choice, a little less.
      expect(Number(box?.split(' ')[2])).toBeWithin(690, 10, 0);
      expect(await page.getByRole('button').count()).toBe(0);
      const corner: number[] = await page.evaluate(
        '[...harness.pixels(240, 90, 1, 1)].slice(0, 3)',
      );
      expect(Math.min(...corner)).toBeGreaterThan(120);
    },
    { scheme: 'dark' },
  );
});

/** By how much the page is wider than its window, CSS pixels. */
async function overflow(page: Page): Promise<number> {
  return await page.evaluate(
    'document.documentElement.scrollWidth - document.documentElement.clientWidth',
  );
}

/** The texts of a picture that reach over its left or right end, where they cannot be read. */
async function cutOff(page: Page, id: string): Promise<string[]> {
  const picture = `document.querySelector('#${id} svg')`;
  return await page.evaluate(
    `(({ left, right }) => [...${picture}.querySelectorAll('text')].filter((text) => {
      const box = text.getBoundingClientRect();
      return box.left < left - 1 || box.right > right + 1;
    }).map((text) => text.textContent))(${picture}.getBoundingClientRect())`,
  );
}
