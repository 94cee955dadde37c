import { createReadStream } from 'node:fs';
import { createGunzip } from 'node:zlib';

/** The lines of a packed text, each that ends with a line break. Throws what the disk or gzip finds wrong. */
export async function* readLines(path: string): AsyncGenerator<string, undefined> {
  const packed = createReadStream(path);
  const text = createGunzip();
  packed.on('error', (error) => text.destroy(error)).pipe(text);
  text.setEncoding('utf8');
  let rest = '';
  for await (const piece of text as AsyncIterable<string>) {
    const lines = (rest + piece).split('\n');
    rest = lines.pop()!;
    yield* lines;
  }
}
