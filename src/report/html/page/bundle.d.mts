/** Script and style of a page; needs the bundler, which only a development tree has. */
export function bundlePage(): Promise<{ readonly script: string; readonly style: string }>;
