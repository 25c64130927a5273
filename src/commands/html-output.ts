import { stat } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { UsageError } from '../errors.js';
import { type SideInput, withSide } from '../open-side.js';
import { checkOutputFile, checkOutputFolder, type OutputCheck } from '../report/check-output.js';
import type { Failure } from '../report/failure.js';
import type { IndexRow } from '../report/html/index-row.js';
import { outputNames } from '../report/output-names.js';
import { safeText } from '../report/safe-text.js';
import type { ToldFile } from '../report/told-file.js';
import { writeFileAtomic } from '../report/write-atomic.js';
import { furrowVersion } from '../version.js';
import type { ReportOptions } from './forecast-options.js';
import type { Output } from './outputs.js';

const OPTION = '--html';
/** Where the sides of a folder are found from. */
const INDEX = 'index';

/**
 * The pages of a run: of one side a file; into a folder, which is one that is there or a path that
 * ends in a slash, a page a side and one that leads to them.
 * @param sides what the sides are known by
 * @param taken what the run reads and what else it writes
 * @throws UsageError for several sides and one file, or a path that cannot be written
 */
export async function htmlOutput(
  path: string,
  { units }: ReportOptions,
  sides: readonly string[],
  taken: Omit<OutputCheck, 'option'>,
  cwd: string,
): Promise<Output> {
  const target = path === '' ? '' : resolve(cwd, path);
  const check = { ...taken, option: OPTION };
  if (!(await isFolder(path, target))) {
    if (sides.length > 1) {
      const found = `found one file for ${sides.length} sides`;
      throw new UsageError(`${OPTION}: ${found}; name a folder: ${safeText(path)}/`);
    }
    await checkOutputFile(target, check);
    return {
      side: async (file, _, input) => {
        await writeFileAtomic(target, await pageOf(file, input, units));
      },
      failure: () => {},
      end: async () => {},
    };
  }
  await checkOutputFolder(target, check);
  const names = outputNames(sides).map((name) =>
    name.toLowerCase() === INDEX ? `${name}-` : name,
  );
  const pages = new Map(sides.map((side, at) => [side, `${names[at]}.html`]));
  const index = join(target, `${INDEX}.html`);
  for (const name of [index, ...[...pages.values()].map((page) => join(target, page))]) {
    await checkOutputFile(name, check);
  }
  return folderOutput(target, index, pages, units);
}

function folderOutput(
  folder: string,
  index: string,
  pages: ReadonlyMap<string, string>,
  units: ReportOptions['units'],
): Output {
  const rows: IndexRow[] = [];
  const failures: Failure[] = [];
  return {
    side: async (file, key, input) => {
      const name = pages.get(key) ?? `${file.name}.html`;
      const { indexRow } = await import('../report/html/index-row.js');
      rows.push(indexRow(file, encodeURIComponent(name), await mendsText(file, units)));
      await writeFileAtomic(join(folder, name), await pageOf(file, input, units));
    },
    failure: (failure) => {
      failures.push(failure);
    },
    end: async () => {
      const { htmlIndex } = await import('../report/html/html-index.js');
      const { readPageAssets } = await import('../report/html/page-assets.js');
      const assets = await readPageAssets();
      const version = furrowVersion();
      await writeFileAtomic(index, htmlIndex(rows, { units, assets, version, failures }));
    },
  };
}

/** A path that ends in a slash is meant as a folder, whether it is there or not. */
async function isFolder(path: string, target: string): Promise<boolean> {
  if (/[\\/]$/.test(path)) return true;
  return await stat(target).then(
    (found) => found.isDirectory(),
    () => false,
  );
}

async function mendsText({ fit }: ToldFile, units: ReportOptions['units']): Promise<string | null> {
  if (fit === undefined) return null;
  const { fitSentence } = await import('../report/fit-sentence.js');
  return fitSentence(fit, units);
}

/** The audio around the places with the least land is read once more, for the microscope. */
async function pageOf(
  file: ToldFile,
  input: SideInput,
  units: ReportOptions['units'],
): Promise<string> {
  const { motion, settings, fit } = file;
  if (motion === null) throw new Error(`${file.name}: a page needs the motion`);
  const moved = { ...file, motion };
  const { htmlPage } = await import('../report/html/html-page.js');
  const { microscopePlaces } = await import('../report/html/microscope-places.js');
  const { readPageAssets } = await import('../report/html/page-assets.js');
  const { readMicroscope } = await import('../analysis/read-microscope.js');
  const edges =
    file.readFrom === 'motion'
      ? []
      : await withSide(input, settings, async ({ source, analysed }) =>
          readMicroscope(source, analysed, microscopePlaces(moved)),
        );
  const command =
    typeof input === 'string' ? {} : { command: ['furrow', 'side'], paths: [input.sheet] };
  return htmlPage(moved, edges, {
    units,
    assets: await readPageAssets(),
    version: furrowVersion(),
    ...command,
    ...(fit === undefined ? {} : { fit }),
  });
}
