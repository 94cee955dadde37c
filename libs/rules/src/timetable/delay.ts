import { endOf, MINUTE_MS, overlap, sharedGround, type Slot, type Timetable } from './timetable.js';

/**
 * The timetable with one slot later by whole minutes, and with it everything that depends on it: what follows on the
 * same ground, or on ground that cannot be in use at the same time, starts when the one before it is expected to end.
 * Gaps take up a delay, nothing is moved forward, and two slots that overlapped as planned stay as they were to each
 * other. Common practice, no published source.
 * @param position of the slot in the timetable
 * @throws RangeError for a slot that is not there or a number of minutes that is not whole and positive
 */
export function delaySlot(timetable: Timetable, position: number, minutes: number): Timetable {
  const { slots } = timetable;
  if (!slots[position] || !Number.isSafeInteger(minutes) || minutes < 1) {
    throw new RangeError(`Slot ${position} cannot be ${minutes} minutes later.`);
  }
  const starts = slots.map(({ startsAt }) => startsAt);
  starts[position]! += minutes * MINUTE_MS;
  // In the planned order: each slot is looked at once, when everything that can push it stands.
  const order = slots
    .map((_, index) => index)
    .sort((a, b) => slots[a]!.startsAt - slots[b]!.startsAt || a - b);
  for (const [place, index] of order.entries()) {
    for (const earlier of order.slice(0, place)) {
      if (starts[earlier] === slots[earlier]!.startsAt) continue;
      if (!follows(timetable, slots[earlier]!, slots[index]!)) continue;
      starts[index] = Math.max(starts[index]!, endOf({ ...slots[earlier]!, startsAt: starts[earlier]! }));
    }
  }
  return {
    ...timetable,
    slots: slots.map((slot, index) =>
      starts[index] === slot.startsAt ? slot : { ...slot, startsAt: starts[index]! },
    ),
  };
}

/** As planned `later` waits for `earlier`: it needs ground that `earlier` takes, and was to begin after it. */
function follows(timetable: Timetable, earlier: Slot, later: Slot): boolean {
  return sharedGround(timetable, earlier, later) !== null && !overlap(earlier, later);
}

/** A plan that a meet has had. `reason`: why something was moved; `null`: it was planned so. */
export interface PlannedSlots {
  readonly slots: readonly Slot[];
  readonly reason: string | null;
}

/** A competition that begins later than planned; times are milliseconds since the epoch. */
export interface StartDelay {
  readonly plannedAt: number;
  readonly startsAt: number;
  /** Of the latest change. */
  readonly reason: string;
}

/**
 * Which competitions begin later than planned, from every plan that there was, the first one first. A change with a
 * reason is a delay of what was planned; one without is a new plan.
 */
export function delaysIn(plans: readonly PlannedSlots[]): ReadonlyMap<string, StartDelay> {
  const starts = new Map<string, StartDelay>();
  for (const { slots, reason } of plans) {
    for (const { competitions, startsAt } of slots) {
      for (const competition of competitions) {
        const before = starts.get(competition);
        if (before?.startsAt === startsAt) continue;
        const plannedAt = before && reason !== null ? before.plannedAt : startsAt;
        starts.set(competition, { plannedAt, startsAt, reason: reason ?? '' });
      }
    }
  }
  return new Map([...starts].filter(([, { plannedAt, startsAt }]) => startsAt > plannedAt));
}
