import type { MeetRow, NewCombinedEvent } from '#persistence';
import { COMBINED_TIES, combinedProgramme, editionsOf, scoringSexesOf } from '#rules';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import { scoringSexIn, type CombinedEventCreateInput } from './combined-setup.inputs.js';

/** The combined event as it was asked for, or all that is wrong with it. */
export function newEvent(
  input: CombinedEventCreateInput,
  meet: MeetRow,
): { readonly row: NewCombinedEvent } | { readonly refusals: Refusal[] } {
  const rules = input.rules ?? meet.rules;
  const inherited = rules === meet.rules ? meet.edition : (editionsOf(rules).at(-1) ?? '');
  const edition = input.edition ?? inherited;
  const sexes = scoringSexesOf(input.programme);
  const asked = scoringSexIn(input.scoringSex);
  const scoredBy = input.scoringSex ? asked : sexes.length === 1 ? sexes[0]! : null;
  const refusals: Refusal[] = [];
  if (!editionsOf(rules).includes(edition)) {
    refusals.push(
      refusal({
        code: 'UNKNOWN_EDITION',
        path: ['edition'],
        message: `There is no edition "${edition}" of ${rules} here.`,
        remedy: `Send one of ${editionsOf(rules).join(', ')}, or none for the newest.`,
      }),
    );
  }
  if (!scoredBy || !combinedProgramme(input.programme, scoredBy)) {
    refusals.push(
      refusal({
        code: 'SCORING_SEX',
        path: ['scoringSex'],
        message: 'This programme is not scored by those tables, or nothing says by which.',
        remedy: `Send ${sexes.join(' or ')}.`,
        rule: 'WA TR39, combined events, and the scoring tables',
      }),
    );
  }
  if (!scoredBy || refusals.length > 0) return { refusals };
  return {
    row: {
      organisationId: meet.organisationId,
      id: input.id ?? uuidV7(),
      meetId: meet.id,
      title: input.title,
      programme: input.programme,
      scoredBy,
      categorySex: input.categorySex ?? null,
      categoryAge: input.categoryAge ?? null,
      rules,
      edition,
      ties: input.ties ?? COMBINED_TIES[rules].value,
      timing: input.timing,
    },
  };
}
