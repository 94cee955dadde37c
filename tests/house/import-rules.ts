import { BESIDE_MAY, IMPORT_TABLE, type Row } from './import-table.js';
import type { Import } from './imports-of.js';
import { fits, fitsOne } from './path-pattern.js';

const FRONT_DOOR = /^libs\/[^/]+\/src\/index\.ts$/;

export function rowOf(path: string): Row | null {
  return IMPORT_TABLE.find((row) => fits(path, row.files)) ?? null;
}

function allowed(row: Row, found: Import): boolean {
  if (fits(found.to, row.files) || fitsOne(found.to, row.may)) return true;
  if (found.typesOnly && fitsOne(found.to, row.mayTypes ?? [])) return true;
  return found.from.endsWith('.spec.ts') && fitsOne(found.to, BESIDE_MAY);
}

/** Why the import is wrong, as a sentence; null when it is not. */
export function objectionTo(found: Import): string | null {
  const row = rowOf(found.from);
  const where = `${found.from}:${found.line}`;
  if (row === null) return `${where} lies in no folder that the import table knows`;
  if (FRONT_DOOR.test(found.to) && fits(found.to, row.files) && !found.from.startsWith('tests/')) {
    return `${where} may not import ${found.to} because a library’s front door is for the others; inside, import the file itself`;
  }
  if (allowed(row, found)) return null;
  const types = fitsOne(found.to, row.mayTypes ?? []) ? ' other than types' : '';
  return `${where} may not import ${found.to}${types} because ${row.because}`;
}
