import { createHash, randomUUID } from 'node:crypto';
import { of, soundRows, type Columns, type ConstraintCase } from './constraint-cases.js';
import type { Scene } from './fixture.js';

/** A starting mark and a decision that are there already, and the attempt that it is about. */
export const KNOWN = {
  mark: randomUUID(),
  competition: randomUUID(),
  attempt: randomUUID(),
  decision: randomUUID(),
};

/** A row for each table of records that all constraints allow. */
export function soundRecords(scene: Scene): Readonly<Record<string, Columns>> {
  const { organisationId: organisation_id } = scene;
  return {
    starting_mark: {
      organisation_id,
      id: randomUUID(),
      club_id: scene.clubId,
      event: 'discus',
      unit: 'cm',
      mark: 5210,
      indoor: false,
      implement_grams: 1000,
      sex: 'W',
      age: 'senior',
      on_date: '1998-06-06',
      counts: true,
      entered_by: 'director',
    },
    record_decision: {
      organisation_id,
      id: randomUUID(),
      competition_id: KNOWN.competition,
      attempt_id: KNOWN.attempt,
      competitor_id: scene.competitorIds[0],
      kind: 'club record',
      revision: 1,
      decision: 'ratified',
      mark: 4812,
      implement_grams: 1000,
      recheck: 'passed',
      measuring: 'steel-tape',
      despite: '[]',
      reason: 'measured and weighed',
      authority: 'referee',
      decided_by: 'referee',
    },
  };
}

/** The rows that the cases lean on, in the order of storing. */
export function recordsBefore(scene: Scene): readonly (readonly [table: string, columns: Columns])[] {
  const { starting_mark: mark, record_decision: decision } = soundRecords(scene);
  const body = { kind: 'attempt', competitor: scene.competitorIds[0], round: 1, outcome: 'pass', mark: null };
  const attempt = {
    organisation_id: scene.organisationId,
    competition_id: KNOWN.competition,
    sequence: 1,
    entry_id: KNOWN.attempt,
    kind: 'attempt',
    body,
    standing: 'accepted',
    verdict: { standing: 'accepted', notices: [] },
    authority: 'official',
    actor: 'official',
    fingerprint: createHash('sha256').update(KNOWN.attempt).digest('hex'),
  };
  return [
    ['starting_mark', { ...mark, id: KNOWN.mark }],
    ['competition', { ...soundRows(scene)['competition'], id: KNOWN.competition }],
    ['journal_entry', attempt],
    ['record_decision', { ...decision, id: KNOWN.decision, kind: 'meet record' }],
  ];
}

const AGAIN = { replaces_id: KNOWN.mark, reason: 'read again' };
const LINE = { import_id: KNOWN.attempt, import_line: 2 };

const STARTING_MARK = of(
  'starting_mark',
  ['starting_mark_pkey', 'the same id twice', { id: KNOWN.mark }],
  ['starting_mark_club_fkey', 'of no club', { club_id: randomUUID() }],
  ['starting_mark_meet_fkey', 'of no meet', { meet_id: randomUUID() }],
  ['starting_mark_athlete_fkey', 'of no athlete', { athlete_id: randomUUID() }],
  ['starting_mark_in_a_list', 'in no list', { club_id: null }],
  ['starting_mark_mark_range', 'nothing thrown', { mark: 0 }],
  ['starting_mark_mark_range', 'a mark nobody can write', { mark: 100_000 }],
  [
    'starting_mark_wind_form',
    'a wind without a sign',
    { event: 'long-jump', implement_grams: null, wind: '1.3' },
  ],
  ['starting_mark_wind_of_event', 'a wind in the discus', { wind: '+1.3' }],
  [
    'starting_mark_wind_of_event',
    'a wind under a roof',
    { event: 'long-jump', implement_grams: null, indoor: true, wind: '+1.3' },
  ],
  ['starting_mark_implement_iff_thrown', 'a discus without its mass', { implement_grams: null }],
  ['starting_mark_implement_iff_thrown', 'a jump with a mass', { event: 'high-jump' }],
  ['starting_mark_date_range', 'before there was athletics', { on_date: '1899-12-31' }],
  ['starting_mark_replaces_fkey', 'instead of nothing', { ...AGAIN, replaces_id: randomUUID() }],
  ['starting_mark_replaced_once', 'two instead of one', AGAIN, { after: AGAIN }],
  ['starting_mark_not_itself', 'instead of itself', { ...AGAIN, id: KNOWN.mark }],
  ['starting_mark_taken_back', 'nothing that is taken back', { counts: false }],
  ['starting_mark_reason_iff_replaces', 'a correction without a reason', { replaces_id: KNOWN.mark }],
  ['starting_mark_reason_iff_replaces', 'a reason without a correction', { reason: 'read again' }],
  ['starting_mark_reason_given', 'a blank reason', { ...AGAIN, reason: ' ' }],
  ['starting_mark_imported_once', 'one line of a table twice', LINE, { after: LINE }],
  ['starting_mark_line_iff_imported', 'a line of no table', { import_line: 2 }],
  ['starting_mark_line_range', 'a line before the first', { ...LINE, import_line: 0 }],
);

const RECORD_DECISION = of(
  'record_decision',
  ['record_decision_pkey', 'the same id twice', { id: KNOWN.decision }],
  ['record_decision_in_order', 'two that are both the first', { kind: 'meet record' }],
  ['record_decision_competition_fkey', 'in no competition', { competition_id: randomUUID() }],
  ['record_decision_competitor_fkey', 'for nobody', { competitor_id: randomUUID() }],
  ['record_decision_attempt_fkey', 'about no attempt', { attempt_id: randomUUID() }],
  ['record_decision_kind_known', 'a best, which nobody ratifies', { kind: 'personal best' }],
  ['record_decision_revision_range', 'before the first', { revision: 0 }],
  ['record_decision_decision_known', 'another word', { decision: 'maybe' }],
  ['record_decision_mark_range', 'no mark', { mark: 0 }],
  ['record_decision_wind_form', 'a wind without a sign', { wind: '1.3' }],
  ['record_decision_recheck_known', 'another finding', { recheck: 'fine' }],
  ['record_decision_measuring_known', 'measured by eye', { measuring: 'eye' }],
  ['record_decision_despite_shape', 'doubts that are no list', { despite: { code: 'WIND' } }],
  ['record_decision_reason_given', 'a blank reason', { reason: ' ' }],
  ['record_decision_not_by_officials', 'by an official', { authority: 'official' }],
);

export const RECORD_CASES: readonly ConstraintCase[] = [...STARTING_MARK, ...RECORD_DECISION];
