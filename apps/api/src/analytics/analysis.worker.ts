import { setPriority } from 'node:os';
import { analyse, type Analysis } from './findings/analyse.js';
import type { AnalysisTask } from './findings/task.js';

/** Where a thread has a priority of its own (Linux), this one stands back behind those who record. */
const STANDS_BACK = 10;
if (process.platform === 'linux') setPriority(0, STANDS_BACK);

/** Runs in a thread of its own: dealing notes out twenty thousand times must hold up nobody who records. */
export default function run(task: AnalysisTask): Analysis {
  return analyse(task);
}
