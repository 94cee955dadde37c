import type { Sex } from '#persistence';
import { Field, ID, Int, ObjectType } from '@nestjs/graphql';
import { UserError } from '../platform/errors/user-error.types.js';
import { Competition } from '../platform/objects/competition.type.js';
import { Competitor } from '../platform/objects/competitor.type.js';
import { Meet } from '../platform/objects/meet.type.js';
import { SexEnum } from '../platform/objects/words.js';
import { Instant } from '../platform/scalars/instant.js';
import { MarkText } from '../platform/scalars/mark.js';
import type { LoadedGroup } from './loaded-group.js';

@ObjectType({
  description:
    'Who is called in one order at one circle, runway or bar. It carries competitions, each with its own rules, plan, places and records.',
})
export class CallingGroup {
  /** Not a field. */
  loaded: LoadedGroup;

  @Field(() => ID)
  id: string;

  @Field(() => Meet)
  meet: Meet;

  @Field()
  title: string;

  @Field(() => String, {
    nullable: true,
    description: 'The circle, runway or pit, as the meet calls it.',
  })
  facility: string | null;

  @Field(() => Instant, { nullable: true })
  startsAt: Date | null;

  @Field(() => Int, { nullable: true, description: 'How long the place is open for warming up before.' })
  warmUpMinutes: number | null;

  @Field(() => Int, {
    description: 'Rises with every change of the group and of any of its competitions; never falls.',
  })
  version: number;

  @Field(() => [Competition], {
    complexity: 20,
    description: 'In the sequence in which they take turns.',
  })
  competitions: Competition[];
}

@ObjectType({ description: 'One of everybody in a calling group.' })
export class CallingLine {
  @Field(() => Int, { description: 'Place in the common order, from 1.' })
  position: number;

  @Field(() => ID)
  competition: string;

  @Field(() => Competitor)
  competitor: Competitor;

  @Field({ description: 'The whole name for those who work at the meet, else what the meet shows.' })
  name: string;

  @Field(() => SexEnum, { nullable: true, description: 'Of the competition.' })
  categorySex: Sex | null;

  @Field(() => String, { nullable: true, description: 'Of the competition, such as U18.' })
  categoryAge: string | null;

  @Field(() => Int, {
    nullable: true,
    description: 'Mass of the implement: the competitor’s own, else that of the competition.',
  })
  implementGrams: number | null;
}

@ObjectType({ description: 'A trial that is to be called, and in which competition it counts.' })
export class GroupCall {
  @Field(() => ID)
  competition: string;

  @Field(() => ID)
  competitor: string;

  @Field()
  bib: string;

  @Field({ description: 'The whole name for those who work at the meet, else what the meet shows.' })
  name: string;

  @Field(() => Int, {
    description: 'In high jump and pole vault the trial at the height, from 1; in a jump-off its round.',
  })
  round: number;

  @Field(() => String, { nullable: true })
  flight: string | null;

  @Field(() => MarkText, { nullable: true, description: 'Where the bar is, in high jump and pole vault.' })
  height: string | null;

  @Field()
  isJumpOff: boolean;

  @Field({ description: 'Somebody who is out unless his protest is upheld.' })
  isUnderProtest: boolean;

  @Field(() => Int, { nullable: true, description: 'Mass of the implement that is to be thrown.' })
  implementGrams: number | null;
}

@ObjectType({ description: 'How long whoever is up has for the trial.' })
export class GroupCallTime {
  @Field(() => Int)
  seconds: number;

  @Field({
    description:
      '"each trial", "consecutive trials" (nobody else of the group in between), "first trial", "one left", "two or three left" or "more than three left".',
  })
  because: string;

  @Field(() => Int, { nullable: true, description: 'Left in the own competition, where the number matters.' })
  left: number | null;

  @Field({ description: '"called", or "uprights set" in the pole vault.' })
  startsWhen: string;

  @Field()
  rule: string;
}

@ObjectType({ description: 'Where a calling group is, over all its competitions.' })
export class CallingProgress {
  @Field({ description: '"not started", "running", "complete" (not all signed yet) or "official".' })
  phase: string;

  @Field(() => String, {
    nullable: true,
    description:
      '"trial", or "height": the bar has to be set for a competition. Nothing at the end and while it is interrupted.',
  })
  awaits: string | null;

  @Field(() => Int, { nullable: true, description: 'Of whoever is up, as in the call.' })
  round: number | null;

  @Field(() => MarkText, { nullable: true, description: 'Where the bar is, in high jump and pole vault.' })
  height: string | null;

  @Field(() => MarkText, {
    nullable: true,
    description: 'The height after it, of all competitions together.',
  })
  nextHeight: string | null;

  @Field(() => GroupCall, { nullable: true, description: 'Who is up.' })
  up: GroupCall | null;

  @Field(() => GroupCall, { nullable: true, description: 'Who is on deck.' })
  next: GroupCall | null;

  @Field(() => GroupCall, { nullable: true })
  then: GroupCall | null;

  @Field(() => [GroupCall], {
    description: 'All who are called in this round, or at this height, as far as it is certain, in order.',
  })
  calls: GroupCall[];

  @Field(() => [GroupCall], {
    description: 'In high jump and pole vault: trials below the bar that have no entry yet.',
  })
  outstanding: GroupCall[];

  @Field(() => Int, {
    description: 'Trials still to be taken as things stand; in high jump and pole vault those called now.',
  })
  remaining: number;

  @Field(() => GroupCallTime, { nullable: true })
  timeAllowed: GroupCallTime | null;

  @Field(() => [ID], {
    description: 'Competitions whose bar has to be set higher than all their heights before they go on.',
  })
  awaitingHeight: string[];

  @Field(() => [ID], {
    description: 'Competitions that are interrupted. Nobody of the group is called until there is none.',
  })
  interrupted: string[];

  @Field(() => [ID], { description: 'Competitions that have nothing left to be called.' })
  finished: string[];
}

@ObjectType()
export class CallingGroupCreatePayload {
  @Field(() => CallingGroup, { nullable: true })
  callingGroup: CallingGroup | null;

  @Field({ description: 'The request had been carried out before.' })
  isReplay: boolean;

  @Field(() => [UserError])
  userErrors: UserError[];
}

@ObjectType()
export class CallingGroupUpdatePayload {
  @Field(() => CallingGroup, { nullable: true })
  callingGroup: CallingGroup | null;

  @Field(() => [UserError])
  userErrors: UserError[];
}

@ObjectType()
export class CallingOrderSetPayload {
  @Field(() => CallingGroup, { nullable: true })
  callingGroup: CallingGroup | null;

  @Field(() => [UserError])
  userErrors: UserError[];
}
