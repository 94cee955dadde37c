import { createHash, randomUUID } from 'node:crypto';
import { of, type Columns, type ConstraintCase } from './constraint-cases.js';
import type { Scene } from './fixture.js';

/** A combined event that is there already. */
const REQUEST = randomUUID();

export const HEPTATHLON = randomUUID();

const ID = randomUUID();
const LONG = 'x'.repeat(201);
const RUN = {
  entrant: 'e1',
  event: '100mh',
  outcome: 'valid',
  hundredths: 1269,
  timing: 'electronic',
  wind: 5,
};

/** A row for each table of combined events that all constraints allow. */
export function soundCombined(scene: Scene): Readonly<Record<string, Columns>> {
  const { organisationId: organisation_id } = scene;
  const id = randomUUID();
  const own = { organisation_id, combined_event_id: HEPTATHLON };
  return {
    combined_event: {
      organisation_id,
      id,
      meet_id: scene.meetId,
      title: 'Heptathlon women',
      programme: 'heptathlon',
      scored_by: 'W',
      rules: 'WA',
      edition: '2024-01',
      ties: 'stay',
      timing: 'electronic',
    },
    combined_entrant: { ...own, id, bib: '201', position: 1 },
    combined_link: {
      ...own,
      revision: 1,
      event: 'shot',
      competition_id: scene.competitionId,
      linked_by: 'director',
    },
    combined_entry: {
      ...own,
      sequence: 1,
      entry_id: id,
      kind: 'result',
      body: { kind: 'result', ...RUN },
      standing: 'accepted',
      verdict: { standing: 'accepted', notices: [] },
      authority: 'official',
      actor: 'official',
      fingerprint: createHash('sha256').update(id).digest('hex'),
    },
    combined_official_result: {
      ...own,
      revision: 1,
      sequence: 0,
      sheet: { format: 'sectorline-combined/1', rows: [{ bib: '201' }] },
      result: { format: 'sectorline-result/1', results: [] },
      signed_by: 'referee',
    },
    combined_request: {
      ...own,
      id,
      kind: 'sign-off',
      version: 2,
      authority: 'referee',
      asked_by: 'referee',
    },
  };
}

function entry(kind: string, right: Columns, changes: Columns): Columns {
  return { kind, body: { kind, ...right, ...changes } };
}

const run = (changes: Columns): Columns => entry('result', RUN, changes);
const start = (changes: Columns): Columns =>
  entry('start', { entrant: 'e1', status: 'DNS', from: null }, changes);

const SOUND_BODIES: Readonly<Record<string, Columns>> = {
  correction: { entry: ID, reason: 'misread', outcome: 'DNF', hundredths: null, timing: null, wind: null },
  reversal: { entry: ID, reason: 'entered twice' },
  ruling: { entry: ID, decision: 'count', reason: 'the photo shows it' },
  reopening: { reason: 'protest in time' },
};

/** Entries of every other kind that every constraint allows. */
export const SOUND_COMBINED: readonly Columns[] = [
  ...Object.entries(SOUND_BODIES).map(([kind, body]) => entry(kind, body, {})),
  entry('result', { entrant: 'e1', event: 'shot', outcome: 'NM', hundredths: null }, {}),
  start({}),
  start({ status: 'DNF', from: '200m' }),
  start({ status: 'started' }),
  entry('sign-off', { incomplete: null }, {}),
  entry('sign-off', { incomplete: 'darkness' }, {}),
];

const WITHOUT_REASON = Object.entries(SOUND_BODIES).flatMap(([kind, body]) =>
  of('combined_entry', [
    'combined_body_reason_given',
    `${kind} with a blank reason`,
    entry(kind, body, { reason: ' ' }),
  ]),
);

const JOURNAL = of(
  'combined_entry',
  ['combined_entry_event_fkey', 'of no combined event', { combined_event_id: randomUUID() }],
  ['combined_entry_pkey', 'a sequence twice', { sequence: 1 }, { after: {}, triggersOff: true }],
  ['combined_entry_id_unique', 'an id twice', { sequence: 2, entry_id: ID }, { after: { entry_id: ID } }],
  ['combined_entry_in_sequence', 'a gap', { sequence: 2 }],
  ['combined_entry_sequence_range', 'before the first', { sequence: 0 }, { triggersOff: true }],
  ['combined_entry_body_of_kind', 'the body of another kind', { kind: 'sign-off' }],
  ['combined_entry_verdict_agrees', 'held, and the verdict says accepted', { standing: 'held' }],
  ['combined_body_kind_known', 'another kind', { kind: 'note', body: { kind: 'note' } }],
  ['combined_body_entrant_named', 'a time of nobody', run({ entrant: undefined })],
  ['combined_body_entrant_named', 'a start of a number', start({ entrant: 7 })],
  [
    'combined_body_entry_named',
    'a ruling on nothing',
    entry('ruling', SOUND_BODIES['ruling']!, { entry: '' }),
  ],
  ['combined_body_event_named', 'an event of no programme', run({ event: '300m' })],
  ['combined_body_event_named', 'no event', run({ event: undefined })],
  [
    'combined_body_outcome_known',
    'another outcome',
    run({ outcome: 'won', hundredths: null, timing: null, wind: null }),
  ],
  ['combined_body_mark_iff_valid', 'valid without a time', run({ hundredths: null })],
  ['combined_body_mark_iff_valid', 'a time of nothing', run({ hundredths: 0 })],
  ['combined_body_mark_iff_valid', 'a time in seconds', run({ hundredths: 12.69 })],
  ['combined_body_mark_iff_valid', 'a time of more than 100 minutes', run({ hundredths: 600_000 })],
  [
    'combined_body_mark_iff_valid',
    'a time of who did not finish',
    run({ outcome: 'DNF', timing: null, wind: null }),
  ],
  ['combined_body_timing_of_time', 'another watch', run({ timing: 'sundial' })],
  [
    'combined_body_timing_of_time',
    'timed, and no time',
    run({ outcome: 'DNS', hundredths: null, wind: null }),
  ],
  ['combined_body_wind_of_mark', 'wind of no time', run({ outcome: 'DNS', hundredths: null, timing: null })],
  ['combined_body_wind_of_mark', 'wind in metres', run({ wind: 1.3 })],
  [
    'combined_body_decision_known',
    'another decision',
    entry('ruling', SOUND_BODIES['ruling']!, { decision: 'maybe' }),
  ],
  ['combined_body_start_known', 'another status', start({ status: 'late' })],
  ['combined_body_from_of_giving_up', 'giving up from no event', start({ status: 'DNF' })],
  ['combined_body_from_of_giving_up', 'not starting from an event on', start({ from: '200m' })],
  [
    'combined_body_incomplete_explained',
    'incomplete without saying why',
    entry('sign-off', { incomplete: '' }, {}),
  ],
);

const SETTING_UP = [
  ...of(
    'combined_event',
    ['combined_event_pkey', 'the same id twice', { id: HEPTATHLON }],
    ['combined_event_meet_fkey', 'of no meet', { meet_id: randomUUID() }],
    ['combined_programme_known', 'another programme', { programme: 'triathlon' }],
    ['combined_event_scored_by_programme', 'a heptathlon of men outdoors', { scored_by: 'M' }],
    ['combined_event_scored_by_programme', 'a decathlon by the women’s tables', { programme: 'decathlon' }],
    [
      'combined_event_scored_by_programme',
      'throws for both',
      { programme: 'throws-pentathlon', scored_by: 'X' },
    ],
    ['combined_ties_known', 'another end of a tie', { ties: 'coin' }],
    ['combined_timing_known', 'another watch', { timing: 'sundial' }],
    ['combined_event_counters_advance', 'a journal before there is one', { last_sequence: 1, version: 1 }],
    ['combined_event_counters', 'fewer versions than entries', { last_sequence: 1 }, { triggersOff: true }],
  ),
  ...of(
    'combined_entrant',
    ['combined_entrant_pkey', 'the same id twice', { id: ID, bib: '7', position: 7 }, { after: { id: ID } }],
    ['combined_entrant_event_fkey', 'of no combined event', { combined_event_id: randomUUID() }],
    ['combined_entrant_athlete_fkey', 'an athlete who is not there', { athlete_id: randomUUID() }],
    ['combined_entrant_club_fkey', 'a club that is not there', { club_id: randomUUID() }],
    ['combined_entrant_bib_unique', 'a bib twice', { id: ID, position: 2 }, { after: {} }],
    ['combined_entrant_position_unique', 'a position twice', { id: ID, bib: '7' }, { after: {} }],
    [
      'combined_entrant_one_name',
      'an athlete and a name',
      ({ athleteId }) => ({ athlete_id: athleteId, listed_name: 'Mira Tolve' }),
    ],
    ['combined_entrant_one_club', 'two clubs', ({ clubId }) => ({ club_id: clubId, listed_club: 'Harbour' })],
    ['combined_entrant_listed_name_length', 'an empty name', { listed_name: '' }],
    ['combined_entrant_listed_club_length', 'an endless club', { listed_club: LONG }],
    ['combined_entrant_position_range', 'before the first', { position: 0 }],
  ),
  ...of(
    'combined_link',
    ['combined_link_pkey', 'a revision twice', {}, { after: {} }],
    ['combined_link_event_fkey', 'of no combined event', { combined_event_id: randomUUID() }],
    ['combined_link_competition_fkey', 'to no competition', { competition_id: randomUUID() }],
    ['combined_link_revision_range', 'before the first', { revision: 0 }],
    ['combined_event_code_known', 'an event of no programme', { event: '300m' }],
    ['combined_link_of_field_event', 'of a race', { event: '200m' }],
  ),
  ...of(
    'combined_request',
    ['combined_request_pkey', 'the same id twice', { id: REQUEST }, { after: { id: REQUEST } }],
    ['combined_request_event_fkey', 'of no combined event', { combined_event_id: randomUUID() }],
    ['combined_request_kind_known', 'another decision', { kind: 'correction' }],
    ['combined_request_version_range', 'before the first version', { version: -1 }],
  ),
  ...of(
    'combined_official_result',
    ['combined_official_result_two_persons', 'confirmed by who signed', { confirmed_by: 'referee' }],
    ['combined_official_result_event_fkey', 'of no combined event', { combined_event_id: randomUUID() }],
    ['combined_official_result_pkey', 'a revision twice', {}, { after: {}, triggersOff: true }],
    ['combined_official_result_in_sequence', 'the second before the first', { revision: 2 }],
    ['combined_official_result_in_sequence', 'more of the journal than there is', { sequence: 1 }],
    ['combined_official_result_revision_range', 'before the first', { revision: 0 }, { triggersOff: true }],
    ['combined_official_result_sequence_range', 'less than nothing', { sequence: -1 }, { triggersOff: true }],
    ['combined_official_result_sheet_shape', 'a sheet that is a list', { sheet: [] }],
    ['combined_official_result_result_shape', 'a result that is text', { result: '"none"' }],
    ['combined_official_result_without_names', 'a name', { sheet: { rows: [{ name: 'Mira Tolve' }] } }],
  ),
];

/** An athlete may be in a combined event once. */
const TWICE: ConstraintCase = {
  table: 'combined_entrant',
  constraint: 'combined_entrant_athlete_unique',
  what: 'an athlete twice',
  change: ({ athleteId }) => ({ id: ID, athlete_id: athleteId, bib: '7', position: 7 }),
};

export const COMBINED_CASES: readonly ConstraintCase[] = [
  ...SETTING_UP,
  TWICE,
  ...WITHOUT_REASON,
  ...JOURNAL,
];
