import type { Writable } from 'node:stream';

/** Where the answer goes. */
export interface Output {
  /** Waits while the reader is behind. */
  write(text: string): Promise<void>;
  /** Waits until all is handed over. Throws when writing failed, except that the reader had enough. */
  finish(): Promise<void>;
}

/**
 * A reader that closes early (`| head`) has what it wanted: from then on nothing is written, but the counting goes on,
 * because the exit status speaks for all the files.
 */
export function outputTo(stream: Writable): Output {
  let failure: NodeJS.ErrnoException | null = null;
  stream.on('error', (error: NodeJS.ErrnoException) => {
    failure ??= error;
  });
  const write = (text: string): Promise<void> =>
    new Promise((done) => {
      if (failure) done();
      else stream.write(text, () => done());
    });
  const finish = async (): Promise<void> => {
    await write('');
    if (failure && failure.code !== 'EPIPE') throw failure;
  };
  return { write, finish };
}
