import { NO_PROCEEDINGS } from '../platform/competition/proceedings.js';
import {
  journal as journalStore,
  type CompetitionRow,
  type FoldedRow,
  type MeetRow,
  type Reads,
} from '#persistence';
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
import { fold } from '../platform/competition/kinds.js';
import { itemOf, type LoadedCompetition } from '../platform/competition/loaded.js';
import { rostersOf, type RosterLine } from '../platform/roster/roster.js';
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

async function loadAll(
  at: Reads,
  rows: readonly CompetitionRow[],
  meets: ReadonlyMap<string, MeetRow>,
): Promise<LoadedCompetition[]> {
  const staged = rows.map((competition) => ({ competition, meet: meets.get(competition.meetId)! }));
  const rosters = await rostersOf(at, staged);
  const ids = rows.map(({ id }) => id);
  const entries = new Map<string, FoldedRow[]>(ids.map((id) => [id, []]));
  for (const entry of await journalStore.readAll(at, rows[0]!.organisationId, ids)) {
    entries.get(entry.competitionId)?.push(entry);
  }
  return staged.map(({ competition: row, meet }, index) => {
    const [roster, journal] = [rosters[index]!, entries.get(row.id) ?? []];
    const latest = journal.at(-1)?.recordedAt;
    const changedAt = latest === undefined ? null : new Date(latest);
    // No mark depends on them.
    const proceedings = NO_PROCEEDINGS;
    return { ...fold(row, roster, journal.map(itemOf)), row, meet, roster, changedAt, proceedings };
  });
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
      order: moment.order + performance.order,
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

const MINUTES_OF_HOUR = 60;
/** More than the turns of one competition. */
const ORDERS_OF_MINUTE = 1_000_000;

/** The day by the clock of the place, and where in it the competition lies; without a time, at its beginning. */
function momentOf(
  { startsAt }: CompetitionRow,
  { startsOn, timeZone }: MeetRow,
): { readonly onDate: string; readonly order: number } {
  if (startsAt === null) return { onDate: startsOn, order: 0 };
  const parts = new Intl.DateTimeFormat('en-CA', {
    timeZone,
    ...{
      year: 'numeric',
      month: '2-digit',
      day: '2-digit',
      hour: '2-digit',
      minute: '2-digit',
      hourCycle: 'h23',
    },
  }).formatToParts(new Date(startsAt));
  const part = (type: Intl.DateTimeFormatPartTypes): string =>
    parts.find((one) => one.type === type)?.value ?? '';
  const minutes = Number(part('hour')) * MINUTES_OF_HOUR + Number(part('minute'));
  return {
    onDate: `${part('year')}-${part('month')}-${part('day')}`,
    order: minutes * ORDERS_OF_MINUTE,
  };
}
