import type { Reporter, ReporterOptions } from './reporter.js';
import { scaleText } from './scale-text.js';

/** Goes to a new page where pages are printed; nothing on a terminal. */
const NEW_PAGE = '\f';

/** Pages to read off the lathe by, one a side. */
export function scaleReporter(options: ReporterOptions): Reporter {
  let isFirst = true;
  return {
    side: (file) => {
      const between = isFirst ? '' : options.columns === undefined ? NEW_PAGE : '\n';
      isFirst = false;
      return `${between}${scaleText(file, options)}`;
    },
    failure: () => '',
    end: () => '',
  };
}
