import { readFileSync } from 'node:fs';

// V8 itself asks for its own version, its flags and the length of the source, and believes the
// rest: a byte that changed on a disc would end the process, an older source's code would run.

/** Length of a cache's head: whose the code is, in ASCII, and spaces. The code follows, twice. */
const HEAD_BYTES = 128;

/** Where the cache of a bundled file lies. */
export function codeCachePath(path: string): string {
  return `${path}.cache`;
}

/**
 * V8's code of the functions of a source that common commands use, so that a start need not compile
 * them; undefined if there is none, or if it is damaged, another source's or another Node's:
 * everything works without it.
 */
export function readCodeCache(path: string, source: string): Uint8Array | undefined {
  let bytes: Buffer;
  try {
    bytes = readFileSync(codeCachePath(path));
  } catch {
    return undefined;
  }
  // Comparing two copies takes a thirtieth of the time of a checksum.
  const middle = (HEAD_BYTES + bytes.length) / 2;
  const code = bytes.subarray(HEAD_BYTES, middle);
  const isWhole = code.length > 0 && code.equals(bytes.subarray(middle));
  const isOurs = bytes.toString('latin1', 0, HEAD_BYTES).trimEnd() === ownerOf(source);
  return isWhole && isOurs ? code : undefined;
}

/** What `readCodeCache` reads. */
export function codeCacheBytes(code: Uint8Array, source: string): Uint8Array {
  const head = Buffer.alloc(HEAD_BYTES, ' ');
  const owner = ownerOf(source);
  if (owner.length > HEAD_BYTES) throw new Error(`too long for a head: ${owner}`);
  head.write(owner, 'latin1');
  return Buffer.concat([head, code, code]);
}

/** A bundled source begins with a comment that has its digest. */
function ownerOf(source: string): string {
  const { version, platform, arch } = process;
  return `${version} ${platform} ${arch} ${source.slice(0, source.indexOf('\n'))}`;
}
