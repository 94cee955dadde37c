import { overlap, sharedGround, type Slot, type Timetable } from './timetable.js';

/** Two slots, by their positions in the timetable, that cannot both be as they are planned. */
export interface Clash {
  readonly slots: readonly [number, number];
  /** `ground`: one place, or two that cannot be in use at once. `competitors`: somebody is in both. */
  readonly kind: 'ground' | 'competitors';
  /** Why the ground is shared; `null`: it is the same facility, or it is about competitors. */
  readonly reason: string | null;
  /** Who is in both, by key; empty for ground. */
  readonly competitors: readonly string[];
}

/**
 * What does not fit in a timetable. Somebody who is entered in two slots at once is a warning: order changes within a
 * round may let both be done.
 * @param entered who is in a competition, by a key that is the same in all of them
 */
export function clashesOf(
  timetable: Timetable,
  entered: (competition: string) => readonly string[] = () => [],
): Clash[] {
  const { slots } = timetable;
  const who = slots.map(({ competitions }) => new Set(competitions.flatMap(entered)));
  return slots.flatMap((slot, later) =>
    slots
      .slice(0, later)
      .flatMap((other, earlier) =>
        overlap(slot, other) ? between(timetable, [earlier, later], [other, slot], who) : [],
      ),
  );
}

function between(
  timetable: Timetable,
  positions: readonly [number, number],
  [a, b]: readonly [Slot, Slot],
  who: readonly ReadonlySet<string>[],
): Clash[] {
  const clashes: Clash[] = [];
  const ground = sharedGround(timetable, a, b);
  if (ground !== null) {
    const reason = ground === 'same' ? null : ground.reason;
    clashes.push({ slots: positions, kind: 'ground', reason, competitors: [] });
  }
  const both = [...who[positions[0]]!].filter((key) => who[positions[1]]!.has(key));
  if (both.length > 0) {
    clashes.push({ slots: positions, kind: 'competitors', reason: null, competitors: both });
  }
  return clashes;
}
