import { randomUUID } from 'node:crypto';
import { of, type Columns, type ConstraintCase } from './constraint-cases.js';
import type { Scene } from './fixture.js';

/** A person, a grant, a session, a link and a request that are there already. */
const PERSON = randomUUID();
const GRANT = randomUUID();
const SESSION = randomUUID();
const LINK = randomUUID();
const REQUEST = randomUUID();

const HASH = 'ab'.repeat(32);
/** Any hash of the right form does; this one was made of nothing. */
const ARGON = '$argon2id$v=19$m=19456,t=2,p=1$c29tZXNhbHRzb21lc2FsdA$bm8gcGFzc3dvcmQgYXQgYWxs';

/** A row for each table of people, sessions, links and second persons that all constraints allow. */
export function soundAccess(scene: Scene): Readonly<Record<string, Columns>> {
  const { organisationId: organisation_id, meetId: meet_id, competitionId: competition_id } = scene;
  const id = randomUUID();
  const window = { starts_at: '2026-05-09T06:00:00Z', ends_at: '2026-05-09T20:00:00Z' };
  return {
    person: {
      ...{ organisation_id, id, login_name: 'orla.fennick', display_name: 'Orla Fennick' },
      made_by: 'administrator',
    },
    credential: { organisation_id, person_id: PERSON, password_hash: ARGON },
    role_grant: {
      ...{ organisation_id, id, person_id: PERSON, role: 'referee', meet_id, ...window },
      ...{ reason: 'chief of the throws', given_by: 'director' },
    },
    role_revocation: { organisation_id, grant_id: GRANT, reason: 'went home', revoked_by: 'director' },
    login_session: { organisation_id, id, person_id: PERSON, label: 'laptop' },
    refresh_token: {
      ...{ organisation_id, hash: HASH, session_id: SESSION, generation: 1 },
      expires_at: '2026-06-09T06:00:00Z',
    },
    token_revocation: { organisation_id, token_id: id, reason: 'lost', revoked_by: 'administrator' },
    device_link: {
      ...{ organisation_id, id, meet_id, competition_id, label: 'Circle 2 tablet', ...window },
      ...{ devices: 2, made_by: 'referee' },
    },
    device_link_use: { organisation_id, link_id: LINK, number: 1, device_id: id },
    device_link_revocation: { organisation_id, link_id: LINK, reason: 'lost', revoked_by: 'referee' },
    decision_request: {
      ...{ organisation_id, id, competition_id, kind: 'sign-off', version: 2 },
      ...{ authority: 'official', asked_by: 'chief judge' },
    },
    decision_confirmation: {
      ...{ organisation_id, request_id: REQUEST, asked_by: 'chief judge', entry_id: id },
      ...{ authority: 'referee', confirmed_by: 'referee of throws' },
    },
  };
}

/** What has to be there before the cases. */
export function accessScenery(scene: Scene): readonly (readonly [table: string, columns: Columns])[] {
  const sound = soundAccess(scene);
  return [
    ['person', { ...sound['person'], id: PERSON, login_name: 'first.person' }],
    ['role_grant', { ...sound['role_grant'], id: GRANT }],
    ['login_session', { ...sound['login_session'], id: SESSION }],
    ['device_link', { ...sound['device_link'], id: LINK }],
    ['decision_request', { ...sound['decision_request'], id: REQUEST }],
  ];
}

const NOBODY = randomUUID();
const ENDED = { ended_at: '2026-05-09T20:00:00Z', ended_because: 'reuse' };
const CODE = { setup_hash: HASH, setup_expires_at: '2026-05-10T00:00:00Z' };
const NOT_MEET = { meet_id: null };
const STRANGER = { organisation_id: randomUUID() };

const PEOPLE_CASES: readonly ConstraintCase[] = [
  ...of(
    'person',
    ['person_pkey', 'the same id twice', { id: PERSON }],
    ['person_login_name_unique', 'a login name twice', { login_name: 'first.person' }],
    ['person_organisation_fkey', 'of no organisation', STRANGER],
    ['login_name_form', 'a login name in capitals', { login_name: 'Orla' }],
    ['login_name_form', 'a short login name', { login_name: 'of' }],
    ['login_name_form', 'a login name with a blank', { login_name: 'orla fennick' }],
    ['person_name_length', 'without a name', { display_name: ' ' }],
    ['person_closed_by_somebody', 'closed by nobody', { closed_at: '2026-05-10T00:00:00Z' }],
  ),
  ...of(
    'credential',
    ['credential_pkey', 'two of one person', {}, { after: {} }],
    ['credential_person_fkey', 'of nobody', { person_id: NOBODY }],
    ['credential_password_hashed', 'a password as it was typed', { password_hash: 'six circles two cages' }],
    ['credential_password_hashed', 'another kind of hash', { password_hash: ARGON.replace('2id', '2i') }],
    ['fingerprint_form', 'a code as it was given', { ...CODE, setup_hash: 'K7QM2-9XT4B' }],
    ['credential_setup_expires', 'a code without end', { setup_hash: HASH }],
    ['credential_setup_expires', 'the end of no code', { setup_expires_at: CODE.setup_expires_at }],
  ),
  ...of(
    'role_grant',
    ['role_grant_pkey', 'the same id twice', { id: GRANT }],
    ['role_grant_person_fkey', 'to nobody', { person_id: NOBODY }],
    ['role_grant_meet_fkey', 'at no meet', { meet_id: NOBODY }],
    ['role_grant_competition_fkey', 'at no competition', official({ competition_id: NOBODY })],
    ['role_grant_calling_group_fkey', 'at no group', official({ calling_group_id: NOBODY })],
    ['role_grant_athlete_fkey', 'for no athlete', { ...NOT_MEET, role: 'coach', athlete_id: NOBODY }],
    ['access_role_known', 'a role nobody knows', { role: 'steward' }],
    ['role_grant_window_in_order', 'over before it begins', { ends_at: '2026-05-09T06:00:00Z' }],
    ['role_grant_object_of_role', 'an administrator of a meet', { role: 'admin' }],
    ['role_grant_object_of_role', 'a referee of nothing', NOT_MEET],
    ['role_grant_object_of_role', 'an official of a meet', { role: 'official' }],
    ['role_grant_object_of_role', 'a guardian of a meet', { role: 'guardian' }],
    [
      'role_grant_object_of_role',
      'an official of a circle and of an athlete',
      (scene) => ({
        ...official({ competition_id: scene.competitionId }),
        athlete_id: scene.athleteId,
      }),
    ],
    [
      'role_grant_object_of_role',
      'a director of a competition',
      (scene) => ({ role: 'director', competition_id: scene.competitionId }),
    ],
    ['why_given', 'a blank reason', { reason: ' ' }],
  ),
  ...of(
    'role_revocation',
    ['role_revocation_pkey', 'twice', {}, { after: {} }],
    ['role_revocation_grant_fkey', 'of nothing', { grant_id: NOBODY }],
    ['why_given', 'a reason of a thousand letters', { reason: 'x'.repeat(1000) }],
  ),
];

function official(of_: Columns): Columns {
  return { ...NOT_MEET, role: 'official', ...of_ };
}

const SESSION_CASES: readonly ConstraintCase[] = [
  ...of(
    'login_session',
    ['login_session_pkey', 'the same id twice', { id: SESSION }],
    ['login_session_person_fkey', 'of nobody', { person_id: NOBODY }],
    ['login_session_generation_range', 'before the first token', { generation: 0 }],
    ['login_session_end_known', 'an end nobody knows', { ...ENDED, ended_because: 'bored' }],
    ['login_session_end_explained', 'an end without a reason', { ended_at: ENDED.ended_at }],
    ['login_session_end_explained', 'a reason without an end', { ended_because: 'reuse' }],
  ),
  ...of(
    'refresh_token',
    ['refresh_token_pkey', 'the same token twice', { generation: 2 }, { after: {} }],
    ['refresh_token_one_a_generation', 'two at once', { hash: 'cd'.repeat(32) }, { after: {} }],
    ['refresh_token_session_fkey', 'of no session', { session_id: NOBODY }],
    ['refresh_token_generation_range', 'before the first', { generation: 0 }],
    ['fingerprint_form', 'a token as it was given', { hash: 'kept in a drawer' }],
  ),
  ...of(
    'token_revocation',
    ['token_revocation_pkey', 'twice', { token_id: NOBODY }, { after: { token_id: NOBODY } }],
    ['token_revocation_organisation_fkey', 'of no organisation', STRANGER],
    ['why_given', 'a blank reason', { reason: '' }],
  ),
];

const LINK_CASES: readonly ConstraintCase[] = [
  ...of(
    'device_link',
    ['device_link_pkey', 'the same id twice', { id: LINK }],
    ['device_link_meet_fkey', 'at no meet', { meet_id: NOBODY }],
    ['device_link_competition_fkey', 'at no competition', { competition_id: NOBODY }],
    ['device_link_calling_group_fkey', 'at no group', { competition_id: null, calling_group_id: NOBODY }],
    ['device_link_one_object', 'for nothing', { competition_id: null }],
    ['device_link_one_object', 'for two', { calling_group_id: NOBODY }],
    ['device_link_window_in_order', 'over before it begins', { ends_at: '2026-05-09T06:00:00Z' }],
    ['device_link_devices_range', 'for no device', { devices: 0 }],
    ['device_link_devices_range', 'for a crowd', { devices: 51 }],
    ['label_length', 'without a name', { label: '' }],
  ),
  ...of(
    'device_link_use',
    ['device_link_use_pkey', 'one number twice', {}, { after: { device_id: randomUUID() } }],
    ['device_link_use_once_a_device', 'a device twice', sameDevice(2), { after: sameDevice(1) }],
    ['device_link_use_link_fkey', 'of no link', { link_id: NOBODY }],
    ['device_link_use_number_range', 'before the first', { number: 0 }],
    ['device_link_use_number_range', 'after the last', { number: 51 }],
  ),
  ...of(
    'device_link_revocation',
    ['device_link_revocation_pkey', 'twice', {}, { after: {} }],
    ['device_link_revocation_link_fkey', 'of no link', { link_id: NOBODY }],
    ['why_given', 'a blank reason', { reason: ' ' }],
  ),
];

function sameDevice(number: number): Columns {
  return { number, device_id: NOBODY };
}

const DECISION_CASES: readonly ConstraintCase[] = [
  ...of(
    'decision_request',
    ['decision_request_pkey', 'the same id twice', { id: REQUEST, asked_by: 'referee' }],
    ['decision_request_competition_fkey', 'of no competition', { competition_id: NOBODY }],
    ['decision_request_kind_known', 'another decision', { kind: 'correction' }],
    ['decision_request_reopening_explained', 'a reopening without a reason', { kind: 'reopening' }],
    ['decision_request_version_range', 'before the first version', { version: -1 }],
    ['authority_known', 'by the public', { authority: 'public' }],
    ['why_given', 'a blank reason', { reason: ' ' }],
  ),
  ...of(
    'decision_confirmation',
    ['decision_confirmation_pkey', 'twice', {}, { after: {} }],
    ['decision_confirmation_request_fkey', 'of nothing', { request_id: NOBODY }],
    ['decision_confirmation_request_fkey', 'of what another asked', { asked_by: 'somebody' }],
    ['decision_confirmation_two_persons', 'by the same person', { confirmed_by: 'chief judge' }],
    ['decision_confirmation_by_right', 'by an official', { authority: 'official' }],
  ),
  ...of('official_result', [
    'official_result_two_persons',
    'signed twice by one',
    { confirmed_by: 'referee' },
  ]),
];

export const ACCESS_CASES: readonly ConstraintCase[] = [
  ...PEOPLE_CASES,
  ...SESSION_CASES,
  ...LINK_CASES,
  ...DECISION_CASES,
];

/** Keys that another key of the same columns makes sure of before they can. */
export const ACCESS_IMPLIED: readonly string[] = ['decision_request_by_whom'];
