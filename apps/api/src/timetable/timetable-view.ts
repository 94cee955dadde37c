import { endOf, reportAt } from '#rules';
import { competitionObject } from '../platform/objects/competition.type.js';
import type { PlannedMeet } from './timetable.service.js';
import type { Timetable } from './timetable.types.js';

/** A timetable as the API shows it. Who is in a clash is not said: only how many. */
export function timetableView({ row, competitions, clashes }: PlannedMeet): Timetable {
  const facilities = new Map(row.facilities.map((facility) => [facility.key, facility]));
  return {
    revision: row.revision,
    facilities: row.facilities,
    sharedGrounds: row.sharedGrounds,
    slots: row.slots.map((slot) => ({
      competitions: slot.competitions.flatMap((id) => {
        const competition = competitions.get(id);
        return competition ? [competitionObject(competition)] : [];
      }),
      facility: facilities.get(slot.facility)!,
      reportAt: new Date(reportAt(slot)),
      startsAt: new Date(slot.startsAt),
      endsAt: new Date(endOf(slot)),
    })),
    clashes: clashes.map(({ slots, kind, reason, competitors }) => ({
      slots,
      kind,
      reason,
      competitors: competitors.length,
    })),
    reason: row.reason,
    changedAt: new Date(row.setAt),
  };
}
