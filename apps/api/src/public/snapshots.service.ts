import { clubs, competitors, type MeetRow, type PublishedEntry } from '#persistence';
import type {
  PublicAthlete,
  PublicClub,
  PublicClubTable,
  PublicCompetition,
  PublicMeet,
  ResultState,
} from '#scoreboard';
import { Injectable } from '@nestjs/common';
import { LRUCache } from 'lru-cache';
import { MeetsService } from '../meets/meets.service.js';
import { sheetOf } from '../platform/competition/documents.js';
import { namesFor } from '../platform/competition/names-in-sheets.js';
import type { LoadedCompetition } from '../platform/competition/loaded.js';
import { Database } from '../platform/database/database.js';
import { Doorkeeper } from '../platform/identity/doorkeeper.js';
import { globalId } from '../platform/inputs/global-id.js';
import { CompetitionChanges } from '../platform/live/competition-changes.js';
import { ResultsService } from '../results/results.service.js';
import { ClubTableService } from '../scoring/club-table.service.js';
import { TimetableService } from '../timetable/timetable.service.js';
import { athleteSnapshot, clubSnapshot, type Appearance } from './club-snapshot.js';
import { clubTableSnapshot } from './club-table-snapshot.js';
import { competitionSnapshot, stateOf } from './competition-snapshot.js';
import { meetSnapshot } from './meet-snapshot.js';

/** What a crowd asks for is gathered anew at most so often, and at once when a competition changes. */
const FRESH_MS = 2_000;
const REMEMBERED = 500;
/** Of a club or an athlete so many of the latest meets are shown. */
const LATEST_MEETS = 12;

/**
 * What everybody may see, as plain data: the only door through which the crowd reads. Ids are UUIDs. Everything is
 * asked for as the public, whoever asks; `null`: not there, or not for the public.
 */
@Injectable()
export class SnapshotsService {
  private readonly competitions = new WeakMap<LoadedCompetition, Promise<PublicCompetition>>();
  private readonly gathered = new LRUCache<string, Promise<object | null>>({
    max: REMEMBERED,
    ttl: FRESH_MS,
  });

  constructor(
    private readonly database: Database,
    private readonly doorkeeper: Doorkeeper,
    private readonly meets: MeetsService,
    private readonly results: ResultsService,
    private readonly clubTables: ClubTableService,
    private readonly timetables: TimetableService,
    changes: CompetitionChanges,
  ) {
    changes.listen(() => this.gathered.clear());
  }

  /** Made once a version. */
  async competition(id: string): Promise<PublicCompetition | null> {
    const staged = await this.meets.findCompetition(id, this.doorkeeper.everybody);
    return staged && this.ofVersion(await this.results.toEverybody(staged.competition));
  }

  /** The competition as a sheet (`sectorline-sheet/1`), with names as the meet shows them. */
  async sheet(id: string): Promise<{ readonly sheet: object; readonly state: ResultState } | null> {
    const staged = await this.meets.findCompetition(id, this.doorkeeper.everybody);
    if (!staged) return null;
    const shown = await this.results.toEverybody(staged.competition);
    const sheet = sheetOf(shown.loaded, { nameOf: namesFor(false), isArchive: false });
    return { sheet, state: stateOf(shown) };
  }

  meet(id: string): Promise<PublicMeet | null> {
    return this.once(`meet ${id}`, async () => {
      const meet = await this.published(id);
      return meet && this.overview(meet);
    });
  }

  /** `null` also where clubs are not scored. */
  clubTable(meetId: string): Promise<PublicClubTable | null> {
    return this.once(`club table ${meetId}`, async () => {
      const meet = await this.published(meetId);
      const counted = meet && (await this.clubTables.counted(meet));
      return counted && clubTableSnapshot(meet, counted);
    });
  }

  /** Those who compete for a club. */
  club(id: string): Promise<PublicClub | null> {
    return this.once(`club ${id}`, async () => {
      const { organisationId } = this.doorkeeper.everybody;
      const row = await this.database.read((at) => clubs.find(at, organisationId, id));
      if (!row) return null;
      return clubSnapshot(globalId('Club', id), row.name, await this.appearances({ clubId: id }));
    });
  }

  /** Of those alone who are shown by a whole name, and only where they are. */
  athlete(id: string): Promise<PublicAthlete | null> {
    return this.once(`athlete ${id}`, async () => {
      const own = globalId('Athlete', id);
      const appearances = (await this.appearances({ athleteId: id })).filter(({ competition, competitors }) =>
        competition.rows.some((row) => row.athlete === own && competitors.has(row.competitor)),
      );
      const latest = appearances[0];
      const name = latest?.competition.rows.find(({ athlete }) => athlete === own)?.name;
      return name === undefined ? null : athleteSnapshot(own, name, appearances);
    });
  }

  /** Published meets, the latest first. */
  async latestMeets(first: number): Promise<MeetRow[]> {
    const { edges } = await this.meets.page({ first }, this.doorkeeper.everybody);
    return edges.map(({ row }) => row);
  }

  private async overview(meet: MeetRow): Promise<PublicMeet> {
    const [rows = []] = await this.meets.competitionsOf([meet]);
    const announced = await this.timetables.announced(meet.organisationId, meet.id);
    const shown = await Promise.all(rows.map(({ id }) => this.competition(id)));
    const there = rows.flatMap((row, at) => (shown[at] ? [{ row, competition: shown[at] }] : []));
    return meetSnapshot({
      meet,
      rows: there.map(({ row }) => row),
      competitions: there.map(({ competition }) => competition),
      announced,
      hasClubTable: (await this.clubTable(meet.id)) !== null,
    });
  }

  private async appearances(of: { clubId: string } | { athleteId: string }): Promise<Appearance[]> {
    const { organisationId } = this.doorkeeper.everybody;
    const entries = await this.database.read((at) =>
      competitors.inPublishedMeets(at, organisationId, of, LATEST_MEETS),
    );
    const ids = [...new Set(entries.map(({ competitionId }) => competitionId))];
    const found = await Promise.all(
      ids.map(async (id) => ({
        competition: await this.competition(id),
        competitors: competitorsIn(entries, id),
      })),
    );
    return found.flatMap(({ competition, competitors: own }) =>
      competition ? [{ competition, competitors: own }] : [],
    );
  }

  private published(id: string): Promise<MeetRow | null> {
    return this.meets.find(id, this.doorkeeper.everybody);
  }

  private ofVersion(shown: Parameters<typeof competitionSnapshot>[0]): Promise<PublicCompetition> {
    const { loaded } = shown;
    const known = this.competitions.get(loaded);
    if (known) return known;
    const made = this.madeOf(shown);
    this.competitions.set(loaded, made);
    made.catch(() => this.competitions.delete(loaded));
    return made;
  }

  /** The plan of the day is asked for until it has begun. */
  private async madeOf(shown: Parameters<typeof competitionSnapshot>[0]): Promise<PublicCompetition> {
    const { row } = shown.loaded;
    const isAhead = shown.progress.phase === 'not started' && row.startsAt !== null;
    const announced = isAhead ? await this.timetables.announced(row.organisationId, row.meetId) : null;
    return competitionSnapshot(shown, announced?.delays.get(row.id) ?? null);
  }

  private once<T extends object>(key: string, gather: () => Promise<T | null>): Promise<T | null> {
    const known = this.gathered.get(key);
    if (known) return known as Promise<T | null>;
    const gathered = gather();
    this.gathered.set(key, gathered);
    gathered.catch(() => this.gathered.delete(key));
    return gathered;
  }
}

function competitorsIn(entries: readonly PublishedEntry[], competition: string): ReadonlySet<string> {
  const own = entries.filter(({ competitionId }) => competitionId === competition);
  return new Set(own.map(({ competitorId }) => globalId('Competitor', competitorId)));
}
