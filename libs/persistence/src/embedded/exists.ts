import { lstat } from 'node:fs/promises';

/** Whether there is anything of that name, be it a link to nowhere. */
export async function exists(path: string): Promise<boolean> {
  return lstat(path).then(
    () => true,
    () => false,
  );
}
