import axe from 'axe-core';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { htmlIndex } from '../../../../src/report/html/html-index.js';
import { indexRow } from '../../../../src/report/html/index-row.js';
import { bundlePage } from '../../../../src/report/html/page/bundle.mjs';
import { forecastedFile } from '../../../support/forecast-fixture.js';
import { closeBrowser, needBrowser, withPage } from './open-page.js';

const FOUND =
  'axe.run().then(({ violations }) => violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => id + target)))';

beforeEach(needBrowser);
afterAll(closeBrowser);

describe('the page of many sides in a browser', () => {
  it.for([
    [1280, 'light'],
    [390, 'dark'],
  ] as const)(
    '%d px wide and %s leads to each side, and axe-core finds nothing',
    async ([width, scheme]) => {
      const rows = ['a', 'b', 'c'].map((name) =>
        indexRow(forecastedFile({ name }), `${name}.html`),
      );
      const failures = [{ path: 'd.wav', code: 'not-wav' as const, message: 'd.wav: no WAV file' }];
      const assets = await bundlePage();
      const html = htmlIndex(rows, { units: 'us', assets, version: '0.0.0', failures });
      await withPage(
        html,
        async ({ page, complaints, requests }) => {
          const links = await page.locator('a').all();
          const targets = await Promise.all(links.map((link) => link.getAttribute('href')));
          expect(targets).toEqual(['a.html', 'b.html', 'c.html']);
          expect(complaints).toEqual([]);
          expect(requests).toEqual([]);
          await page.evaluate(axe.source);
          expect(await page.evaluate(FOUND)).toEqual([]);
          expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(width);
        },
        { width, scheme },
      );
    },
  );
});
