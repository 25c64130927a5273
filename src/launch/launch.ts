// What bin/furrow.js and the threads load, as one file that `require` takes: see write-bundle.mjs.
export { codeCacheBytes, codeCachePath } from './code-cache.js';
export { loadBundle, loadedFiles } from './load-bundle.js';
