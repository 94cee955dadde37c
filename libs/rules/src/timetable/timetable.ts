/** A circle, runway, pit or pair of uprights. `key` is how the timetable names it. */
export interface Facility {
  readonly key: string;
  readonly name: string;
}

/** Two facilities that cannot be in use at once, e.g. discus and hammer through one cage, a javelin sector over a pit. */
export interface SharedGround {
  readonly facilities: readonly [string, string];
  readonly reason: string;
}

/** When and where competitions that are called together take place. Times are milliseconds since the epoch. */
export interface Slot {
  readonly competitions: readonly string[];
  readonly facility: string;
  readonly startsAt: number;
  /** How long it is expected to take. */
  readonly minutes: number;
  /** How long before the start the competitors report. */
  readonly reportMinutes: number;
}

export interface Timetable {
  readonly facilities: readonly Facility[];
  readonly sharedGrounds: readonly SharedGround[];
  readonly slots: readonly Slot[];
}

export const MINUTE_MS = 60_000;

export function endOf({ startsAt, minutes }: Slot): number {
  return startsAt + minutes * MINUTE_MS;
}

/** When the competitors of a slot report. */
export function reportAt({ startsAt, reportMinutes }: Slot): number {
  return startsAt - reportMinutes * MINUTE_MS;
}

export function overlap(a: Slot, b: Slot): boolean {
  return a.startsAt < endOf(b) && b.startsAt < endOf(a);
}

/** Why two slots cannot go on at once; `null`: they can. */
export function sharedGround({ sharedGrounds }: Timetable, a: Slot, b: Slot): SharedGround | 'same' | null {
  if (a.facility === b.facility) return 'same';
  return (
    sharedGrounds.find(
      ({ facilities: [one, other] }) =>
        (one === a.facility && other === b.facility) || (one === b.facility && other === a.facility),
    ) ?? null
  );
}
