import { enteredResults, meetScorings, type MeetRow } from '#persistence';
import { Injectable } from '@nestjs/common';
import { Database } from '../platform/database/database.js';
import { clubTableView } from './club-table-view.js';
import type { ClubTable } from './club-table.types.js';
import { countingOf } from './entered-view.js';
import { StandingEvents } from './standing-events.js';

/** The clubs of a meet at one moment. */
@Injectable()
export class ClubTableService {
  constructor(
    private readonly database: Database,
    private readonly events: StandingEvents,
  ) {}

  /** Null: the meet is not scored. */
  async of(meet: MeetRow): Promise<ClubTable | null> {
    const read = await this.database.snapshot(async (at) => {
      const scoring = await meetScorings.latest(at, meet.organisationId, meet.id);
      if (!scoring) return null;
      const entered = await enteredResults.ofMeet(at, meet.organisationId, meet.id);
      return { scoring, events: await this.events.of(at, meet), entered: countingOf(entered) };
    });
    return read && clubTableView(read);
  }
}
