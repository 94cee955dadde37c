import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin, ResolvedConfig, Rolldown } from 'vite';

/** Stands in the worker's source where the lists go. */
const PLACE = '__PRECACHE__';

/**
 * Writes into the worker which files it has to keep for each of the pages that work without a network, and a name made
 * of their contents. A change of any file changes the worker, by which the browser notices that there is something new.
 */
export function precacheList(worker: string, pages: readonly string[]): Plugin {
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
        if (!chunk.code.includes(PLACE)) throw new Error(`The worker does not say ${PLACE}.`);
        const lists = pages.map((page) => [`/${page}`, listOf(page, bundle, publicFolder)]);
        chunk.code = chunk.code.replace(PLACE, () => JSON.stringify(Object.fromEntries(lists)));
      },
    },
  };
}

/** The page, what it loads, and the files that lie beside the pages. */
function listOf(page: string, bundle: Rolldown.OutputBundle, publicFolder: string) {
  const files = new Map<string, string | Uint8Array>();
  const take = (fileName: string): void => {
    const file = bundle[fileName];
    if (!file) throw new Error(`There is no ${fileName} in the build.`);
    if (files.has(fileName)) return;
    files.set(fileName, file.type === 'chunk' ? file.code : file.source);
    if (file.type !== 'chunk') return;
    for (const other of [...file.imports, ...file.dynamicImports, ...(file.viteMetadata?.importedCss ?? [])])
      take(other);
  };
  const entry = Object.values(bundle).find(
    (file) => file.type === 'chunk' && file.isEntry && file.name === page,
  );
  if (!entry) throw new Error(`There is no page ${page} in the build.`);
  take(`${page}.html`);
  take(entry.fileName);
  for (const name of readdirSync(publicFolder)) files.set(name, readFileSync(join(publicFolder, name)));
  const hash = createHash('sha256');
  const names = [...files.keys()].sort();
  for (const name of names) hash.update(name).update(files.get(name)!);
  return { name: hash.digest('hex').slice(0, 16), files: names.map(addressOf) };
}

/** Pages are served without their ending. */
function addressOf(fileName: string): string {
  return `/${fileName.replace(/\.html$/, '')}`;
}
