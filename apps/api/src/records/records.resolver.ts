import { Args, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import { Athlete } from '../entries/athletes.types.js';
import type { Identity } from '../platform/identity/identity.js';
import { Viewer } from '../platform/identity/rights.js';
import { uuidOf } from '../platform/inputs/global-id.js';
import { Club } from '../platform/objects/club.type.js';
import { Competition } from '../platform/objects/competition.type.js';
import { Meet } from '../platform/objects/meet.type.js';
import { RecordClaim } from './claims.types.js';
import { EventArgs, ListsArgs } from './records.args.js';
import { RecordsService } from './records.service.js';
import { RecordList } from './records.types.js';

/** The records of a club. */
@Resolver(() => Club)
export class ClubRecordsResolver {
  constructor(private readonly records: RecordsService) {}

  @ResolveField(() => [RecordList], {
    description: 'Club records by event, category, implement and roof, as everything stands now.',
  })
  async recordLists(
    @Parent() { id, name }: Club,
    @Args() { rules, event }: ListsArgs,
    @Viewer() viewer: Identity,
  ): Promise<RecordList[]> {
    const club = { id: uuidOf('Club', id)!, name };
    return this.records.clubLists(club, { rules, event: event ?? null }, viewer);
  }
}

/** The records of a meet through its years. */
@Resolver(() => Meet)
export class MeetRecordsResolver {
  constructor(private readonly records: RecordsService) {}

  @ResolveField(() => [RecordList], {
    description:
      'Meet records as everything stands now. Meets that differ in name by the year alone are one meet.',
  })
  async recordLists(
    @Parent() { row }: Meet,
    @Args() { event }: EventArgs,
    @Viewer() viewer: Identity,
  ): Promise<RecordList[]> {
    return this.records.meetLists(row, event ?? null, viewer);
  }
}

/** An athlete's own bests, for those who may see athletes. */
@Resolver(() => Athlete)
export class AthleteBestsResolver {
  constructor(private readonly records: RecordsService) {}

  @ResolveField(() => [RecordList], { description: 'Personal bests, and the bests of every season.' })
  async bests(
    @Parent() { row }: Athlete,
    @Args() { rules, event }: ListsArgs,
    @Viewer() viewer: Identity,
  ): Promise<RecordList[]> {
    return this.records.athleteLists(row, { rules, event: event ?? null }, viewer);
  }
}

/** What the marks of a competition claim. */
@Resolver(() => Competition)
export class ClaimsResolver {
  constructor(private readonly records: RecordsService) {}

  @ResolveField(() => [RecordClaim], {
    description:
      'What every mark was when it was made, in order of time. Own bests are shown to those who work here, and to everybody of adults who are shown by name.',
  })
  async claims(@Parent() { row }: Competition, @Viewer() viewer: Identity): Promise<RecordClaim[]> {
    return this.records.claims(row, viewer);
  }
}
