import { chmod, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { execa } from 'execa';

const OPTIONS = '--ignoreConfig --module nodenext --target es2023 --types node --skipLibCheck';

/** A module of src as JavaScript, which a process of its own can load, and how to remove it. */
export async function compileModule(
  source: string,
): Promise<{ path: string; remove: () => Promise<void> }> {
  const folder = await mkdtemp(join(tmpdir(), 'furrow-module-'));
  // Another user's process has to read it too.
  await chmod(folder, 0o755);
  await writeFile(join(folder, 'package.json'), '{ "type": "module" }');
  const options = OPTIONS.concat(' --rootDir src --outDir').split(' ');
  await execa('npx', ['tsc', ...options, folder, `src/${source}.ts`]);
  const remove = () => rm(folder, { recursive: true, force: true });
  return { path: join(folder, `${source}.js`), remove };
}
