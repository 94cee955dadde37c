import { randomUUID } from 'node:crypto';
import { of, type Columns, type ConstraintCase } from './constraint-cases.js';
import type { Scene } from './fixture.js';

/** A protest that is there already. */
const PROTEST = randomUUID();
const WRITTEN = { authority: 'referee', actor: 'referee of throws' };

/** A row for each table of postings and protests that all constraints allow. */
export function soundProceedings(scene: Scene): Readonly<Record<string, Columns>> {
  const { organisationId: organisation_id, competitionId: competition_id } = scene;
  const id = randomUUID();
  return {
    result_posting: {
      ...{ organisation_id, id, competition_id, sequence: 2, posted_at: '2026-05-09T13:00:00Z' },
      ...{ place: 'board at the call room', ...WRITTEN },
    },
    protest: {
      ...{ organisation_id, id, competition_id, form: 'written', ground: 'rules' },
      ...{ lodged_by: 'team manager', lodged_at: '2026-05-09T13:10:00Z', reason: 'the order was changed' },
      ...{ deposit: '50', deposit_paid: true, timeliness: 'in time', ...WRITTEN },
    },
    protest_step: {
      ...{ organisation_id, id, protest_id: PROTEST, number: 1, kind: 'decision', outcome: 'dismissed' },
      ...{ done_by: 'referee', done_at: '2026-05-09T13:20:00Z', reason: 'as announced before' },
      ...{ rule: 'TR25.6', deposit: 'forfeited', timeliness: 'in time', ...WRITTEN },
    },
  };
}

/** What has to be there before the cases. */
export function proceedingsBefore(scene: Scene): readonly (readonly [table: string, columns: Columns])[] {
  return [['protest', { ...soundProceedings(scene)['protest'], id: PROTEST }]];
}

const NOBODY = randomUUID();

export const PROCEEDINGS_CASES: readonly ConstraintCase[] = [
  ...of(
    'result_posting',
    ['result_posting_pkey', 'the same id twice', { id: PROTEST }, { after: { id: PROTEST } }],
    ['result_posting_competition_fkey', 'of no competition', { competition_id: NOBODY }],
    ['result_posting_sequence_range', 'before the journal begins', { sequence: -1 }],
    ['result_posting_place_given', 'at a blank place', { place: ' ' }],
    ['why_given', 'with trials outstanding for a blank reason', { incomplete: ' ' }],
  ),
  ...of(
    'protest',
    ['protest_pkey', 'the same id twice', { id: PROTEST }],
    ['protest_competition_fkey', 'in no competition', { competition_id: NOBODY }],
    ['protest_attempt_fkey', 'about no entry', { attempt_id: NOBODY }],
    ['protest_form_known', 'in another form', { form: 'by bird' }],
    ['protest_ground_known', 'on another ground', { ground: 'weather' }],
    ['protest_lodged_by_given', 'by nobody', { lodged_by: ' ' }],
    ['protest_deposit_given', 'with a blank deposit', { deposit: ' ' }],
    ['protest_deposit_paid_of_one', 'with nothing paid', { deposit: null }],
    ['protest_timeliness_known', 'another time', { timeliness: 'soon' }],
    ['protest_late_after_window', 'late without a time', { timeliness: 'late' }],
  ),
  ...of(
    'protest_step',
    ['protest_step_pkey', 'the same id twice', { number: 2, id: PROTEST }, { after: { id: PROTEST } }],
    ['protest_step_in_order', 'two that are both the first', {}, { after: { id: randomUUID() } }],
    ['protest_step_protest_fkey', 'about nothing', { protest_id: NOBODY }],
    ['protest_step_number_range', 'before the first', { number: 0 }],
    ['protest_step_kind_known', 'another step', { kind: 'sleep', outcome: null }],
    ['protest_step_outcome_of_decision', 'a decision without one', { outcome: null }],
    ['protest_step_outcome_known', 'another outcome', { outcome: 'maybe' }],
    ['protest_step_done_by_given', 'by nobody', { done_by: ' ' }],
    ['protest_step_rule_given', 'by a blank rule', { rule: ' ' }],
    ['protest_step_deposit_known', 'another end of the deposit', { deposit: 'lost' }],
    ['protest_step_timeliness_known', 'another time', { timeliness: 'not taken' }],
    ['protest_step_by_right', 'decided by an official', { authority: 'official' }],
  ),
];
