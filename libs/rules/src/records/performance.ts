import type { EventCode } from '../codes.js';
import { eventOf } from '../events/event.js';
import type { Unit } from '../quantities/mark.js';
import { isWindLegal, type Wind } from '../quantities/wind.js';

/**
 * A valid mark with all that decides in which lists it stands. One of a competition names its attempt; one that is
 * entered or imported as a starting point (a club's old records, somebody's best from elsewhere) stands for itself.
 */
export interface Performance {
  /** Unique: of the attempt, or of the entry. */
  readonly id: string;
  /** In which competition it was made; `null`: entered or imported, and taken as it is. */
  readonly competition: string | null;
  readonly event: EventCode;
  readonly unit: Unit;
  /** Whole units. */
  readonly mark: number;
  /** `null`: the event has no wind, or none was given. */
  readonly wind: Wind | null;
  readonly indoor: boolean;
  /** Mass of the implement thrown; `null`: not known (the mark is in no list), or nothing is thrown. */
  readonly implementGrams: number | null;
  /** `YYYY-MM-DD` */
  readonly onDate: string;
  /** Earlier ones of a day have the smaller number. */
  readonly order: number;
  /** `null`: not in the lists of an athlete (the holder of an old record is not on the books). */
  readonly athlete: string | null;
  /** `null`: not in the lists of a club. */
  readonly club: string | null;
  /** The meet, one name for all its years; `null`: not in the lists of a meet (made elsewhere, or by a guest). */
  readonly meet: string | null;
  readonly sex: 'M' | 'W' | 'X';
  /** The age categories in whose lists of club and meet it stands: the athlete's own, and older ones that are open. */
  readonly ages: readonly string[];
}

/** How the wind lets a mark count. */
export type WindStanding = 'legal' | 'over the limit' | 'not measured' | 'expected';

/** Indoors, and in events without wind, every mark is legal. */
export function windStanding({ event, indoor, wind }: Performance, limitTenths: number): WindStanding {
  if (!eventOf(event).hasWind(indoor)) return 'legal';
  if (wind === 'pending') return 'expected';
  const legal = isWindLegal(wind ?? 'NWI', limitTenths);
  if (legal === null) return 'not measured';
  return legal ? 'legal' : 'over the limit';
}

/** Negative when `a` was made first; a total order, whatever the order in which marks come in. */
export function compareInTime(a: Performance, b: Performance): number {
  return compareText(a.onDate, b.onDate) || a.order - b.order || compareText(a.id, b.id);
}

function compareText(a: string, b: string): number {
  return a === b ? 0 : a < b ? -1 : 1;
}
