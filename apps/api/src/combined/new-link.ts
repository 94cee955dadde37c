import type { CombinedEntryRow, CombinedEventRow, CompetitionRow } from '#persistence';
import { isTrackEvent } from '#rules';
import { notFound } from '../platform/errors/outcomes.js';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';
import { tableOf } from './combined-loaded.js';
import type { CombinedComponentLinkInput } from './combined-setup.inputs.js';

/**
 * Why an event cannot be counted from a competition at all. What is merely held otherwise than the rules say is told
 * with the component and refused to nobody.
 */
export function linkProblem(
  row: CombinedEventRow,
  { event, competitionId }: CombinedComponentLinkInput,
  competition: CompetitionRow | null,
  entries: readonly CombinedEntryRow[],
): Refusal | null {
  if (!tableOf(row).events.includes(event) || isTrackEvent(event)) return NOT_A_FIELD_EVENT;
  if (competitionId !== null && competitionId !== undefined) {
    if (competition?.meetId !== row.meetId) return notFound('competition', ['competitionId']);
    if (competition.event !== event) return WRONG_EVENT;
    if (competition.unit !== 'cm') return WRONG_UNIT;
  }
  const reversed = new Set(entries.map(({ body }) => (body.kind === 'reversal' ? body.entry : null)));
  const own = entries.filter(({ body }) => body.kind === 'result' && body.event === event);
  return own.every(({ entryId }) => reversed.has(entryId)) ? null : HAS_RESULTS;
}

const NOT_A_FIELD_EVENT = refusal({
  code: 'NOT_A_FIELD_EVENT',
  path: ['event'],
  message: 'Only a field event of the programme is counted from a competition.',
  remedy: 'Enter the times of races with combinedTimeRecord.',
});

const WRONG_EVENT = refusal({
  code: 'WRONG_EVENT',
  path: ['competitionId'],
  message: 'The competition is in another event.',
  remedy: 'Link a competition in the event that is named.',
});

const WRONG_UNIT = refusal({
  code: 'WRONG_UNIT',
  path: ['competitionId'],
  message: 'The competition is measured in feet and inches, and the scoring tables are metric.',
  remedy: 'Enter the metric marks with combinedMarkRecord.',
  rule: 'Scoring tables for combined events: centimetres',
});

const HAS_RESULTS = refusal({
  code: 'HAS_RESULTS',
  path: ['event'],
  message: 'Marks have been entered in this event.',
  remedy: 'Take them back first, each with its reason.',
});
