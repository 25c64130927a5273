import { commonLevel } from '../model/common-level.js';
import { asciiText } from './ascii-text.js';
import { cautionsOf, cautionText } from './caution-text.js';
import { commonLevelText } from './common-level-text.js';
import { comparisonText } from './comparison-text.js';
import type { FolderFailure } from './folder-lines.js';
import { type FolderRow, folderRow, needsDetails } from './folder-row.js';
import { folderTable } from './folder-table.js';
import type { Reporter, ReporterOptions } from './reporter.js';
import { safeText } from './safe-text.js';
import { splitText } from './split-text.js';
import { sideText } from './terminal.js';
import type { ToldFile } from './told-file.js';
import { wrapText } from './wrap-text.js';

/**
 * For the engineer at the desk: one side on a screen; of several a table, then the details of those
 * that need them. Failures are told on the other stream, but have their line in the table.
 */
export function terminalReporter(options: ReporterOptions): Reporter {
  const { isFolder, brief, details, paint, ascii } = options;
  const rows: FolderRow[] = [];
  const failures: FolderFailure[] = [];
  const texts: string[] = [];
  const splits: string[] = [];
  const cautions = new Set<string>();
  const withTable = isFolder || brief;
  const isTold = (file: ToldFile): boolean =>
    !brief && (!isFolder || details || needsDetails(file));
  return {
    side: (file) => {
      rows.push(folderRow(file));
      for (const caution of cautionsOf(file)) cautions.add(caution);
      splits.push(...sheetSplitText(file, options));
      if (!isTold(file)) return '';
      // In a folder the details are those of a screen a side.
      const text = fileText(file, { ...options, details: details && !isFolder });
      if (!withTable) return text;
      texts.push(text);
      return '';
    },
    failure: (failure) => {
      failures.push({ ...failure, sidesBefore: rows.length });
      return '';
    },
    end: () => {
      const table = folderTable(rows, failures, options);
      const common = commonLevelText(commonLevel(rows), {
        paint,
        failures: failures.length,
        ascii,
      });
      return [
        ...(withTable ? [table] : []),
        ...texts,
        ...splits,
        ...(options.commonLevel ? [common] : []),
        cautionText(cautions, options.columns),
      ]
        .filter((text) => text !== '')
        .join('\n');
    },
  };
}

/** What is said of a sheet's sides with the last of them; none where there is nothing to say. */
function sheetSplitText({ sheetSides }: ToldFile, { units, ascii, columns }: ReporterOptions) {
  if (sheetSides === undefined) return [];
  const text = splitText(sheetSides.files, units);
  if (text === '') return [];
  const lines = `${wrapText(`${safeText(sheetSides.sheet)}: ${text}`, '', '  ', columns)}\n`;
  return [ascii ? asciiText(lines) : lines];
}

function fileText(file: ToldFile, options: Parameters<typeof sideText>[1]): string {
  const { settings, against } = file;
  const text = sideText(file, options);
  if (against === undefined) return `${text}\n`;
  const changes = comparisonText(against, { ...options, settings });
  return `${text}\n${options.ascii === true ? asciiText(changes) : changes}\n\n`;
}
