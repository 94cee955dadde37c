import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Who may be entered until when, what became of entries, and what came in as a table. All of it is only added to: the
 * newest terms count, and a start list says who is on it while the changes say who came, who went and why. A past
 * result names an athlete on record, so that no name stays that could never be taken back.
 */
export class EntriesAndTables1795613001300 implements MigrationInterface {
  name = 'EntriesAndTables1795613001300';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(ENTRY_TERMS);
    await runner.query(ENTRY_CHANGE);
    await runner.query(
      `CREATE INDEX entry_change_by_competition ON entry_change (competition_id, organisation_id)`,
    );
    await runner.query(TABLE_IMPORT);
    await runner.query(PAST_RESULT);
    await runner.query(`CREATE INDEX past_result_by_athlete ON past_result (athlete_id, organisation_id)`);
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
    for (const table of TABLES.toReversed()) await runner.query(`DROP TABLE ${table}`);
  }
}

const TABLES = ['entry_terms', 'entry_change', 'table_import', 'past_result'] as const;

const ENTRY_TERMS = `
  CREATE TABLE entry_terms (
    organisation_id uuid NOT NULL,
    meet_id uuid NOT NULL,
    revision integer NOT NULL,
    closes_at timestamptz,
    most_per_club integer,
    most_per_athlete integer,
    competition_limits jsonb NOT NULL,
    set_by signature NOT NULL,
    set_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    CONSTRAINT entry_terms_pkey PRIMARY KEY (organisation_id, meet_id, revision),
    CONSTRAINT entry_terms_meet_fkey FOREIGN KEY (organisation_id, meet_id) REFERENCES meet (organisation_id, id),
    CONSTRAINT entry_terms_revision_range CHECK (revision >= 1),
    CONSTRAINT entry_terms_per_club_range CHECK (most_per_club BETWEEN 1 AND 2000),
    CONSTRAINT entry_terms_per_athlete_range CHECK (most_per_athlete BETWEEN 1 AND 100),
    CONSTRAINT entry_terms_limits_shape CHECK (jsonb_typeof(competition_limits) = 'array')
  )`;

/* The competitor of an entry may be gone, so nothing refers to the line of the start list. */
const ENTRY_CHANGE = `
  CREATE TABLE entry_change (
    organisation_id uuid NOT NULL,
    id uuid NOT NULL,
    competition_id uuid NOT NULL,
    competitor_id uuid NOT NULL,
    kind text NOT NULL,
    bib label NOT NULL,
    athlete_id uuid,
    club_id uuid,
    is_late boolean NOT NULL,
    reason text,
    made_by signature NOT NULL,
    made_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    CONSTRAINT entry_change_pkey PRIMARY KEY (organisation_id, id),
    CONSTRAINT entry_change_competition_fkey FOREIGN KEY (organisation_id, competition_id)
      REFERENCES competition (organisation_id, id),
    CONSTRAINT entry_change_athlete_fkey FOREIGN KEY (organisation_id, athlete_id)
      REFERENCES athlete (organisation_id, id),
    CONSTRAINT entry_change_club_fkey FOREIGN KEY (organisation_id, club_id) REFERENCES club (organisation_id, id),
    CONSTRAINT entry_change_kind_known CHECK (kind IN ('entered', 'withdrawn')),
    CONSTRAINT entry_change_late_has_reason CHECK (NOT is_late OR reason IS NOT NULL),
    CONSTRAINT entry_change_reason_given CHECK (btrim(reason) <> '' AND length(reason) <= 1000)
  )`;

const TABLE_IMPORT = `
  CREATE TABLE table_import (
    organisation_id uuid NOT NULL,
    id uuid NOT NULL,
    holds text NOT NULL,
    meet_id uuid,
    fingerprint fingerprint NOT NULL,
    counts jsonb NOT NULL,
    made_by signature NOT NULL,
    made_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    CONSTRAINT table_import_pkey PRIMARY KEY (organisation_id, id),
    CONSTRAINT table_import_meet_fkey FOREIGN KEY (organisation_id, meet_id) REFERENCES meet (organisation_id, id),
    CONSTRAINT table_import_holds_known CHECK (holds IN ('entries', 'past results')),
    CONSTRAINT table_import_meet_iff_entries CHECK ((holds = 'entries') = (meet_id IS NOT NULL)),
    CONSTRAINT table_import_counts_shape CHECK (jsonb_typeof(counts) = 'object')
  )`;

const PAST_RESULT = `
  CREATE TABLE past_result (
    organisation_id uuid NOT NULL,
    id uuid NOT NULL,
    athlete_id uuid NOT NULL,
    event event_code NOT NULL,
    unit mark_unit NOT NULL,
    mark integer NOT NULL,
    wind text,
    indoor boolean NOT NULL,
    implement_grams implement_grams,
    on_date date NOT NULL,
    meet_name title NOT NULL,
    place integer,
    source title NOT NULL,
    counts boolean NOT NULL,
    replaces_id uuid,
    reason text,
    import_id uuid,
    import_line integer,
    entered_by signature NOT NULL,
    entered_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    CONSTRAINT past_result_pkey PRIMARY KEY (organisation_id, id),
    CONSTRAINT past_result_replaced_once UNIQUE (organisation_id, replaces_id),
    CONSTRAINT past_result_imported_once UNIQUE (import_id, import_line, organisation_id),
    CONSTRAINT past_result_athlete_fkey FOREIGN KEY (organisation_id, athlete_id)
      REFERENCES athlete (organisation_id, id),
    CONSTRAINT past_result_import_fkey FOREIGN KEY (organisation_id, import_id)
      REFERENCES table_import (organisation_id, id),
    CONSTRAINT past_result_replaces_fkey FOREIGN KEY (organisation_id, replaces_id)
      REFERENCES past_result (organisation_id, id),
    CONSTRAINT past_result_mark_range CHECK (mark BETWEEN 1 AND 99999),
    CONSTRAINT past_result_wind_form CHECK (wind ~ '^([+-][0-9]{1,2}[.][0-9]|NWI)$'),
    CONSTRAINT past_result_wind_of_event CHECK (wind IS NULL OR (event IN ('long-jump', 'triple-jump') AND NOT indoor)),
    CONSTRAINT past_result_implement_iff_thrown CHECK ((event IN ('discus', 'shot', 'hammer', 'javelin', 'weight')) = (implement_grams IS NOT NULL)),
    CONSTRAINT past_result_date_range CHECK (on_date BETWEEN '1900-01-01' AND '2200-01-01'),
    CONSTRAINT past_result_place_range CHECK (place BETWEEN 1 AND 2000),
    CONSTRAINT past_result_not_itself CHECK (replaces_id <> id),
    CONSTRAINT past_result_taken_back CHECK (counts = (replaces_id IS NULL)),
    CONSTRAINT past_result_reason_iff_replaces CHECK ((replaces_id IS NULL) = (reason IS NULL)),
    CONSTRAINT past_result_reason_given CHECK (btrim(reason) <> '' AND length(reason) <= 1000),
    CONSTRAINT past_result_line_iff_imported CHECK ((import_id IS NULL) = (import_line IS NULL)),
    CONSTRAINT past_result_line_range CHECK (import_line >= 1)
  )`;
