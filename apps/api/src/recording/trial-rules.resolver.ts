import { Parent, ResolveField, Resolver } from '@nestjs/graphql';
import { FOULS, isDistanceEvent, ruleSet, type Citation } from '#rules';
import { Competition } from '../platform/objects/competition.type.js';
import { FoulOfEvent, TrialTime } from './trial-rules.types.js';

/** What whoever records has to know of the rules. */
@Resolver(() => Competition)
export class TrialRulesResolver {
  @ResolveField(() => [FoulOfEvent], {
    description: 'The reasons to choose from for a failure; giving none is fine.',
  })
  foulReasons(@Parent() { row }: Competition): FoulOfEvent[] {
    return ruleSet(row.rules, row.edition).fouls[row.event].map(({ value: reason, cite }) => ({
      reason,
      sentence: FOULS[reason].sentence,
      ...cited(cite),
    }));
  }

  @ResolveField(() => TrialTime, {
    nullable: true,
    description:
      'In a throw or a horizontal jump. At a bar it depends on how many are left: see the progress.',
  })
  trialTime(@Parent() { row }: Competition): TrialTime | null {
    if (!isDistanceEvent(row.event)) return null;
    const { value, cite } = ruleSet(row.rules, row.edition).timeAllowed;
    return { seconds: value.trialS, consecutiveSeconds: value.consecutiveS, ...cited(cite) };
  }
}

function cited({ rule, basis }: Citation): { readonly rule: string; readonly isConfirmed: boolean } {
  return { rule, isConfirmed: basis === 'read' || basis === 'read in part' };
}
