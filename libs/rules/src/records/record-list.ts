import { comparisonClass } from '../implements/comparable.js';
import type { Performance } from './performance.js';
import type { RecordTerms } from './record-terms.js';

/** Bests count at once; records wait for the referee. */
export type RecordKind = 'personal best' | 'season best' | 'club record' | 'meet record';

/** One list: all marks that compete to be one best or one record. */
export interface RecordList {
  readonly kind: RecordKind;
  /** The athlete, the club or the meet. */
  readonly of: string;
  /** The first day of the season, only of a season best. */
  readonly season: string | null;
  /** Of club and meet records. */
  readonly sex: Performance['sex'] | null;
  readonly age: string | null;
  /** Event, unit and implement; marks with another implement stand in another list. */
  readonly comparison: string;
  /** `null`: one list whatever the roof. */
  readonly indoor: boolean | null;
}

/** Whether a mark of this kind of list has to be ratified. */
export function isRatified(kind: RecordKind): boolean {
  return kind === 'club record' || kind === 'meet record';
}

/** Names a list; equal for equal lists only. */
export function listKey({ kind, of, season, sex, age, comparison, indoor }: RecordList): string {
  return JSON.stringify([kind, of, season, sex, age, comparison, indoor]);
}

/** The lists in which a mark stands; none when its implement is not known. */
export function listsOf(performance: Performance, terms: RecordTerms): RecordList[] {
  const comparison = comparisonClass(performance);
  if (comparison === null) return [];
  const { athlete, club, meet, sex, ages } = performance;
  const indoor = terms.roof === 'together' ? null : performance.indoor;
  const list = (kind: RecordKind, of: string, parts: Partial<RecordList> = {}): RecordList => {
    return { kind, of, season: null, sex: null, age: null, comparison, indoor, ...parts };
  };
  const byAge = (kind: RecordKind, of: string | null): RecordList[] =>
    of === null ? [] : [...new Set(ages)].map((age) => list(kind, of, { sex, age }));
  const own =
    athlete === null
      ? []
      : [
          list('personal best', athlete),
          list('season best', athlete, { season: seasonOf(performance.onDate, terms.seasonStarts) }),
        ];
  return [...own, ...byAge('club record', club), ...byAge('meet record', meet)];
}

/** The first day of the season in which a day lies. */
function seasonOf(onDate: string, starts: string): string {
  const year = Number(onDate.slice(0, 4));
  const first = onDate.slice(5) >= starts ? year : year - 1;
  return `${String(first).padStart(4, '0')}-${starts}`;
}
