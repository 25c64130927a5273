import type { Page } from 'playwright-core';

/** Pixels of the warning ink in the light scheme: dark red, which no other ink there is. */
export async function countOvercut(page: Page): Promise<number> {
  return await page.evaluate(`(() => {
    const data = harness.pixels();
    let count = 0;
    for (let at = 0; at < data.length; at += 4) {
      const [red, green] = [data[at], data[at + 1]];
      if (data[at + 3] === 255 && red > 50 && green < 50 && red - green > 30) count += 1;
    }
    return count;
  })()`);
}
