import { describe, expect, it } from 'vitest';
import { contentPolicy } from '../../../src/report/html/content-policy.js';
import { htmlDocument } from '../../../src/report/html/document.js';
import { markup } from '../../../src/report/html/markup.js';

describe('the policy of a page', () => {
  it("has the hash of W3C's own example: CSP Level 3, 2.3.1, alert('Hello, world.');", () => {
    const policy = contentPolicy(["alert('Hello, world.');"], []);
    expect(policy).toContain("'sha256-qznLcsROx4GACP2dm0UCKCzCG+HiZ1guq6ZZDob/Tng='");
  });

  it('lets nothing be loaded, sent or framed', () => {
    expect(contentPolicy([], [])).toBe(
      "default-src 'none'; script-src 'none'; style-src 'none'; base-uri 'none'; form-action 'none'",
    );
  });

  it('is not undone by an asset that would end its own element', () => {
    const page = { title: 'a', body: markup`<p>a</p>`, style: 'p{}', script: '"</ScRipt >"' };
    expect(() => htmlDocument(page)).toThrow('end tag');
  });
});
