import { randomUUID } from 'node:crypto';
import { of, type Columns, type ConstraintCase } from './constraint-cases.js';

const ID = randomUUID();

/** An entry of a kind with a body that is right but for the changes; `undefined` leaves a key out. */
function entry(kind: string, right: Columns, changes: Columns): Columns {
  return { kind, body: { kind, ...right, ...changes } };
}

const ATTEMPT = { competitor: 'c1', round: 1, outcome: 'valid', mark: 4812 };
const FOUL = { outcome: 'foul', mark: null };
const CORRECTION = { attempt: ID, reason: 'misread', outcome: 'valid', mark: 4812 };

const FAILED = { outcome: 'failed', foul: 'BAR', incident: null, protested: false };
const JUMP = { competitor: 'c1', height: 160, trial: 1, ...FAILED };
const BAR = { height: 165, leavesOut: [162] };
const UPRIGHTS = { competitor: 'c1', behindZeroCm: 60 };

const jump = (changes: Columns): Columns => entry('jump', JUMP, changes);
const jumpOff = (changes: Columns): Columns => entry('jump-off', JUMP, changes);

const attempt = (changes: Columns): Columns => entry('attempt', ATTEMPT, changes);
const correction = (changes: Columns): Columns => entry('correction', CORRECTION, changes);

const SOUND_BODIES: Readonly<Record<string, Columns>> = {
  correction: CORRECTION,
  move: { moves: [{ attempt: ID, competitor: 'c2', round: 1 }], reason: 'wrong line' },
  reversal: { entry: ID, reason: 'entered twice' },
  replacement: { attempt: ID, reason: 'hindered' },
  ruling: { entry: ID, decision: 'count', reason: 'seen by two judges' },
  disqualification: { competitor: 'c1', rule: 'TR 7', reason: 'conduct' },
  reinstatement: { competitor: 'c1', reason: 'appeal' },
  admission: { competitor: 'c1', after: 3, admittedBy: 'R', reason: 'hindered' },
  order: { round: 2, competitors: ['c2', 'c1'], reason: 'clash with the long jump' },
  reopening: { reason: 'protest in time' },
  'jump-correction': { attempt: ID, reason: 'wrong flag', ...FAILED },
  'jump-move': { moves: [{ attempt: ID, competitor: 'c2', height: 160, trial: 1 }], reason: 'wrong line' },
  'jump-order': { height: 160, trial: 2, competitors: ['c2', 'c1'], reason: 'clash with the long jump' },
  'jump-off-declined': { reason: 'both are content' },
};

const STOP = { cause: 'lightning', note: null, seenAt: 1_795_612_700_000 };
const CLEAR = { confirmed: ['WEATHER'], newWarmUp: true, clearedAt: 1_795_612_700_000, despite: null };
const stop = (changes: Columns): Columns => entry('interruption', STOP, changes);
const allClear = (changes: Columns): Columns => entry('all-clear', CLEAR, changes);

const NAMED = { implementId: ID, implementStanding: 'passed' };
const QUERY = { attempts: [ID], implementId: ID, reason: 'mass 998 g, at least 1000 g' };
const query = (changes: Columns): Columns => entry('implement-query', QUERY, changes);

const NOTE = { about: 'injury', text: 'fell, helped off', competitor: 'c1', seenAt: 1_795_612_700_000 };
const EXCUSE = { competitor: 'c1', to: 'Long jump', until: 1_795_612_700_000 };
const LATE = { competitor: ID, bib: '77', flight: null };
const BIBS = { bibs: [{ competitor: 'c1', bib: '12' }], reason: 'swapped' };
const FLIGHT = { competitor: 'c1', flight: 'B', reason: 'clash' };

const AT_THE_CIRCLE: [constraint: string, what: string, changes: Columns][] = [
  ['journal_body_note_worded', 'a note of nothing', entry('note', NOTE, { text: ' ' })],
  ['journal_body_note_worded', 'a note about a sentence', entry('note', NOTE, { about: 'He fell.' })],
  ['journal_body_note_at', 'a note of no time', entry('note', NOTE, { seenAt: undefined })],
  ['journal_body_excused_somewhere', 'excused to a blank', entry('excuse', EXCUSE, { to: '' })],
  ['journal_body_excused_until', 'excused until some day', entry('excuse', EXCUSE, { until: 'noon' })],
  ['journal_body_card_remark', 'a blank remark', entry('card-signed', {}, { remark: ' ' })],
  ['journal_body_list_names', 'nobody excused', entry('excuse', EXCUSE, { competitor: undefined })],
  ['journal_body_list_names', 'nobody matched', entry('match', {}, {})],
  ['journal_body_late_bib', 'a late entry without a bib', entry('late-entry', LATE, { bib: undefined })],
  ['journal_body_flight_named', 'to no flight', entry('flight', FLIGHT, { flight: null })],
  ['journal_body_bibs_listed', 'no bibs', entry('bibs', BIBS, { bibs: [] })],
  [
    'journal_body_bibs_listed',
    'a bib that is a number',
    entry('bibs', BIBS, { bibs: [{ competitor: 'c1', bib: 12 }] }),
  ],
  ['journal_body_list_change_explained', 'bibs for no reason', entry('bibs', BIBS, { reason: undefined })],
  ['journal_body_list_change_explained', 'a flight for no reason', entry('flight', FLIGHT, { reason: ' ' })],
];

const sound = (kind: string, changes: Columns): Columns => entry(kind, SOUND_BODIES[kind]!, changes);

/** Every kind of decision has to say why. */
const WITHOUT_REASON = Object.keys(SOUND_BODIES).flatMap((kind) =>
  of(
    'journal_entry',
    ['journal_body_reason_given', `${kind} without a reason`, sound(kind, { reason: undefined })],
    ['journal_body_reason_given', `${kind} with a blank reason`, sound(kind, { reason: '  ' })],
  ),
);

/** Entries of a high jump or pole vault, of safety and of implements, that every constraint allows. */
export const SOUND_JUMPS: readonly Columns[] = [
  attempt(NAMED),
  correction({ ...NAMED, implementStanding: 'kept back' }),
  query({}),
  stop({}),
  stop({ cause: 'person-in-sector', note: 'a photographer at 40 m' }),
  allClear({}),
  allClear({ newWarmUp: false, despite: 'the storm has passed to the north' }),
  jump({}),
  jump({ outcome: 'cleared', foul: null, incident: 'WIND_AFTER_CLEARING' }),
  jump({ outcome: 'passed', foul: null, trial: 3 }),
  jumpOff({ foul: null, protested: true, trial: 12 }),
  entry('bar', BAR, {}),
  entry('bar', BAR, { leavesOut: [] }),
  entry('uprights', UPRIGHTS, {}),
  ...['jump-correction', 'jump-move', 'jump-order', 'jump-off-declined'].map((kind) => sound(kind, {})),
];

export const JOURNAL_CASES: readonly ConstraintCase[] = [
  ...WITHOUT_REASON,
  ...of(
    'journal_entry',
    ['journal_entry_competition_fkey', 'of no competition', { competition_id: randomUUID() }],
    ['journal_entry_pkey', 'a sequence twice', { sequence: 1 }, { after: {}, triggersOff: true }],
    ['journal_entry_id_unique', 'an id twice', { sequence: 2, entry_id: ID }, { after: { entry_id: ID } }],
    ['journal_entry_in_sequence', 'a gap', { sequence: 2 }],
    ['journal_entry_sequence_range', 'before the first', { sequence: 0 }, { triggersOff: true }],
    ['journal_body_kind_known', 'another kind', { kind: 'remark', body: { kind: 'remark' } }],
    ['journal_entry_body_of_kind', 'the body of another kind', { kind: 'sign-off' }],
    [
      'journal_body_kind_known',
      'a body that does not say its kind',
      { kind: 'sign-off', body: { incomplete: null } },
    ],
    ['standing_known', 'a refused entry', { standing: 'refused', verdict: { standing: 'refused' } }],
    ['journal_entry_verdict_agrees', 'held, and the verdict says accepted', { standing: 'held' }],
    ['journal_entry_verdict_agrees', 'an empty verdict', { verdict: {} }],
    ['authority_known', 'another authority', { authority: 'coach' }],
    ['signature_length', 'made by nobody', { actor: '' }],
    ['signature_length', 'a device without a name', { device: '' }],
    ['fingerprint_form', 'a fingerprint that is none', { fingerprint: 'abc' }],
    ['journal_body_competitor_named', 'a trial of nobody', attempt({ competitor: undefined })],
    ['journal_body_competitor_named', 'a trial of somebody without a key', attempt({ competitor: '' })],
    [
      'journal_body_competitor_named',
      'a start of a number',
      entry('start', {}, { competitor: 7, status: 'DNS' }),
    ],
    ['journal_body_attempt_named', 'a wind of no trial', entry('wind', {}, { wind: 12 })],
    ['journal_body_attempt_named', 'a correction of no trial', correction({ attempt: null })],
    ['journal_body_entry_named', 'a ruling on nothing', sound('ruling', { entry: undefined })],
    ['journal_body_round_range', 'round 0', attempt({ round: 0 })],
    ['journal_body_round_range', 'round 13', attempt({ round: 13 })],
    ['journal_body_round_range', 'round one and a half', attempt({ round: 1.5 })],
    ['journal_body_round_range', 'a round as text', attempt({ round: '1' })],
    ['journal_body_round_range', 'an order without a round', sound('order', { round: undefined })],
    ['journal_body_outcome_known', 'another outcome', attempt({ outcome: 'great', mark: null })],
    ['journal_body_outcome_known', 'no outcome', attempt({ outcome: undefined, mark: null })],
    ['journal_body_mark_iff_valid', 'valid without a mark', attempt({ mark: null })],
    ['journal_body_mark_iff_valid', 'valid without even the key', attempt({ mark: undefined })],
    ['journal_body_mark_iff_valid', 'a mark of nothing', attempt({ mark: 0 })],
    ['journal_body_mark_iff_valid', 'a negative mark', attempt({ mark: -4812 })],
    ['journal_body_mark_iff_valid', 'a mark in metres', attempt({ mark: 48.12 })],
    ['journal_body_mark_iff_valid', 'a mark as text', attempt({ mark: '4812' })],
    ['journal_body_mark_iff_valid', 'a mark over a kilometre', attempt({ mark: 100_000 })],
    ['journal_body_mark_iff_valid', 'a foul with a mark', attempt({ outcome: 'foul' })],
    ['journal_body_mark_iff_valid', 'a pass with a mark', correction({ outcome: 'pass' })],
    ['journal_body_wind_of_trial', 'a storm', attempt({ wind: 1000 })],
    ['journal_body_wind_of_trial', 'a wind between tenths', attempt({ wind: 1.5 })],
    ['journal_body_wind_of_trial', 'a wind in words', attempt({ wind: 'strong' })],
    ['journal_body_wind_of_trial', 'the wind of a pass', attempt({ outcome: 'pass', mark: null, wind: 3 })],
    [
      'journal_body_wind_reading',
      'a reading that is still to come',
      entry('wind', { attempt: ID }, { wind: 'pending' }),
    ],
    ['journal_body_wind_reading', 'no reading', entry('wind', { attempt: ID }, {})],
    ['journal_body_foul_of_foul', 'a foul reason for a valid trial', attempt({ foul: 'SECTOR' })],
    [
      'journal_body_foul_of_foul',
      'a foul reason that is no code',
      attempt({ ...FOUL, foul: 'out of sector' }),
    ],
    ['journal_body_protest_of_foul', 'a protest against a valid trial', attempt({ protested: 4812 })],
    ['journal_body_protest_of_foul', 'a protest over nothing', attempt({ ...FOUL, protested: 0 })],
    ['journal_body_implement_range', 'an implement without mass', attempt({ implementGrams: 0 })],
    ['journal_body_decision_known', 'a ruling that decides nothing', sound('ruling', { decision: 'later' })],
    ['journal_body_start_known', 'another start', entry('start', {}, { competitor: 'c1', status: 'late' })],
    ['journal_body_rule_named', 'disqualified by no rule', sound('disqualification', { rule: '' })],
    ['journal_body_admitted_by_known', 'admitted by somebody', sound('admission', { admittedBy: 'X' })],
    ['journal_body_admission_after', 'admitted after no round', sound('admission', { after: 0 })],
    ['journal_body_moves_listed', 'a move of nothing', sound('move', { moves: [] })],
    ['journal_body_order_listed', 'an order of nobody', sound('order', { competitors: undefined })],
    ['journal_body_competitor_named', 'a jump of nobody', jump({ competitor: undefined })],
    ['journal_body_competitor_named', 'uprights for nobody', entry('uprights', UPRIGHTS, { competitor: '' })],
    ['journal_body_attempt_named', 'a correction of no jump', sound('jump-correction', { attempt: '' })],
    ['journal_body_moves_listed', 'a move of no jump', sound('jump-move', { moves: undefined })],
    [
      'journal_body_order_listed',
      'an order at the bar of nobody',
      sound('jump-order', { competitors: 'c1' }),
    ],
    ['journal_body_height_range', 'a jump over nothing', jump({ height: 0 })],
    ['journal_body_height_range', 'a height in metres', jumpOff({ height: 1.6 })],
    ['journal_body_height_range', 'a bar at no height', entry('bar', BAR, { height: undefined })],
    ['journal_body_height_range', 'an order at a height in words', sound('jump-order', { height: '160' })],
    ['journal_body_trial_range', 'the trial before the first', jump({ trial: 0 })],
    ['journal_body_trial_range', 'a trial and a half', jumpOff({ trial: 1.5 })],
    ['journal_body_trial_range', 'an order for no trial', sound('jump-order', { trial: null })],
    ['journal_body_jump_outcome_known', 'the outcome of a throw', jump({ outcome: 'foul', foul: null })],
    [
      'journal_body_jump_outcome_known',
      'no outcome',
      sound('jump-correction', { outcome: undefined, foul: null }),
    ],
    ['journal_body_foul_of_failure', 'a foul reason for a clearance', jump({ outcome: 'cleared' })],
    ['journal_body_foul_of_failure', 'a foul reason that is no code', jumpOff({ foul: 'knocked it off' })],
    [
      'journal_body_incident_of_jump',
      'an incident of a pass',
      jump({ outcome: 'passed', foul: null, incident: 'NO_ADVANTAGE' }),
    ],
    ['journal_body_incident_of_jump', 'an incident that is no code', jump({ incident: 'a gust' })],
    [
      'journal_body_protest_of_failure',
      'a protest against a clearance',
      jump({ outcome: 'cleared', foul: null, protested: true }),
    ],
    ['journal_body_protest_of_failure', 'nothing said of a protest', jumpOff({ protested: undefined })],
    [
      'journal_body_left_out_listed',
      'heights left out that are no list',
      entry('bar', BAR, { leavesOut: null }),
    ],
    ['journal_body_left_out_listed', 'a height left out in metres', entry('bar', BAR, { leavesOut: [1.62] })],
    [
      'journal_body_uprights_range',
      'uprights before the zero line',
      entry('uprights', UPRIGHTS, { behindZeroCm: -1 }),
    ],
    [
      'journal_body_uprights_range',
      'uprights out of reach',
      entry('uprights', UPRIGHTS, { behindZeroCm: 201 }),
    ],
    [
      'journal_body_uprights_range',
      'uprights nowhere',
      entry('uprights', UPRIGHTS, { behindZeroCm: undefined }),
    ],
    ['journal_body_implement_named', 'an implement of which nothing is known', attempt({ implementId: ID })],
    [
      'journal_body_implement_named',
      'something known of no implement',
      attempt({ implementStanding: 'passed' }),
    ],
    ['journal_body_implement_named', 'known otherwise', correction({ ...NAMED, implementStanding: 'fine' })],
    ['journal_body_implement_named', 'an implement by its label', attempt({ ...NAMED, implementId: 'LT 1' })],
    ['journal_body_query_names_implement', 'a question about no implement', query({ implementId: null })],
    ['journal_body_query_names_attempts', 'a question about no trial', query({ attempts: [] })],
    ['journal_body_query_names_attempts', 'a question about a number', query({ attempts: [1] })],
    ['journal_body_query_explained', 'a question without a ground', query({ reason: ' ' })],
    ...AT_THE_CIRCLE,
    ['journal_body_cause_known', 'stopped for nothing', stop({ cause: undefined })],
    ['journal_body_cause_known', 'stopped for a sentence', stop({ cause: 'It rained.' })],
    ['journal_body_seen_at', 'seen at no time', stop({ seenAt: undefined })],
    ['journal_body_seen_at', 'seen between two milliseconds', stop({ seenAt: 0.5 })],
    ['journal_body_stop_noted', 'a blank note', stop({ note: ' ' })],
    ['journal_body_checks_listed', 'cleared without a look', allClear({ confirmed: [] })],
    ['journal_body_checks_listed', 'a check that is a number', allClear({ confirmed: [1] })],
    ['journal_body_cleared_at', 'cleared at no time', allClear({ clearedAt: null })],
    ['journal_body_cleared_at', 'nothing said of a warm-up', allClear({ newWarmUp: undefined })],
    ['journal_body_despite_explained', 'despite nothing', allClear({ despite: '' })],
    [
      'journal_body_incomplete_explained',
      'incomplete for a blank reason',
      entry('sign-off', {}, { incomplete: ' ' }),
    ],
  ),
];
