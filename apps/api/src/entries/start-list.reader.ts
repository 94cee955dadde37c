import type { CompetitionRow } from '#persistence';
import { Injectable } from '@nestjs/common';
import { MeetsService } from '../meets/meets.service.js';
import { Database } from '../platform/database/database.js';
import type { Identity } from '../platform/identity/identity.js';
import { rostersOf, type RosterLine } from '../platform/roster/roster.js';

/** Start lists as they are read. */
@Injectable()
export class StartListReader {
  constructor(
    private readonly database: Database,
    private readonly meets: MeetsService,
  ) {}

  /** For each of these competitions the start list. Four statements, however many they are. */
  async rostersOf(rows: readonly CompetitionRow[]): Promise<RosterLine[][]> {
    const meets = await this.meets.meetsOf(rows);
    const staged = rows.flatMap((competition, index) => {
      const meet = meets[index];
      return meet ? [{ competition, meet }] : [];
    });
    return this.database.read((at) => rostersOf(at, staged));
  }

  /** Whole names are for those who act on the competition, and for an administrator. */
  requireCaller(competition: CompetitionRow, viewer: Identity): void {
    if (viewer.isAdmin) return;
    viewer.requireCapacity(competition);
  }
}
