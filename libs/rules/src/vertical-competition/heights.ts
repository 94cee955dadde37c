import type { Gathered } from './jumps.js';
import type { VerticalSetup } from './setup.js';

/** The heights of the competition, rising: those announced and those at which the bar was set, less those left out. */
export function heightsOf(setup: VerticalSetup, { barSettings }: Gathered): number[] {
  const heights = new Set(setup.heights);
  for (const { height, leavesOut } of barSettings) {
    heights.add(height);
    for (const lower of leavesOut) heights.delete(lower);
  }
  return [...heights].sort((a, b) => a - b);
}

/** The greatest height at which the bar was set; `null`: it only followed the announced heights. */
export function barSetOf({ barSettings }: Gathered): number | null {
  return barSettings.length === 0 ? null : Math.max(...barSettings.map(({ height }) => height));
}
