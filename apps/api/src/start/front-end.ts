import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { readWebFiles, type WebFiles } from '../platform/web/web-files.js';

/** From here to the built front end: when this file is compiled, and when it is source. */
const PLACES = ['../../../../web', '../../../../dist/web'];

/** The front end as it was built beside this program; empty when it was not. */
export async function findFrontEnd(): Promise<WebFiles> {
  const folders = PLACES.map((place) => fileURLToPath(new URL(place, import.meta.url)));
  const built = folders.find((folder) => existsSync(`${folder}/built-from`));
  return built === undefined ? new Map() : readWebFiles(built);
}
