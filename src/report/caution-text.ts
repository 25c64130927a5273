import { COATING, HEAD_LIMIT, HOT_STYLUS, TEST_CUT } from './cautions.js';
import { wrapText } from './wrap-text.js';

export { COATING, cautionsOf, HEAD_LIMIT, HOT_STYLUS, TEST_CUT } from './cautions.js';

/** The cautions of all sides, each once, in lines of at most `columns`. */
export function cautionText(cautions: ReadonlySet<string>, columns?: number): string {
  const inOrder = [HEAD_LIMIT, COATING, HOT_STYLUS, TEST_CUT].filter((each) => cautions.has(each));
  if (inOrder.length === 0) return '';
  return `${wrapText(`Before the cut: ${inOrder.join(' ')}`, '', '  ', columns)}\n`;
}
