import { COATING, HEAD_LIMIT, HOT_STYLUS, TEST_CUT } from '../report/caution-text.js';
import { wrapText } from '../report/wrap-text.js';
import { EXIT_CODES } from './exit-code.js';

const CAUTIONS = [TEST_CUT, HEAD_LIMIT, COATING, HOT_STYLUS].join(' ');

/** What stands under the options of every help. */
export const HELP_EPILOGUE = `
${EXIT_CODES}

${wrapText(`Before the cut: ${CAUTIONS}`, '', '  ')}`;
