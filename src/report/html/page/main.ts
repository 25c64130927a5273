import { readPageData } from '../data/read-page-data.js';
import { startPage } from './start-page.js';
import { unpack } from './unpack.js';

const OPENING = 'The pictures and the controls follow in a moment.';
const TOO_OLD =
  'The pictures and the controls need a newer browser, with DecompressionStream; the tables do not.';
const FAILED =
  'The pictures and the controls could not be drawn: this file is damaged, or there is a bug in ' +
  'furrow, of which the console of the browser says more. The tables do not need them.';

const note = document.querySelector('.needs-life');

/** Reads the data that the page carries and brings it to life; where that fails it says why. */
async function bringToLife(text: string): Promise<void> {
  say(OPENING);
  if (!('DecompressionStream' in globalThis)) {
    say(TOO_OLD);
    return;
  }
  try {
    const bytes = await unpack(text);
    await painted();
    startPage(readPageData(bytes));
  } catch (error) {
    delete document.documentElement.dataset['alive'];
    say(FAILED);
    throw error;
  }
}

function say(words: string): void {
  if (note !== null) note.textContent = words;
}

/** Once the text of the page is on the screen: all that follows takes a while. */
function painted(): Promise<void> {
  return new Promise((resolve) => {
    requestAnimationFrame(() => setTimeout(resolve));
    // A tab that nobody looks at has no frames.
    setTimeout(resolve, 1000);
  });
}

await bringToLife(document.getElementById('side-data')?.textContent ?? '');
