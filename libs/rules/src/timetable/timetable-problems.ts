import type { Timetable } from './timetable.js';

export type TimetableFault =
  | 'FACILITY_TWICE'
  | 'UNKNOWN_FACILITY'
  | 'SHARED_WITH_ITSELF'
  | 'SLOT_TWICE'
  | 'SLOT_EMPTY';

/** What makes a timetable unreadable; `path` says where, e.g. `['slots', 2, 'facility']`. */
export interface TimetableProblem {
  readonly code: TimetableFault;
  readonly path: readonly (string | number)[];
}

/** All faults of the form; overlaps are no fault, see `clashesOf`. */
export function timetableProblems({ facilities, sharedGrounds, slots }: Timetable): TimetableProblem[] {
  const problems: TimetableProblem[] = [];
  const keys = new Set<string>();
  facilities.forEach(({ key }, at) => {
    if (keys.has(key)) problems.push({ code: 'FACILITY_TWICE', path: ['facilities', at, 'key'] });
    keys.add(key);
  });
  sharedGrounds.forEach(({ facilities: [one, other] }, at) => {
    const path = ['sharedGrounds', at, 'facilities'];
    if (!keys.has(one) || !keys.has(other)) problems.push({ code: 'UNKNOWN_FACILITY', path });
    else if (one === other) problems.push({ code: 'SHARED_WITH_ITSELF', path });
  });
  const listed = new Set<string>();
  slots.forEach(({ facility, competitions }, at) => {
    if (!keys.has(facility)) problems.push({ code: 'UNKNOWN_FACILITY', path: ['slots', at, 'facility'] });
    if (competitions.length === 0) problems.push({ code: 'SLOT_EMPTY', path: ['slots', at, 'competitions'] });
    for (const competition of competitions) {
      if (listed.has(competition)) {
        problems.push({ code: 'SLOT_TWICE', path: ['slots', at, 'competitions'] });
        break;
      }
    }
    for (const competition of competitions) listed.add(competition);
  });
  return problems;
}
