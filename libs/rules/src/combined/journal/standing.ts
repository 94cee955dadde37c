import type { CombinedCard, CombinedCompetitor, CombinedMark } from '../combined-card.js';
import { handTimingAddition, type Timing } from '../combined-mark.js';
import type { CombinedDecision } from '../combined-ranking.js';
import type { CombinedTableCode } from '../combined-tables.js';
import { combinedWindOf, windEventsOf, type CombinedWind, type CombinedWindRule } from '../combined-wind.js';
import { combinedPoints, countCombinedField, type CombinedField } from '../count-combined.js';
import { runningTotals, type CombinedStage } from '../running-totals.js';
import type { CombinedEventCode } from '../scoring-table.js';
import { isOutAt } from './project.js';
import type { CombinedEntrant, CombinedEventState, ComponentResult } from './state.js';

/** Where an entrant stands. */
export interface StandingRow {
  readonly entrant: string;
  /** `null`: out, a guest, or without any result so far. */
  readonly place: number | null;
  readonly equal: boolean;
  readonly total: number;
  /** `DNS`: started nothing. `DNF`: did not start an event, or gave up. */
  readonly status: 'DNS' | 'DNF' | 'GUEST' | null;
  /** Without any result so far, and still to start. */
  readonly isWaiting: boolean;
  readonly decidedBy: CombinedDecision | null;
  /** Aligned with the programme; `null`: to come, or never to come of who is out. */
  readonly points: readonly (number | null)[];
  readonly results: readonly (ComponentResult | null)[];
  readonly wind: CombinedWind;
}

/** How the combined event stands: by place, then who waits, who is out, then guests, each in the original order. */
export function standingRows(state: CombinedEventState, windRule: CombinedWindRule): StandingRow[] {
  const groups = groupsOf(state);
  const ranked = countCombinedField(fieldOf(state, groups.ranked), state.setup.ties);
  const rowFor = (entrant: CombinedEntrant, standing: Partial<StandingRow>): StandingRow => ({
    ...{ place: null, equal: false, status: null, isWaiting: false, decidedBy: null },
    ...ownPart(state, entrant, windRule),
    ...standing,
  });
  const byBib = new Map(state.setup.entrants.map((entrant) => [entrant.bib, entrant]));
  return [
    ...ranked.map(({ row: { bib, place, equal }, decidedBy }) =>
      rowFor(byBib.get(bib)!, { place, equal, decidedBy }),
    ),
    ...groups.waiting.map((entrant) => rowFor(entrant, { isWaiting: true })),
    ...groups.out.map((entrant) => rowFor(entrant, { status: state.out.get(entrant.key)!.status })),
    ...groups.guests.map((entrant) =>
      rowFor(entrant, { status: state.out.get(entrant.key)?.status ?? 'GUEST' }),
    ),
  ];
}

/** The totals after each event that has begun, guests aside. */
export function standingStages(state: CombinedEventState): CombinedStage[] {
  const { entrants, table, ties } = state.setup;
  const field = fieldOf(
    state,
    entrants.filter(({ guest }) => !guest),
  );
  const begun = table.events.findLastIndex((_, index) =>
    [...state.results.values()].some((line) => (line[index] ?? null) !== null),
  );
  const rows = field.rows.map((row) => ({ ...row, marks: row.marks.slice(0, begun + 1) }));
  return runningTotals({ ...field, rows }, ties);
}

/**
 * The marks as a sheet of combined events has them; what is to come is `null` there, which is worth as much. A sheet
 * is timed one way: if both were used, times by hand stand in it as the electronic ones that the tables score alike.
 */
export function combinedCardOf(
  state: CombinedEventState,
  table: CombinedTableCode,
  timing: Timing,
  described: (key: string) => Pick<CombinedCompetitor, 'name' | 'club'>,
): CombinedCard {
  const entrants = state.setup.entrants.filter(({ guest }) => !guest);
  const results = [...state.results.values()].flat();
  const isByHand = timing === 'hand' && results.every((result) => result?.timing !== 'electronic');
  const rows = entrants.map(({ key, bib }) => ({
    bib,
    ...described(key),
    marks: marksOf(state, key).map((mark, index) => {
      const result = state.results.get(key)?.[index];
      return isByHand && result?.outcome === 'valid' ? result.hundredths : mark;
    }),
  }));
  return { table, timing: isByHand ? 'hand' : 'electronic', rows };
}

interface Groups {
  readonly ranked: readonly CombinedEntrant[];
  readonly waiting: readonly CombinedEntrant[];
  readonly out: readonly CombinedEntrant[];
  readonly guests: readonly CombinedEntrant[];
}

function groupsOf({ setup, results, out }: CombinedEventState): Groups {
  const own = setup.entrants.filter(({ guest }) => !guest);
  const isIn = own.filter(({ key }) => !out.has(key));
  const hasBegun = ({ key }: CombinedEntrant): boolean =>
    (results.get(key) ?? []).some((result) => result !== null);
  return {
    ranked: isIn.filter(hasBegun),
    waiting: isIn.filter((entrant) => !hasBegun(entrant)),
    out: own.filter(({ key }) => out.has(key)),
    guests: setup.entrants.filter(({ guest }) => guest),
  };
}

/** As the tables are asked: electronic times, those by hand with what is added to them. */
function fieldOf(state: CombinedEventState, entrants: readonly CombinedEntrant[]): CombinedField {
  const rows = entrants.map(({ key, bib }) => ({ bib, name: null, club: null, marks: marksOf(state, key) }));
  return { table: state.setup.table, timing: 'electronic', rows };
}

function marksOf({ setup, results, out }: CombinedEventState, key: string): CombinedMark[] {
  const own = results.get(key) ?? [];
  return setup.table.events.map((event, index): CombinedMark => {
    const result = own[index] ?? null;
    if (result === null) return isOutAt(out.get(key), index) ? 'DNS' : null;
    return result.outcome === 'DNS' ? 'DNS' : electronicOf(result, event);
  });
}

function electronicOf({ hundredths, timing }: ComponentResult, event: CombinedEventCode): number | null {
  if (hundredths === null) return null;
  return timing === 'hand' ? hundredths + handTimingAddition(event) : hundredths;
}

function ownPart(
  state: CombinedEventState,
  { key }: CombinedEntrant,
  windRule: CombinedWindRule,
): Pick<StandingRow, 'entrant' | 'total' | 'points' | 'results' | 'wind'> {
  const { table } = state.setup;
  const results = state.results.get(key) ?? [];
  const points = table.events.map((event, index) => pointsOf(state, event, results[index] ?? null));
  const windEvents = windEventsOf(table);
  const winds = results
    .filter((result, index) => windEvents.includes(table.events[index]!) && result?.outcome === 'valid')
    .map((result) => result?.wind ?? 'NWI');
  const total = points.reduce<number>((sum, one) => sum + (one ?? 0), 0);
  return { entrant: key, total, points, results, wind: combinedWindOf(winds, windRule) };
}

function pointsOf(
  { setup }: CombinedEventState,
  event: CombinedEventCode,
  result: ComponentResult | null,
): number | null {
  if (result === null) return null;
  if (result.hundredths === null) return 0;
  return combinedPoints(setup.table.scoredBy, event, result.hundredths, result.timing ?? 'electronic') ?? 0;
}
