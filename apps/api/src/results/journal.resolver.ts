import { Args, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import { journal, type JournalRow } from '#persistence';
import { connectionOf, PageArgs } from '../platform/connections/connection.js';
import { Database } from '../platform/database/database.js';
import { forbidden, unauthenticated } from '../platform/errors/api-error.js';
import type { Identity } from '../platform/identity/identity.js';
import { Viewer } from '../platform/identity/rights.js';
import { Competition } from '../platform/objects/competition.type.js';
import { JournalEntryConnection, OpenQuestion, type JournalEntry } from './journal.types.js';
import { audienceOf, TableMemory } from './table-memory.js';

/** Who did what, when and why: for those who work at the meet. */
@Resolver(() => Competition)
export class JournalResolver {
  constructor(
    private readonly database: Database,
    private readonly tables: TableMemory,
  ) {}

  @ResolveField(() => JournalEntryConnection, {
    nullable: true,
    description:
      'Every entry in the order of recording. Only for officials of the competition, referees and directors.',
  })
  async journal(@Parent() { row }: Competition, @Args() page: PageArgs, @Viewer() viewer: Identity) {
    requireCrew(viewer, row);
    return connectionOf(
      page,
      () => this.database.read((at) => journal.page(at, row.organisationId, row.id, page)),
      entryObject,
    );
  }

  @ResolveField(() => [OpenQuestion], {
    nullable: true,
    description: 'What waits for the referee. Only for officials of the competition, referees and directors.',
  })
  async questions(@Parent() { row }: Competition, @Viewer() viewer: Identity): Promise<OpenQuestion[]> {
    requireCrew(viewer, row);
    const { state } = (await this.tables.of(row)).loaded;
    const bodies = new Map(state.journal.map(({ entry }) => [entry.id, entry]));
    return state.questions.map(({ entry, about, hold }) => ({
      entry,
      about,
      holdCode: hold,
      body: bodies.get(entry),
    }));
  }
}

function requireCrew(viewer: Identity, row: Competition['row']): void {
  if (audienceOf(viewer, row) === 'crew') return;
  const message = 'Only those who work at this competition may read this.';
  throw viewer.isPublic ? unauthenticated(message) : forbidden(message);
}

function entryObject(row: JournalRow): JournalEntry {
  return {
    id: row.entryId,
    sequence: row.sequence,
    kind: row.kind,
    body: row.body,
    standing: row.standing,
    holdCode: row.verdict.standing === 'held' ? row.verdict.hold.code : null,
    authority: row.authority,
    actor: row.actor,
    device: row.device,
    deviceAt: row.deviceAt === null ? null : new Date(row.deviceAt),
    recordedAt: new Date(row.recordedAt),
  };
}
