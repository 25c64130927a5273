import { readPageData } from '../data/read-page-data.js';
import { startPage } from './start-page.js';
import { unpack } from './unpack.js';

/** Reads the data that the page carries and brings it to life; where that fails it stays as it is. */
const data = document.getElementById('side-data');
if (data !== null) {
  unpack(data.textContent ?? '').then(
    (bytes) => startPage(readPageData(bytes)),
    () => {
      document.documentElement.dataset['still'] = '';
    },
  );
}
