import highsPackage from 'highs';
import type { LinearOptimum, LinearProgram } from '../../src/model/linear/linear-program.js';

type Highs = Awaited<ReturnType<typeof highsPackage.default>>;

/** The outside reference for linear programs: HiGHS, by dual simplex. */
export async function loadHighs(): Promise<(program: LinearProgram) => LinearOptimum> {
  const highs = await load();
  const { optimal } = highs.constants.modelStatus;
  return (program) =>
    highs.withModel(modelOf(program), (model): LinearOptimum => {
      model.options.set({ output_flag: false, solver: 'simplex' });
      model.run();
      if (model.getModelStatus() !== optimal) throw new RangeError('the program has no solution');
      const { colValue, rowDual } = model.getSolution();
      return { x: colValue, duals: rowDual };
    });
}

function modelOf({ cost, lower, upper, need, most, starts, columns, values }: LinearProgram) {
  const [numCols, numRows] = [cost.length, need.length];
  return {
    numCols,
    numRows,
    colCost: cost,
    colLower: lower,
    colUpper: upper,
    rowLower: need,
    rowUpper: most,
    matrix: { format: 'csr' as const, numRows, numCols, starts, indices: columns, values },
  };
}

/** The package's types are those of its CommonJS build; imported, its default is the loader. */
async function load(): Promise<Highs> {
  const loader: unknown = highsPackage;
  if (typeof loader !== 'function') throw new TypeError('highs: found no loader');
  const highs: Highs = await loader();
  return highs;
}
