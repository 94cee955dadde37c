import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin, ResolvedConfig } from 'vite';

/** Stands in the worker's source where the list goes. */
const PLACE = '__PRECACHE__';

/**
 * Writes into the worker which files it has to keep, and a name made of their contents. A change of any file changes
 * the worker, by which the browser notices that there is something new. `others`: files of pages that need a network.
 */
export function precacheList(worker: string, others: RegExp): Plugin {
  let publicFolder = '';
  return {
    name: 'precache-list',
    enforce: 'post',
    configResolved({ publicDir }: ResolvedConfig) {
      publicFolder = publicDir;
    },
    generateBundle: {
      order: 'post',
      handler(_options, bundle) {
        const chunk = bundle[worker];
        if (chunk?.type !== 'chunk') throw new Error(`There is no worker ${worker} in the build.`);
        const built = Object.values(bundle).filter(
          ({ fileName }) => fileName !== worker && !others.test(fileName),
        );
        const files = new Map<string, string | Uint8Array>(
          built.map((file) => [file.fileName, file.type === 'chunk' ? file.code : file.source]),
        );
        for (const name of readdirSync(publicFolder)) files.set(name, readFileSync(join(publicFolder, name)));
        const hash = createHash('sha256');
        const names = [...files.keys()].sort();
        for (const name of names) hash.update(name).update(files.get(name)!);
        const list = { name: hash.digest('hex').slice(0, 16), files: names.map(addressOf) };
        if (!chunk.code.includes(PLACE)) throw new Error(`The worker does not say ${PLACE}.`);
        chunk.code = chunk.code.replace(PLACE, () => JSON.stringify(list));
      },
    },
  };
}

/** Pages are served without their ending. */
function addressOf(fileName: string): string {
  return `/${fileName.replace(/\.html$/, '')}`;
}
