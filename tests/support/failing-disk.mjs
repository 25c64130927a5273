import fs from 'node:fs';
import promises from 'node:fs/promises';
import { syncBuiltinESMExports } from 'node:module';

// For tests of the command, by --import: a disk that fails, without one that does. Of files whose
// name says that they fail, what lies beyond the first 100,000 bytes cannot be read, whichever way
// is taken: a handle's own, or its number.

const READABLE = 100_000;
const { open } = promises;
const { readSync } = fs;

/** Numbers of handles that are open on such files. */
const failing = new Set();

promises.open = async (path, ...rest) => {
  const handle = await open(path, ...rest);
  if (!String(path).includes('fails')) return handle;
  const read = handle.read.bind(handle);
  const close = handle.close.bind(handle);
  const { fd } = handle;
  failing.add(fd);
  handle.close = async () => {
    failing.delete(fd);
    await close();
  };
  handle.read = async (buffer, offset, length, position) => {
    refuseBeyond(position + length);
    return await read(buffer, offset, length, position);
  };
  return handle;
};

fs.readSync = (fd, buffer, offset, length, position) => {
  if (failing.has(fd)) refuseBeyond(position + length);
  return readSync(fd, buffer, offset, length, position);
};

syncBuiltinESMExports();

function refuseBeyond(end) {
  if (end <= READABLE) return;
  throw Object.assign(new Error('EIO: i/o error, read'), { code: 'EIO', syscall: 'read' });
}
