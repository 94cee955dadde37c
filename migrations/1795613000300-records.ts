import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * What records begin with, and what the referee decided about them. Both are only added to. A mark that was known
 * before names its holder as an athlete on record or not at all: a name in a row that stays for ever could never be
 * taken back. A decision keeps what was decided on: when the attempt is corrected afterwards, it no longer fits.
 */
export class Records1795613000300 implements MigrationInterface {
  name = 'Records1795613000300';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(STARTING_MARK);
    await runner.query(`CREATE INDEX starting_mark_by_club ON starting_mark (club_id, organisation_id)`);
    await runner.query(`CREATE INDEX starting_mark_by_meet ON starting_mark (meet_id, organisation_id)`);
    await runner.query(
      `CREATE INDEX starting_mark_by_athlete ON starting_mark (athlete_id, organisation_id)`,
    );
    await runner.query(RECORD_DECISION);
    await runner.query(
      `CREATE INDEX record_decision_by_competition ON record_decision (competition_id, organisation_id)`,
    );
    for (const table of ['starting_mark', 'record_decision']) {
      await runner.query(`
        CREATE TRIGGER ${table}_insert_only BEFORE UPDATE OR DELETE OR TRUNCATE ON ${table}
        FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()`);
    }
    await runner.query(`
      DO $block$
      BEGIN
        IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'sectorline_app') THEN
          GRANT SELECT, INSERT ON starting_mark, record_decision TO sectorline_app;
        END IF;
      END
      $block$`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`DROP TABLE record_decision`);
    await runner.query(`DROP TABLE starting_mark`);
  }
}

const STARTING_MARK = `
  CREATE TABLE starting_mark (
    organisation_id uuid NOT NULL,
    id uuid NOT NULL,
    club_id uuid,
    meet_id uuid,
    athlete_id uuid,
    event event_code NOT NULL,
    unit mark_unit NOT NULL,
    mark integer NOT NULL,
    wind text,
    indoor boolean NOT NULL,
    implement_grams implement_grams,
    sex sex NOT NULL,
    age label NOT NULL,
    on_date date NOT NULL,
    place title,
    counts boolean NOT NULL,
    replaces_id uuid,
    reason text,
    import_id uuid,
    import_line integer,
    entered_by signature NOT NULL,
    entered_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    CONSTRAINT starting_mark_pkey PRIMARY KEY (organisation_id, id),
    CONSTRAINT starting_mark_replaced_once UNIQUE (organisation_id, replaces_id),
    CONSTRAINT starting_mark_imported_once UNIQUE (import_id, import_line, organisation_id),
    CONSTRAINT starting_mark_club_fkey FOREIGN KEY (organisation_id, club_id) REFERENCES club (organisation_id, id),
    CONSTRAINT starting_mark_meet_fkey FOREIGN KEY (organisation_id, meet_id) REFERENCES meet (organisation_id, id),
    CONSTRAINT starting_mark_athlete_fkey FOREIGN KEY (organisation_id, athlete_id)
      REFERENCES athlete (organisation_id, id),
    CONSTRAINT starting_mark_replaces_fkey FOREIGN KEY (organisation_id, replaces_id)
      REFERENCES starting_mark (organisation_id, id),
    CONSTRAINT starting_mark_in_a_list CHECK (num_nonnulls(club_id, meet_id, athlete_id) >= 1),
    CONSTRAINT starting_mark_mark_range CHECK (mark BETWEEN 1 AND 99999),
    CONSTRAINT starting_mark_wind_form CHECK (wind ~ '^([+-][0-9]{1,2}[.][0-9]|NWI)$'),
    CONSTRAINT starting_mark_wind_of_event CHECK (wind IS NULL OR (event IN ('long-jump', 'triple-jump') AND NOT indoor)),
    CONSTRAINT starting_mark_implement_iff_thrown CHECK ((event IN ('discus', 'shot', 'hammer', 'javelin', 'weight')) = (implement_grams IS NOT NULL)),
    CONSTRAINT starting_mark_date_range CHECK (on_date BETWEEN '1900-01-01' AND '2200-01-01'),
    CONSTRAINT starting_mark_not_itself CHECK (replaces_id <> id),
    CONSTRAINT starting_mark_taken_back CHECK (counts OR replaces_id IS NOT NULL),
    CONSTRAINT starting_mark_reason_iff_replaces CHECK ((replaces_id IS NULL) = (reason IS NULL)),
    CONSTRAINT starting_mark_reason_given CHECK (btrim(reason) <> '' AND length(reason) <= 1000),
    CONSTRAINT starting_mark_line_iff_imported CHECK ((import_id IS NULL) = (import_line IS NULL)),
    CONSTRAINT starting_mark_line_range CHECK (import_line >= 1)
  )`;

const RECORD_DECISION = `
  CREATE TABLE record_decision (
    organisation_id uuid NOT NULL,
    id uuid NOT NULL,
    competition_id uuid NOT NULL,
    attempt_id uuid NOT NULL,
    competitor_id uuid NOT NULL,
    kind text NOT NULL,
    revision integer NOT NULL,
    decision text NOT NULL,
    mark integer NOT NULL,
    wind text,
    implement_grams implement_grams,
    recheck text,
    measuring text,
    despite jsonb NOT NULL,
    reason text NOT NULL,
    authority authority NOT NULL,
    decided_by signature NOT NULL,
    decided_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    CONSTRAINT record_decision_pkey PRIMARY KEY (organisation_id, id),
    CONSTRAINT record_decision_in_order UNIQUE (attempt_id, kind, revision, organisation_id),
    CONSTRAINT record_decision_competition_fkey FOREIGN KEY (organisation_id, competition_id)
      REFERENCES competition (organisation_id, id),
    CONSTRAINT record_decision_competitor_fkey FOREIGN KEY (organisation_id, competitor_id)
      REFERENCES competitor (organisation_id, id),
    CONSTRAINT record_decision_attempt_fkey FOREIGN KEY (organisation_id, attempt_id)
      REFERENCES journal_entry (organisation_id, entry_id),
    CONSTRAINT record_decision_kind_known CHECK (kind IN ('club record', 'meet record')),
    CONSTRAINT record_decision_revision_range CHECK (revision >= 1),
    CONSTRAINT record_decision_decision_known CHECK (decision IN ('ratified', 'refused', 'withdrawn')),
    CONSTRAINT record_decision_mark_range CHECK (mark BETWEEN 1 AND 99999),
    CONSTRAINT record_decision_wind_form CHECK (wind ~ '^([+-][0-9]{1,2}[.][0-9]|NWI|pending)$'),
    CONSTRAINT record_decision_recheck_known CHECK (recheck IN ('passed', 'failed', 'incomplete', 'missing', 'other implement')),
    CONSTRAINT record_decision_measuring_known CHECK (measuring IN ('steel-tape', 'electronic', 'bar')),
    CONSTRAINT record_decision_despite_shape CHECK (jsonb_typeof(despite) = 'array'),
    CONSTRAINT record_decision_reason_given CHECK (btrim(reason) <> '' AND length(reason) <= 1000),
    CONSTRAINT record_decision_not_by_officials CHECK (authority IN ('referee', 'director'))
  )`;
