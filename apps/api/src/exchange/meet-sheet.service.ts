import { Injectable } from '@nestjs/common';
import {
  combinedEvents,
  competitions,
  enteredResults,
  meetScorings,
  type MeetRow,
  type MeetScoringRow,
} from '#persistence';
import {
  parsePlacePoints,
  SCORING_PRESETS,
  type PlainObject,
  type RecountDocument,
  type Scoring,
} from '#rules';
import { meetResultOf, meetSheetOf } from '../platform/competition/documents.js';
import { loadCompetition, type LoadedCompetition } from '../platform/competition/loaded.js';
import { Database } from '../platform/database/database.js';
import type { Identity } from '../platform/identity/identity.js';
import { namesFor } from '../platform/competition/names-in-sheets.js';

/** A meet at one moment, as a sheet can say it. */
interface MeetOnSheets {
  readonly loaded: readonly LoadedCompetition[];
  readonly scoring: Scoring;
}

/** Whole meets as sheets and results. */
@Injectable()
export class MeetSheetService {
  constructor(private readonly database: Database) {}

  /** Null: not for this viewer, or no sheet can say how it is scored. */
  async sheetOf(meet: MeetRow, viewer: Identity): Promise<PlainObject | null> {
    const read = await this.read(meet, viewer);
    return read && meetSheetOf(read.loaded, read.scoring, { nameOf: namesFor(true), isArchive: false });
  }

  /** As `sheetOf`. */
  async resultOf(meet: MeetRow, viewer: Identity): Promise<RecountDocument | null> {
    const read = await this.read(meet, viewer);
    return read && meetResultOf(read.loaded, read.scoring);
  }

  private async read({ organisationId, id }: MeetRow, viewer: Identity): Promise<MeetOnSheets | null> {
    if (!viewer.mayDirect(id) && !viewer.has('referee', id)) return null;
    return this.database.snapshot(async (at) => {
      const row = await meetScorings.latest(at, organisationId, id);
      const scoring = row && sheetScoring(row);
      if (!scoring) return null;
      const combined = await combinedEvents.ofMeets(at, organisationId, [id]);
      const entered = await enteredResults.ofMeet(at, organisationId, id);
      if (combined.length + entered.length > 0) return null;
      const loaded: LoadedCompetition[] = [];
      for (const competition of await competitions.ofMeet(at, organisationId, id)) {
        loaded.push(await loadCompetition(at, competition));
      }
      return { loaded, scoring };
    });
  }
}

/** Null: a sheet cannot say it. */
function sheetScoring({
  preset,
  places,
  scorersPerClub,
  nonScorers,
  clubTies,
  divisions,
}: MeetScoringRow): Scoring | null {
  const points = preset === null ? places?.individual : SCORING_PRESETS[preset].individual.points;
  if (!points || points === 'one per team' || clubTies !== 'places' || divisions.length > 0) return null;
  return { places: points.map((one) => parsePlacePoints(String(one))!), scorersPerClub, nonScorers };
}
