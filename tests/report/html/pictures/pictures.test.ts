import type { Page } from 'playwright-core';
import { afterAll, beforeEach, describe, expect, test } from 'vitest';
import { forecastSide } from '../../../../src/model/forecast-model.js';
import { closeBrowser, needBrowser, type OpenOptions } from '../browser/open-page.js';
import { countOvercut } from './harness/count-overcut.js';
import type { HarnessData } from './harness/harness-data.js';
import { sharedSide } from './harness/invented-side.js';
import { withHarness } from './harness/with-harness.js';

// In Debian's Chromium, from a file: what a reader sees and does.

const invented = sharedSide();

beforeEach((context) => needBrowser(context));
afterAll(closeBrowser);

const withPictures = async (
  use: (page: Page, data: HarnessData) => Promise<void>,
  options: OpenOptions = {},
) => {
  const data = await invented();
  await withHarness(data, async (page) => await use(page, data), options);
};

function forecastOf({ motion, settings, levelDb, planner, source }: HarnessData) {
  return forecastSide(motion, settings, { levelDb, planner, source });
}

/** What the pictures told the page. */
async function toldBy(page: Page): Promise<{ hovered: (number | null)[]; gone: number[] }> {
  return await page.evaluate('harness.told');
}

/** Times under the axis, as seconds. */
async function axisTimes(page: Page): Promise<number[]> {
  const texts = await page.locator('#alongTheSide .time-axis text').allTextContents();
  return texts
    .filter((text) => text.includes(':'))
    .map((text) => {
      const [minutes = '', seconds = ''] = text.split(':');
      return 60 * Number(minutes) + Number(seconds);
    });
}

describe('the side unrolled', () => {
  test.each([
    { width: 1280, height: 900 },
    { width: 390, height: 800 },
  ])('has the warning ink where turns overlap and nowhere else, at $width px', async (size) => {
    await withPictures(async (page, data) => {
      expect(forecastOf(data).fixed.landMin).toBeLessThan(0);
      expect(await countOvercut(page)).toBeGreaterThan(20);
      await page.evaluate('harness.update(-12)');
      expect(forecastOf({ ...data, levelDb: -12 }).fixed.landMin).toBeGreaterThan(0);
      expect(await countOvercut(page)).toBe(0);
    }, size);
  });

  test('tells time, diameter and land under the pointer; a click goes there', async () => {
    await withPictures(async (page, data) => {
      const [spot] = forecastOf(data).hotSpots;
      const ring = await page.locator('#sideUnrolled .ring').first().boundingBox();
      if (ring === null || spot === undefined) throw new Error('no hot spot');
      const middle = [ring.x + ring.width / 2, ring.y + ring.height / 2] as const;
      await page.mouse.move(...middle);
      await page.mouse.click(...middle);
      const { hovered, gone } = await toldBy(page);
      // The start of the bin that the hot spot is in.
      expect(hovered.at(-1)).toBeWithin(spot.atSeconds, 1e-6, 0);
      expect(gone).toBeWithin([spot.atSeconds], 1e-6, 0);
      const readout = await page.locator('#sideUnrolled .readout').textContent();
      expect(readout).toContain(`land ${(spot.land * 1e6).toFixed(1)} µm`);
      expect(readout).toContain(`diameter ${(spot.radius * 2e3).toFixed(1)} mm`);
    });
  });

  test('is walked by keys: a quarter turn, a turn, the next finding, the end', async () => {
    await withPictures(async (page, data) => {
      const forecast = forecastOf(data);
      const turn = data.motion.turnSeconds;
      await page.evaluate('harness.show(0)');
      await page.locator('#sideUnrolled .surface').focus();
      for (const key of ['ArrowRight', 'ArrowDown', 'Home', 'n', 'Enter']) {
        await page.keyboard.press(key);
      }
      const { hovered, gone } = await toldBy(page);
      const first = Math.min(...forecast.findings.flatMap(({ atSeconds }) => atSeconds ?? []));
      expect(hovered.filter((at) => at !== null)).toBeWithin(
        [turn / 4, turn / 4 + turn, -turn, first],
        1e-9,
        0,
      );
      expect(gone).toBeWithin([first], 1e-9, 0);
      const words = await page.locator('#sideUnrolled .surface').getAttribute('aria-valuetext');
      expect(words).toMatch(/turn \d+ · diameter [\d.]+ mm · land -?[\d.]+ µm/);
    });
  });

  test('is painted anew when the scheme of colours changes', async () => {
    await withPictures(async (page) => {
      const corner = '[...harness.pixels(80, 30, 1, 1)].slice(0, 3)';
      const light: number[] = await page.evaluate(corner);
      await page.emulateMedia({ colorScheme: 'dark' });
      await expect.poll(async () => await page.evaluate(corner)).not.toEqual(light);
      const dark: number[] = await page.evaluate(corner);
      expect(Math.max(...dark)).toBeLessThan(Math.min(...light));
    });
  });
});

/** So that all of a picture can be reached by the mouse. */
const TALL = { height: 2600 };

describe('along the side', () => {
  test('a drag zooms to what was dragged over, and Escape shows the whole side again', async () => {
    await withPictures(async (page) => {
      const whole = await axisTimes(page);
      const box = await page.locator('#alongTheSide .panel.land svg').boundingBox();
      if (box === null) throw new Error('no panel');
      const at = (share: number) => box.x + 44 + share * (box.width - 88);
      await page.mouse.move(at(0.5), box.y + 40);
      await page.mouse.down();
      await page.mouse.move(at(0.6), box.y + 50, { steps: 4 });
      await page.mouse.up();
      const zoomed = await axisTimes(page);
      // From a turn of silence before to one after what the last turn completes.
      const length = 4 / 3 + 30 + (4 / 3) * 0.5 + 4 / 3;
      expect(zoomed.length).toBeGreaterThan(2);
      expect(Math.min(...zoomed)).toBeGreaterThan(-4 / 3 + 0.5 * length - 0.2);
      expect(Math.max(...zoomed)).toBeLessThan(-4 / 3 + 0.6 * length + 0.2);
      expect((await toldBy(page)).gone).toEqual([]);
      await page.locator('#alongTheSide .surface').focus();
      await page.keyboard.press('Escape');
      expect(await axisTimes(page)).toEqual(whole);
    }, TALL);
  });

  test('Shift-drag and the strip below move a zoomed view, a double click ends it', async () => {
    await withPictures(async (page) => {
      const whole = await axisTimes(page);
      await page.getByRole('button', { name: 'Closer' }).click();
      await page.getByRole('button', { name: 'Closer' }).click();
      const before = await axisTimes(page);
      const box = await page.locator('#alongTheSide .panel.pitch svg').boundingBox();
      if (box === null) throw new Error('no panel');
      await page.keyboard.down('Shift');
      await page.mouse.move(box.x + 300, box.y + 40);
      await page.mouse.down();
      await page.mouse.move(box.x + 700, box.y + 40, { steps: 5 });
      await page.mouse.up();
      await page.keyboard.up('Shift');
      const moved = await axisTimes(page);
      expect(Math.min(...moved)).toBeLessThan(Math.min(...before));
      const strip = await page.locator('#alongTheSide .overview').boundingBox();
      if (strip === null) throw new Error('no overview');
      await page.mouse.click(strip.x + strip.width - 60, strip.y + 10);
      expect(Math.min(...(await axisTimes(page)))).toBeGreaterThan(Math.max(...moved));
      await page.mouse.dblclick(box.x + 300, box.y + 40);
      expect(await axisTimes(page)).toEqual(whole);
    }, TALL);
  });

  test('a click on a mark goes to its finding', async () => {
    await withPictures(async (page, data) => {
      const times = forecastOf(data).findings.flatMap(({ atSeconds }) => atSeconds ?? []);
      await page.locator('#alongTheSide .mark.fault').first().click();
      const { gone } = await toldBy(page);
      expect(gone).toHaveLength(1);
      expect(times).toContain(gone[0]);
    });
  });

  test('the cursor stands at the same place in every panel, and its values beside their names', async () => {
    await withPictures(async (page, data) => {
      const { quarters } = forecastOf(data);
      const quarter = 30;
      const at = (quarter * data.motion.turnSeconds) / 4;
      await page.evaluate(`harness.show(${at})`);
      const places: number[] = await page
        .locator('#alongTheSide .panel .cursor line')
        .evaluateAll((lines) => lines.map((line) => Number(line.getAttribute('x1'))));
      expect(places).toHaveLength(7);
      expect(new Set(places).size).toBe(1);
      const told = await page.locator('#alongTheSide .panel.pitch .key.plan').textContent();
      expect(told).toContain(`${((quarters.pitch[quarter] ?? 0) * 1e6).toFixed(1)} µm`);
    });
  });
});

describe('under the microscope', () => {
  test('each hot spot has its grooves from above, cut across, and squeezed', async () => {
    await withPictures(async (page, data) => {
      const count = forecastOf(data).hotSpots.length;
      expect(count).toBe(5);
      expect(await page.locator('#underTheMicroscope figure').count()).toBe(count);
      for (const kind of ['.tip', '.view .tolerated', '.view .land.overcut']) {
        expect(await page.locator(`#underTheMicroscope ${kind}`).count()).toBeGreaterThan(0);
      }
    });
  });
});

describe('a side of several tracks', () => {
  const NAME = '<script>top.ran = 1</script> & "second" – a long name for a short track';
  const hand = {
    basePitch: [{ fromSeconds: 15, pitch: 100e-6 }],
    baseWidth: [],
    bands: [{ fromSeconds: 14.2, untilSeconds: 14.8, pitch: 1.5e-3 }],
    tracks: [
      { name: 'First', fromSeconds: 0, untilSeconds: 14 },
      { name: NAME, fromSeconds: 15, untilSeconds: 30 },
    ],
  };

  test('has them named in the pictures, whatever their names hold, and its bands on the disc', async () => {
    const data = await invented();
    await withHarness({ ...data, hand }, async (page) => {
      expect(await page.locator('#sideUnrolled .track').allTextContents()).toEqual(['First', NAME]);
      const along = page.locator('#alongTheSide .marks .track');
      expect(await along.first().locator('title').textContent()).toBe('First');
      expect(await along.last().locator('title').textContent()).toBe(NAME);
      expect(await page.locator('#discFromAbove circle.band').count()).toBe(1);
      await page.evaluate('harness.show(16)');
      expect(await page.locator('#sideUnrolled .readout').textContent()).toContain(NAME);
      const base = await page.locator('#alongTheSide .pitch .key.second').textContent();
      expect(base).toContain('base 100.0 µm');
      expect(await page.evaluate('globalThis.ran')).toBeUndefined();
    });
  });
});
