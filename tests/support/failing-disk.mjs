import promises from 'node:fs/promises';
import { syncBuiltinESMExports } from 'node:module';

// For tests of the command, by --import: a disk that fails, without one that does. Of files whose
// name says that they fail, what lies beyond the first 100,000 bytes cannot be read.

const READABLE = 100_000;
const { open } = promises;

promises.open = async (path, ...rest) => {
  const handle = await open(path, ...rest);
  if (!String(path).includes('fails')) return handle;
  const read = handle.read.bind(handle);
  handle.read = async (buffer, offset, length, position) => {
    if (position + length > READABLE) {
      throw Object.assign(new Error('EIO: i/o error, read'), { code: 'EIO', syscall: 'read' });
    }
    return await read(buffer, offset, length, position);
  };
  return handle;
};
syncBuiltinESMExports();
