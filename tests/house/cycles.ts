import type { Import } from './imports-of.js';

/** Which file needs which when the program runs. Imports that are gone by then close no circle. */
export type Needs = ReadonlyMap<string, readonly string[]>;

/** `doors` gives the file behind each front door (`#rules`). */
export function needsOf(imports: readonly Import[], doors: ReadonlyMap<string, string>): Needs {
  const needs = new Map<string, string[]>();
  for (const { from, to, typesOnly } of imports) {
    if (typesOnly) continue;
    const list = needs.get(from) ?? [];
    list.push(doors.get(to) ?? to);
    needs.set(from, list);
  }
  return needs;
}

/**
 * Each circle of imports once, as the path that closes it ("a → b → a"). Depth-first: a file met again while it is
 * still on the way closes a circle; a file that has been left is known to lead into none that was not told.
 */
export function circlesIn(needs: Needs): string[] {
  const circles: string[] = [];
  const left = new Set<string>();
  const way: string[] = [];
  const follow = (file: string): void => {
    const met = way.indexOf(file);
    if (met >= 0) circles.push([...way.slice(met), file].join(' → '));
    if (met >= 0 || left.has(file)) return;
    way.push(file);
    for (const next of needs.get(file) ?? []) follow(next);
    way.pop();
    left.add(file);
  };
  for (const file of needs.keys()) follow(file);
  return circles;
}
