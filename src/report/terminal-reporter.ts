import { commonLevel } from '../model/common-level.js';
import { asciiText } from './ascii-text.js';
import { cautionsOf, cautionText } from './caution-text.js';
import { commonLevelText } from './common-level-text.js';
import { comparisonText } from './comparison-text.js';
import type { FolderFailure } from './folder-lines.js';
import { type FolderRow, folderRow, needsDetails } from './folder-row.js';
import { folderTable } from './folder-table.js';
import type { Reporter, ReporterOptions } from './reporter.js';
import { sideText } from './terminal.js';
import type { ToldFile } from './told-file.js';

/**
 * For the engineer at the desk: one side on a screen; of several a table, then the details of those
 * that need them. Failures are told on the other stream, but have their line in the table.
 */
export function terminalReporter(options: ReporterOptions): Reporter {
  const { isFolder, brief, details, paint, ascii } = options;
  const rows: FolderRow[] = [];
  const failures: FolderFailure[] = [];
  const texts: string[] = [];
  const cautions = new Set<string>();
  const withTable = isFolder || brief;
  const isTold = (file: ToldFile): boolean =>
    !brief && (!isFolder || details || needsDetails(file));
  return {
    side: (file) => {
      rows.push(folderRow(file));
      for (const caution of cautionsOf(file)) cautions.add(caution);
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
        ...(options.commonLevel ? [common] : []),
        cautionText(cautions, options.columns),
      ]
        .filter((text) => text !== '')
        .join('\n');
    },
  };
}

function fileText(file: ToldFile, options: Parameters<typeof sideText>[1]): string {
  const { settings, against } = file;
  const text = sideText(file, options);
  if (against === undefined) return `${text}\n`;
  const changes = comparisonText(against, { ...options, settings });
  return `${text}\n${options.ascii === true ? asciiText(changes) : changes}\n\n`;
}
