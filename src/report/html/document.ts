import { contentPolicy } from './content-policy.js';
import { escaped, type Markup } from './markup.js';

export interface HtmlDocument {
  readonly title: string;
  readonly body: Markup;
  readonly style: string;
  readonly script?: string;
  /** Text without & and <, which needs no escaping; read by the script. */
  readonly data?: string;
}

/** A whole page in one file that needs nothing else. */
export function htmlDocument({ title, body, style, script, data }: HtmlDocument): string {
  const scripts = script === undefined ? [] : [script];
  for (const text of [...scripts, style]) {
    if (/<\/(script|style)|<!--/i.test(text)) throw new Error('an end tag stands in a page asset');
  }
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${contentPolicy(scripts, [style])}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(title)}</title>
<style>${style}</style>
</head>
<body>
${body.html}
${data === undefined ? '' : `<script type="text/plain" id="side-data">${data}</script>\n`}${scripts.map((text) => `<script type="module">${text}</script>\n`).join('')}</body>
</html>
`;
}
