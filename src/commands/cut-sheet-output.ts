import type { Markup } from '../report/html/markup.js';
import { writeFileAtomic } from '../report/write-atomic.js';
import { furrowVersion } from '../version.js';
import type { ReportOptions } from './forecast-options.js';
import type { Output } from './outputs.js';

/** A file with a sheet of paper for each side, to lie beside the lathe. */
export async function cutSheetOutput(path: string, { units }: ReportOptions): Promise<Output> {
  const { cutSheet, cutSheetPage } = await import('../report/cut-sheet/cut-sheet.js');
  const pages: Markup[] = [];
  return {
    side: async (file) => {
      pages.push(cutSheetPage(file, units));
    },
    failure: () => {},
    end: async () => await writeFileAtomic(path, cutSheet(pages, furrowVersion())),
  };
}
