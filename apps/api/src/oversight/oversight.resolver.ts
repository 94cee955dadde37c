import { Args, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type { Identity } from '../platform/identity/identity.js';
import { Viewer } from '../platform/identity/rights.js';
import { Competition } from '../platform/objects/competition.type.js';
import { Meet } from '../platform/objects/meet.type.js';
import { AuditArgs, MeetAuditArgs } from './oversight.args.js';
import { OversightService } from './oversight.service.js';
import { AuditEntryConnection, MeetQuestion, ResultIssue } from './oversight.types.js';

/** A meet as a whole, for those who answer for it. */
@Resolver(() => Meet)
export class MeetOversightResolver {
  constructor(private readonly service: OversightService) {}

  @ResolveField(() => [MeetQuestion], {
    nullable: true,
    description:
      'Everything that waits for the referee, with what each answer would change. For directors and referees of the meet.',
  })
  questions(@Parent() { row }: Meet, @Viewer() viewer: Identity): Promise<MeetQuestion[]> {
    return this.service.questions(row, viewer);
  }

  @ResolveField(() => AuditEntryConnection, {
    nullable: true,
    description:
      'Who did what, when, on what and why, the newest first; searched by whatever is given. For directors and referees of the meet.',
  })
  auditTrail(@Parent() { row }: Meet, @Args() args: MeetAuditArgs, @Viewer() viewer: Identity) {
    return this.service.trail(row, args, viewer);
  }

  @ResolveField(() => ResultIssue, {
    description: 'Which issue the results and the club table are: an amended result makes the next one.',
  })
  resultIssue(@Parent() { row }: Meet): Promise<ResultIssue> {
    return this.service.issue(row);
  }
}

/** The same of one competition. */
@Resolver(() => Competition)
export class CompetitionOversightResolver {
  constructor(private readonly service: OversightService) {}

  @ResolveField(() => AuditEntryConnection, {
    nullable: true,
    description:
      'The part of the meet’s trail that is about this competition. For directors and referees of the meet.',
  })
  auditTrail(@Parent() { row }: Competition, @Args() args: AuditArgs, @Viewer() viewer: Identity) {
    const meet = { organisationId: row.organisationId, id: row.meetId };
    return this.service.trail(meet, { ...args, competitionId: row.id }, viewer);
  }
}
