// Writes a megabyte of one digit over and over, for a test to interrupt at any moment.
// Arguments: the compiled writer, the path to write to.
import { pathToFileURL } from 'node:url';

const [, , compiled, path] = process.argv;
const { abandonWrites, writeFileAtomic } = await import(pathToFileURL(compiled).href);

process.on('SIGINT', () => {
  abandonWrites();
  process.exit(130);
});

process.stdout.write('begins');
for (let round = 0; ; round++) await writeFileAtomic(path, String(round % 10).repeat(1_000_000));
