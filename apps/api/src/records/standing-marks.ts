import type { CompetitionRow, MeetRow, Reads } from '#persistence';
import {
  listedAges,
  performancesOfState,
  performancesOfVerticalState,
  type Identified,
  type Performance,
} from '#rules';
import { Injectable } from '@nestjs/common';
import { LRUCache } from 'lru-cache';
import { CompetitionMemory } from '../platform/competition/competition-memory.js';
import { loadAll } from '../platform/competition/load-all.js';
import type { LoadedCompetition } from '../platform/competition/loaded.js';
import { momentOf } from '../platform/competition/moment-of.js';
import type { RosterLine } from '../platform/roster/roster.js';
import { meetSeriesOf } from './meet-series.js';

/** The marks of a competition at one version. */
export interface StandingMarks {
  readonly row: CompetitionRow;
  readonly meet: MeetRow;
  readonly marks: readonly StandingMark[];
}

/** A mark that stands, and whose it is. Its performance is named by the id of its attempt. */
export interface StandingMark {
  readonly performance: Performance;
  readonly line: RosterLine;
}

/** Marks, not competitions: a decade of a busy club. */
const REMEMBERED = 200_000;
/** Competitions whose journals are read together. */
const AT_ONCE = 100;

/**
 * The marks of competitions as they stand, each counted once a version. Those that have changed are read together: a
 * fixed number of statements for every hundred.
 */
@Injectable()
export class MarkMemory {
  private readonly known = new LRUCache<string, StandingMarks>({
    maxSize: REMEMBERED,
    sizeCalculation: ({ marks }) => 1 + marks.length,
  });

  constructor(private readonly memory: CompetitionMemory) {}

  /** In the order of `rows`. `at` must be one moment. */
  async of(
    at: Reads,
    rows: readonly CompetitionRow[],
    meets: ReadonlyMap<string, MeetRow>,
  ): Promise<StandingMarks[]> {
    const found = new Map<string, StandingMarks>();
    const missing: CompetitionRow[] = [];
    for (const row of rows) {
      const known = this.known.get(row.id) ?? this.fromMemory(row);
      if (known?.row.version === row.version) found.set(row.id, known);
      else missing.push(row);
    }
    for (let from = 0; from < missing.length; from += AT_ONCE) {
      for (const loaded of await loadAll(at, missing.slice(from, from + AT_ONCE), meets)) {
        found.set(loaded.row.id, this.remember(loaded));
      }
    }
    return rows.map(({ id }) => found.get(id)!);
  }

  private fromMemory({ organisationId, id, version }: CompetitionRow): StandingMarks | undefined {
    const loaded = this.memory.atHand(organisationId, id);
    return loaded?.row.version === version ? this.remember(loaded) : undefined;
  }

  private remember(loaded: LoadedCompetition): StandingMarks {
    const standing = { row: loaded.row, meet: loaded.meet, marks: marksOf(loaded) };
    this.known.set(loaded.row.id, standing);
    return standing;
  }
}

/** The marks of a competition as the lists take them. */
export function marksOf(loaded: LoadedCompetition): StandingMark[] {
  const { row, meet, roster } = loaded;
  const moment = momentOf(row, meet);
  const occasion = { competition: row.id, onDate: moment.onDate, meet: meetSeriesOf(meet.name) };
  const lines = new Map(roster.map((line) => [line.competitor.id, line]));
  const owners = new Map<string, string>();
  const identify = (key: string): Identified => identityOf(lines.get(key)!, row);
  const performances =
    loaded.kind === 'vertical'
      ? performancesOfVerticalState(loaded.state, occasion, identify)
      : performancesOfState(loaded.state, occasion, identify);
  for (const { id, competitor } of loaded.state.attempts.values()) owners.set(id, competitor);
  return performances.map((performance) => ({
    performance: {
      ...performance,
      order: moment.minutes * ORDERS_OF_MINUTE + performance.order,
      ages: agesOf(performance, row),
    },
    line: lines.get(owners.get(performance.id)!)!,
  }));
}

function identityOf({ competitor, athlete }: RosterLine, row: CompetitionRow): Identified {
  return {
    athlete: competitor.athleteId,
    club: competitor.clubId,
    sex: row.categorySex ?? athlete?.sex ?? 'X',
    ages: [],
  };
}

function agesOf({ event, sex, implementGrams, onDate }: Performance, row: CompetitionRow): string[] {
  return listedAges({ rules: row.rules, event, sex, age: row.categoryAge, implementGrams, onDate });
}

/** More than the turns of one competition. */
const ORDERS_OF_MINUTE = 1_000_000;
