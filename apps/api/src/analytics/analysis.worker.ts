import { analyse, type Analysis } from './findings/analyse.js';
import type { AnalysisTask } from './findings/task.js';

/** Runs in a thread of its own: dealing notes out twenty thousand times must hold up nobody who records. */
export default function run(task: AnalysisTask): Analysis {
  return analyse(task);
}
