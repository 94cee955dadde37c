import { competitors, type CompetitionRow } from '#persistence';
import { eligibilityOf } from '#rules';
import { Injectable } from '@nestjs/common';
import { MeetsService } from '../meets/meets.service.js';
import { categoryOfCompetition, ownDefinitions } from '../platform/competition/category.js';
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

  /** The own age category of each on the day of the competition; null where it is not known. */
  async categoriesOf(row: CompetitionRow, roster: readonly RosterLine[]): Promise<(string | null)[]> {
    const [meet] = await this.meets.meetsOf([row]);
    const own = await this.database.read((at) => ownDefinitions(at, row.organisationId));
    return roster.map(({ athlete, competitor }) => {
      const entrant = {
        birthDate: athlete?.birthDate ?? null,
        sex: athlete?.sex ?? null,
        guest: competitor.guest,
      };
      return eligibilityOf(entrant, categoryOfCompetition(row, meet!), own).own?.code ?? null;
    });
  }

  /** Where else at the meet the athletes of a competition are entered. */
  async elsewhereOf({ organisationId, id }: CompetitionRow): Promise<competitors.AlsoEntered[]> {
    return this.database.read((at) => competitors.alsoEntered(at, organisationId, id));
  }

  /** Whole names are for those who act on the competition, and for an administrator. */
  requireCaller(competition: CompetitionRow, viewer: Identity): void {
    if (viewer.isAdmin) return;
    viewer.requireCapacity(competition, 'winds');
  }
}
