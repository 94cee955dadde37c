import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { SecondCount } from './check-competition.js';

/** Takes `referenceResult` of the module at `path`. Throws when there is none. */
export async function loadSecondCount(path: string): Promise<SecondCount> {
  const module = (await import(pathToFileURL(resolve(path)).href)) as {
    readonly referenceResult?: SecondCount;
  };
  if (typeof module.referenceResult !== 'function') {
    throw new Error(`${path} has no function referenceResult.`);
  }
  return module.referenceResult;
}
