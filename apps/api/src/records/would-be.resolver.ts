import type { Type } from '@nestjs/common';
import { Context, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { RequestContext } from '../platform/graphql/request-context.js';
import type { LoadedCompetition } from '../platform/competition/loaded.js';
import type { Identity } from '../platform/identity/identity.js';
import { Viewer } from '../platform/identity/rights.js';
import {
  AttemptCorrectPayload,
  AttemptRecordPayload,
  AttemptWindRecordPayload,
  JumpCorrectPayload,
  JumpOffRecordPayload,
  JumpRecordPayload,
  type EntryPayload,
} from '../recording/recording.types.js';
import { TableRow } from '../results/results.types.js';
import { RecordClaim } from './claims.types.js';
import { RecordsService } from './records.service.js';

/** Adds to the answer to an entry what its mark would be. Nothing is read unless it is asked for, and after the commit. */
function wouldBeOf<Payload extends EntryPayload>(payload: Type<Payload>): Type<unknown> {
  @Resolver(() => payload)
  class WouldBeResolver {
    constructor(private readonly records: RecordsService) {}

    @ResolveField(() => [RecordClaim], {
      description:
        'What the mark would be: bests and records against the marks before it. Empty while it does not stand.',
    })
    async wouldBe(
      @Parent() { entry, competition }: EntryPayload,
      @Viewer() viewer: Identity,
    ): Promise<RecordClaim[]> {
      if (!entry || !competition) return [];
      return this.records.claims(competition.row, viewer, (loaded) => attemptOf(loaded, entry.id));
    }
  }
  return WouldBeResolver;
}

/** The attempt that an entry is about; `undefined`: about none. */
function attemptOf({ state }: LoadedCompetition, id: string): string | undefined {
  const entries: readonly { readonly entry: LoadedCompetition['state']['journal'][number]['entry'] }[] =
    state.journal;
  const entry = entries.find((item) => item.entry.id === id)?.entry;
  switch (entry?.kind) {
    case 'attempt':
    case 'jump':
    case 'jump-off':
      return entry.id;
    case 'correction':
    case 'jump-correction':
    case 'wind':
      return entry.attempt;
    default:
      return undefined;
  }
}

export const WOULD_BE_RESOLVERS = [
  AttemptRecordPayload,
  AttemptCorrectPayload,
  AttemptWindRecordPayload,
  JumpRecordPayload,
  JumpCorrectPayload,
  JumpOffRecordPayload,
].map((payload) => wouldBeOf(payload));

/** The own bests of a competition, counted once for all rows of a request. */
@Resolver(() => TableRow)
export class RowBestsResolver {
  private readonly claims = new WeakMap<RequestContext, Map<string, Promise<RecordClaim[]>>>();

  constructor(private readonly records: RecordsService) {}

  @ResolveField(() => [RecordClaim], {
    description:
      'The personal and season bests made in this competition, as they stand. Shown to those who work here, and to everybody of adults who are shown by name.',
  })
  async bests(
    @Parent() row: TableRow,
    @Context() context: RequestContext,
    @Viewer() viewer: Identity,
  ): Promise<RecordClaim[]> {
    const of = this.claims.get(context) ?? new Map<string, Promise<RecordClaim[]>>();
    this.claims.set(context, of);
    // A subscription is one request through many versions.
    const key = `${row.in.id} ${row.in.version}`;
    const claims = of.get(key) ?? this.records.claims(row.in, viewer);
    of.set(key, claims);
    return (await claims).filter(
      ({ kind, competitor, isBeaten, whyNot }) =>
        competitor === row.competitor && kind.endsWith('-best') && !isBeaten && whyNot === null,
    );
  }
}
