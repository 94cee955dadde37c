import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * The coach's notebook. Throws of practice and what was seen of a throw are rows with columns of their own, for there
 * are many of them and statistics read them; what else is said of an athlete is a journal of few entries. Everything
 * is only added to: a correction is a row that names what it replaces, and a throw keeps the id of its first row, so
 * that what was seen of it stays with it.
 */
export class Notebook1795613001200 implements MigrationInterface {
  name = 'Notebook1795613001200';

  async up(runner: QueryRunner): Promise<void> {
    for (const domain of DOMAINS) await runner.query(domain);
    for (const table of [PRACTICE_SESSION, PRACTICE_THROW, OBSERVATION, NOTEBOOK_ENTRY, FAULT_CHANGE])
      await runner.query(table);
    for (const index of INDEXES) await runner.query(index);
    for (const table of TABLES) {
      await runner.query(`
        CREATE TRIGGER ${table}_insert_only BEFORE UPDATE OR DELETE OR TRUNCATE ON ${table}
        FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()`);
    }
    await runner.query(`
      DO $block$
      BEGIN
        IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'sectorline_app') THEN
          GRANT SELECT, INSERT ON ${TABLES.join(', ')} TO sectorline_app;
        END IF;
      END
      $block$`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(
      `DROP TABLE fault_change, notebook_entry, observation, practice_throw, practice_session`,
    );
    await runner.query(
      `DROP DOMAIN fault_change_body, notebook_body, release_data, fault_marks, code_list, variant`,
    );
  }
}

const TABLES = ['practice_session', 'practice_throw', 'observation', 'notebook_entry', 'fault_change'];

/** Codes of faults: `DT-04`, of a club's own `DT-X04`. */
const CODE = `^[A-Z]{2}-X?[0-9]{2,4}$`;

const DOMAINS = [
  `
  CREATE DOMAIN variant AS text
    CONSTRAINT variant_form CHECK (VALUE ~ '^[a-z]{2,20}(-[a-z]{2,20})?$')`,
  `
  CREATE DOMAIN code_list AS jsonb
    CONSTRAINT code_list_shape CHECK (VALUE IS NULL OR (VALUE @@ 'strict $.type() == "array" && $.size() <= 100 && !(exists($[*] ? (@.type() != "string" || !(@ like_regex "^[a-zA-Z0-9-]+$"))))') IS TRUE)`,
  `
  CREATE DOMAIN fault_marks AS jsonb
    CONSTRAINT fault_marks_shape CHECK ((VALUE @@ 'strict $.type() == "array" && $.size() <= 100') IS TRUE)
    CONSTRAINT fault_marks_coded CHECK ((VALUE @@ '!(exists($[*] ? (@.code.type() != "string" || !(@.code like_regex "${CODE}"))))') IS TRUE)
    CONSTRAINT fault_marks_severity CHECK ((VALUE @@ '!(exists($[*] ? (@.severity.type() != "number" || !(@.severity == 0 || @.severity == 1 || @.severity == 2 || @.severity == 3))))') IS TRUE)`,
  `
  CREATE DOMAIN release_data AS jsonb
    CONSTRAINT release_data_keys CHECK (VALUE IS NULL OR (jsonb_typeof(VALUE) = 'object' AND VALUE <> '{}' AND VALUE - '{speedCmS,angleTenths,heightCm,attitudeTenths}'::text[] = '{}') IS TRUE)
    CONSTRAINT release_data_numbers CHECK (VALUE IS NULL OR (VALUE @@ '!(exists($.* ? (@.type() != "number" || @ < -900 || @ > 9999 || @.floor() != @)))') IS TRUE)`,
  `
  CREATE DOMAIN notebook_body AS jsonb
    CONSTRAINT notebook_body_kind_known CHECK ((jsonb_typeof(VALUE) = 'object' AND VALUE ->> 'kind' IN ('checklist', 'stage', 'focus', 'video', 'release', 'consent')) IS TRUE)
    CONSTRAINT notebook_body_checklist_listed CHECK (VALUE ->> 'kind' <> 'checklist' OR (jsonb_typeof(VALUE -> 'codes') = 'array' AND btrim(VALUE ->> 'name') <> '' AND VALUE ? 'event') IS TRUE)
    CONSTRAINT notebook_body_stage_known CHECK (VALUE ->> 'kind' <> 'stage' OR (VALUE ->> 'stage' IN ('first-weeks', 'basics', 'developing', 'advanced') AND VALUE ? 'event') IS TRUE)
    CONSTRAINT notebook_body_focus_dated CHECK (VALUE ->> 'kind' <> 'focus' OR (VALUE ->> 'how' IN ('task', 'drill', 'full-throw') AND VALUE ->> 'code' ~ '${CODE}' AND VALUE ->> 'from' ~ '^[0-9]{4}-[0-9]{2}-[0-9]{2}$' AND (VALUE ->> 'to' IS NULL OR VALUE ->> 'to' >= VALUE ->> 'from')) IS TRUE)
    CONSTRAINT notebook_body_video_addressed CHECK (VALUE ->> 'kind' <> 'video' OR (btrim(VALUE ->> 'address') <> '' AND jsonb_typeof(VALUE -> 'instants') = 'array') IS TRUE)
    CONSTRAINT notebook_body_release_known CHECK (VALUE ->> 'kind' <> 'release' OR (VALUE ->> 'what' IN ('summary', 'focus', 'notes', 'analysis') AND jsonb_typeof(VALUE -> 'isOpen') = 'boolean') IS TRUE)
    CONSTRAINT notebook_body_consent_known CHECK (VALUE ->> 'kind' <> 'consent' OR (VALUE ->> 'purpose' IN ('notes', 'video', 'analysis') AND VALUE ->> 'by' IN ('athlete', 'guardian') AND jsonb_typeof(VALUE -> 'isGiven') = 'boolean') IS TRUE)`,
  `
  CREATE DOMAIN fault_change_body AS jsonb
    CONSTRAINT fault_change_body_kind_known CHECK ((jsonb_typeof(VALUE) = 'object' AND VALUE ->> 'kind' IN ('define', 'rename', 'retire', 'merge', 'split', 'hide', 'show')) IS TRUE)
    CONSTRAINT fault_change_body_code_named CHECK (VALUE ->> 'kind' = 'define' OR (VALUE ->> 'code' ~ '${CODE}') IS TRUE)
    CONSTRAINT fault_change_body_drafted CHECK (VALUE ->> 'kind' NOT IN ('define', 'split') OR (VALUE @@ '$.drafts.type() == "array" && $.drafts.size() >= 1') IS TRUE)`,
];

const PRACTICE_SESSION = `
  CREATE TABLE practice_session (
    organisation_id uuid NOT NULL,
    id uuid NOT NULL,
    on_date date NOT NULL,
    place title,
    note why,
    kept_by uuid NOT NULL,
    recorded_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    CONSTRAINT practice_session_pkey PRIMARY KEY (organisation_id, id),
    CONSTRAINT practice_session_kept_by_fkey FOREIGN KEY (organisation_id, kept_by) REFERENCES person (organisation_id, id),
    CONSTRAINT practice_session_date_range CHECK (on_date BETWEEN '1900-01-01' AND '2200-01-01')
  )`;

const PRACTICE_THROW = `
  CREATE TABLE practice_throw (
    organisation_id uuid NOT NULL,
    id uuid NOT NULL,
    throw_id uuid NOT NULL,
    session_id uuid NOT NULL,
    athlete_id uuid NOT NULL,
    event event_code NOT NULL,
    variant variant NOT NULL,
    implement_grams implement_grams,
    round integer NOT NULL,
    outcome text NOT NULL,
    mark integer,
    is_measured boolean NOT NULL,
    effort_percent integer,
    voided_on_purpose boolean NOT NULL,
    foul text,
    wind integer,
    styles code_list NOT NULL,
    release release_data,
    is_annulled boolean NOT NULL,
    replaces_id uuid,
    reason why,
    logged_by uuid NOT NULL,
    device signature,
    device_at timestamptz,
    recorded_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    fingerprint fingerprint NOT NULL,
    CONSTRAINT practice_throw_pkey PRIMARY KEY (organisation_id, id),
    CONSTRAINT practice_throw_replaced_once UNIQUE (organisation_id, replaces_id),
    CONSTRAINT practice_throw_session_fkey FOREIGN KEY (organisation_id, session_id)
      REFERENCES practice_session (organisation_id, id),
    CONSTRAINT practice_throw_athlete_fkey FOREIGN KEY (organisation_id, athlete_id) REFERENCES athlete (organisation_id, id),
    CONSTRAINT practice_throw_first_fkey FOREIGN KEY (organisation_id, throw_id) REFERENCES practice_throw (organisation_id, id),
    CONSTRAINT practice_throw_replaces_fkey FOREIGN KEY (organisation_id, replaces_id)
      REFERENCES practice_throw (organisation_id, id),
    CONSTRAINT practice_throw_logged_by_fkey FOREIGN KEY (organisation_id, logged_by) REFERENCES person (organisation_id, id),
    CONSTRAINT practice_throw_first_is_itself CHECK ((replaces_id IS NULL) = (throw_id = id)),
    CONSTRAINT practice_throw_reason_iff_replaces CHECK ((replaces_id IS NULL) = (reason IS NULL)),
    CONSTRAINT practice_throw_taken_back CHECK (replaces_id IS NOT NULL OR NOT is_annulled),
    CONSTRAINT practice_throw_round_range CHECK (round BETWEEN 1 AND 999),
    CONSTRAINT practice_throw_outcome_known CHECK (outcome IN ('valid', 'foul')),
    CONSTRAINT practice_throw_mark_of_valid CHECK (mark IS NULL OR outcome = 'valid'),
    CONSTRAINT practice_throw_mark_range CHECK (mark BETWEEN 1 AND 99999),
    CONSTRAINT practice_throw_measured_mark CHECK (mark IS NOT NULL OR NOT is_measured),
    CONSTRAINT practice_throw_effort_range CHECK (effort_percent BETWEEN 1 AND 100),
    CONSTRAINT practice_throw_voided_is_foul CHECK (NOT voided_on_purpose OR outcome = 'foul'),
    CONSTRAINT practice_throw_foul_form CHECK (foul IS NULL OR (foul ~ '^[A-Z]{2,16}$' AND outcome = 'foul')),
    CONSTRAINT practice_throw_wind_range CHECK (wind BETWEEN -999 AND 999)
  )`;

const OBSERVATION = `
  CREATE TABLE observation (
    organisation_id uuid NOT NULL,
    id uuid NOT NULL,
    athlete_id uuid NOT NULL,
    event event_code NOT NULL,
    practice_throw_id uuid,
    competition_id uuid,
    competitor_id uuid,
    round integer,
    observer_id uuid NOT NULL,
    observed_at timestamptz NOT NULL,
    method text NOT NULL,
    mark_known boolean NOT NULL,
    view text,
    checklist label,
    checklist_version integer,
    scope code_list,
    marks fault_marks NOT NULL,
    edition label NOT NULL,
    note why,
    is_withdrawn boolean NOT NULL,
    replaces_id uuid,
    reason why,
    device signature,
    device_at timestamptz,
    recorded_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    fingerprint fingerprint NOT NULL,
    CONSTRAINT observation_pkey PRIMARY KEY (organisation_id, id),
    CONSTRAINT observation_replaced_once UNIQUE (organisation_id, replaces_id),
    CONSTRAINT observation_athlete_fkey FOREIGN KEY (organisation_id, athlete_id) REFERENCES athlete (organisation_id, id),
    CONSTRAINT observation_practice_throw_fkey FOREIGN KEY (organisation_id, practice_throw_id)
      REFERENCES practice_throw (organisation_id, id),
    CONSTRAINT observation_competition_fkey FOREIGN KEY (organisation_id, competition_id)
      REFERENCES competition (organisation_id, id),
    CONSTRAINT observation_observer_fkey FOREIGN KEY (organisation_id, observer_id) REFERENCES person (organisation_id, id),
    CONSTRAINT observation_replaces_fkey FOREIGN KEY (organisation_id, replaces_id) REFERENCES observation (organisation_id, id),
    CONSTRAINT observation_of_one_throw CHECK (num_nonnulls(competition_id, competitor_id, round) = CASE WHEN practice_throw_id IS NULL THEN 3 ELSE 0 END),
    CONSTRAINT observation_round_range CHECK (round BETWEEN 1 AND 12),
    CONSTRAINT observation_method_known CHECK (method IN ('live', 'video')),
    CONSTRAINT observation_view_known CHECK (view IN ('side', 'rear', 'front', 'above')),
    CONSTRAINT observation_checklist_scoped CHECK ((checklist IS NULL) = (checklist_version IS NULL) AND (checklist IS NULL OR scope IS NOT NULL)),
    CONSTRAINT observation_checklist_version_range CHECK (checklist_version >= 1),
    CONSTRAINT observation_reason_iff_replaces CHECK ((replaces_id IS NULL) = (reason IS NULL)),
    CONSTRAINT observation_taken_back CHECK (replaces_id IS NOT NULL OR NOT is_withdrawn)
  )`;

const NOTEBOOK_ENTRY = `
  CREATE TABLE notebook_entry (
    organisation_id uuid NOT NULL,
    id uuid NOT NULL,
    athlete_id uuid NOT NULL,
    kind text NOT NULL,
    body notebook_body NOT NULL,
    replaces_id uuid,
    made_by uuid NOT NULL,
    recorded_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    fingerprint fingerprint NOT NULL,
    CONSTRAINT notebook_entry_pkey PRIMARY KEY (organisation_id, id),
    CONSTRAINT notebook_entry_replaced_once UNIQUE (organisation_id, replaces_id),
    CONSTRAINT notebook_entry_athlete_fkey FOREIGN KEY (organisation_id, athlete_id) REFERENCES athlete (organisation_id, id),
    CONSTRAINT notebook_entry_replaces_fkey FOREIGN KEY (organisation_id, replaces_id)
      REFERENCES notebook_entry (organisation_id, id),
    CONSTRAINT notebook_entry_made_by_fkey FOREIGN KEY (organisation_id, made_by) REFERENCES person (organisation_id, id),
    CONSTRAINT notebook_entry_not_itself CHECK (replaces_id <> id),
    CONSTRAINT notebook_entry_body_of_kind CHECK (body ->> 'kind' = kind)
  )`;

const FAULT_CHANGE = `
  CREATE TABLE fault_change (
    organisation_id uuid NOT NULL,
    sequence integer NOT NULL,
    id uuid NOT NULL,
    body fault_change_body NOT NULL,
    made_by uuid NOT NULL,
    recorded_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    fingerprint fingerprint NOT NULL,
    CONSTRAINT fault_change_pkey PRIMARY KEY (organisation_id, sequence),
    CONSTRAINT fault_change_id_unique UNIQUE (id, organisation_id),
    CONSTRAINT fault_change_made_by_fkey FOREIGN KEY (organisation_id, made_by) REFERENCES person (organisation_id, id),
    CONSTRAINT fault_change_sequence_range CHECK (sequence >= 1)
  )`;

const INDEXES = [
  `CREATE INDEX practice_throw_by_athlete ON practice_throw (athlete_id, organisation_id)`,
  `CREATE INDEX practice_throw_by_session ON practice_throw (session_id, organisation_id)`,
  `CREATE INDEX observation_by_athlete ON observation (athlete_id, organisation_id)`,
  `CREATE INDEX observation_by_competition ON observation (competition_id, organisation_id)`,
  `CREATE INDEX notebook_entry_by_athlete ON notebook_entry (athlete_id, organisation_id)`,
];
