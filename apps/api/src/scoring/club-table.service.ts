import { enteredResults, meetScorings, type MeetRow } from '#persistence';
import { Injectable } from '@nestjs/common';
import { CombinedScoresService } from '../combined/combined-scores.service.js';
import { Database } from '../platform/database/database.js';
import { clubTableView } from './club-table-view.js';
import type { ClubTable } from './club-table.types.js';
import { countingOf } from './entered-view.js';
import { StandingEvents } from './standing-events.js';

/** The clubs of a meet with a number that rises whenever something that counts changes. */
export interface CountedClubs {
  readonly version: number;
  readonly table: ClubTable;
}

/** The clubs of a meet at one moment. */
@Injectable()
export class ClubTableService {
  constructor(
    private readonly database: Database,
    private readonly events: StandingEvents,
    private readonly combined: CombinedScoresService,
  ) {}

  /** Null: the meet is not scored. */
  async of(meet: MeetRow): Promise<ClubTable | null> {
    return (await this.counted(meet))?.table ?? null;
  }

  /** Null: the meet is not scored. */
  async counted(meet: MeetRow): Promise<CountedClubs | null> {
    const read = await this.database.snapshot(async (at) => {
      const scoring = await meetScorings.latest(at, meet.organisationId, meet.id);
      if (!scoring) return null;
      const entered = await enteredResults.ofMeet(at, meet.organisationId, meet.id);
      const { events: combined, componentIds } = await this.combined.of(at, meet);
      const events = await this.events.of(at, meet);
      const rows = [...events, ...combined].map(({ row }) => row);
      const version = rows.reduce((sum, row) => sum + row.version, scoring.revision + entered.length);
      const scored = {
        scoring,
        // What is only a part of a combined event is no event of its own.
        events: events.filter(({ row }) => !componentIds.has(row.id)),
        combined,
        entered: countingOf(entered),
      };
      return { version, scored };
    });
    return read && { version: read.version, table: clubTableView(read.scored) };
  }
}
