import type { Settings } from '../settings.js';
import { KernelAnalyser } from './kernel/kernel-analyser.js';
import { loadKernel } from './kernel/load-kernel.js';
import type { PartAnalyser } from './part-analyser.js';
import type { MotionRows } from './part-motion.js';
import type { Part } from './parts.js';
import { PlainAnalyser } from './plain-analyser.js';
import type { Program } from './program.js';

/**
 * The pass over a part of a program at a rate of the 44.1 or 48 kHz family: by the kernel, or by
 * the plain definition where none can run.
 * @param rows as of `createPartAnalyser`
 */
export async function familyAnalyser(
  program: Program,
  part: Part,
  settings: Settings,
  rows?: MotionRows,
): Promise<PartAnalyser> {
  const kernel = await loadKernel();
  return kernel === null
    ? new PlainAnalyser(program, part, settings)
    : new KernelAnalyser(kernel, program, part, settings, rows);
}
