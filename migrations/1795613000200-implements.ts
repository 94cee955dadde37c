import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * The register of implements and what was found of them. An implement belongs to the organisation, for it comes back
 * from meet to meet; it is inspected anew at each. What was found is only ever added to: a correction is another
 * look at the same implement at the same meet, which names the one it replaces, and each is replaced once.
 *
 * Of an implement nothing changes but the label: people write names on what they own, and a name must be able to go.
 */
export class Implements1795613000200 implements MigrationInterface {
  name = 'Implements1795613000200';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(IMPLEMENT);
    await runner.query(`CREATE INDEX implement_by_label ON implement (organisation_id, event, label, id)`);
    await runner.query(`CREATE INDEX implement_by_meet ON implement (meet_id, organisation_id)`);
    await runner.query(`CREATE INDEX implement_by_club ON implement (club_id, organisation_id)`);
    await runner.query(`CREATE INDEX implement_by_athlete ON implement (athlete_id, organisation_id)`);
    await runner.query(INSPECTION);
    await runner.query(`CREATE INDEX inspection_by_meet ON inspection (meet_id, organisation_id)`);
    await runner.query(`
      CREATE TRIGGER inspection_insert_only BEFORE UPDATE OR DELETE OR TRUNCATE ON inspection
      FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()`);
    await runner.query(`
      DO $block$
      BEGIN
        IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'sectorline_app') THEN
          GRANT SELECT, INSERT, UPDATE (label) ON implement TO sectorline_app;
          GRANT SELECT, INSERT ON inspection TO sectorline_app;
        END IF;
      END
      $block$`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`DROP TABLE inspection`);
    await runner.query(`DROP TABLE implement`);
  }
}

/** Of a club, of an athlete, or else of the pool of the meet at which it was registered. */
const IMPLEMENT = `
  CREATE TABLE implement (
    organisation_id uuid NOT NULL,
    id uuid NOT NULL,
    meet_id uuid NOT NULL,
    event event_code NOT NULL,
    grams implement_grams NOT NULL,
    label label NOT NULL,
    club_id uuid,
    athlete_id uuid,
    authority authority NOT NULL,
    registered_by signature NOT NULL,
    registered_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    CONSTRAINT implement_pkey PRIMARY KEY (organisation_id, id),
    CONSTRAINT implement_meet_fkey FOREIGN KEY (organisation_id, meet_id) REFERENCES meet (organisation_id, id),
    CONSTRAINT implement_club_fkey FOREIGN KEY (organisation_id, club_id) REFERENCES club (organisation_id, id),
    CONSTRAINT implement_athlete_fkey FOREIGN KEY (organisation_id, athlete_id)
      REFERENCES athlete (organisation_id, id),
    CONSTRAINT implement_thrown CHECK (event IN ('discus', 'shot', 'hammer', 'javelin', 'weight')),
    CONSTRAINT implement_one_owner CHECK (club_id IS NULL OR athlete_id IS NULL)
  )`;

const INSPECTION = `
  CREATE TABLE inspection (
    organisation_id uuid NOT NULL,
    id uuid NOT NULL,
    meet_id uuid NOT NULL,
    implement_id uuid NOT NULL,
    sequence integer NOT NULL,
    kind text NOT NULL,
    cause text,
    competition_id uuid,
    attempt_id uuid,
    grams integer,
    mm jsonb NOT NULL,
    outcome text NOT NULL,
    findings jsonb NOT NULL,
    kept_back boolean NOT NULL,
    note text,
    replaces_id uuid,
    reason text,
    authority authority NOT NULL,
    inspected_by signature NOT NULL,
    device signature,
    device_at timestamptz,
    inspected_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    CONSTRAINT inspection_pkey PRIMARY KEY (organisation_id, id),
    CONSTRAINT inspection_in_sequence UNIQUE (implement_id, meet_id, sequence, organisation_id),
    CONSTRAINT inspection_replaced_once UNIQUE (organisation_id, replaces_id),
    CONSTRAINT inspection_of_one UNIQUE (organisation_id, id, implement_id, meet_id, kind),
    CONSTRAINT inspection_meet_fkey FOREIGN KEY (organisation_id, meet_id) REFERENCES meet (organisation_id, id),
    CONSTRAINT inspection_implement_fkey FOREIGN KEY (organisation_id, implement_id)
      REFERENCES implement (organisation_id, id),
    CONSTRAINT inspection_competition_fkey FOREIGN KEY (organisation_id, competition_id)
      REFERENCES competition (organisation_id, id),
    CONSTRAINT inspection_attempt_fkey FOREIGN KEY (attempt_id, organisation_id)
      REFERENCES journal_entry (entry_id, organisation_id),
    CONSTRAINT inspection_replaces_fkey FOREIGN KEY (organisation_id, replaces_id, implement_id, meet_id, kind)
      REFERENCES inspection (organisation_id, id, implement_id, meet_id, kind),
    CONSTRAINT inspection_sequence_range CHECK (sequence >= 1),
    CONSTRAINT inspection_kind_known CHECK (kind IN ('inspection', 'recheck')),
    CONSTRAINT inspection_cause_of_recheck CHECK ((kind = 'recheck') = (cause IS NOT NULL)),
    CONSTRAINT inspection_cause_known CHECK (cause IN ('record', 'referee')),
    CONSTRAINT inspection_attempt_of_recheck CHECK (attempt_id IS NULL OR kind = 'recheck'),
    CONSTRAINT inspection_record_names_attempt CHECK (cause <> 'record' OR attempt_id IS NOT NULL),
    CONSTRAINT inspection_grams_range CHECK (grams >= 1 AND grams <= 99999),
    CONSTRAINT inspection_mm_shape CHECK
      (jsonb_typeof(mm) = 'object' AND mm - 'diameter' - 'centre plate' - 'head' - 'shaft' - 'length' = '{}'),
    CONSTRAINT inspection_mm_range CHECK
      (NOT jsonb_path_exists(mm, '$.* ? (@.type() != "number" || @ < 1 || @ > 99999 || @.floor() != @)')),
    CONSTRAINT inspection_outcome_known CHECK (outcome IN ('passed', 'failed', 'incomplete')),
    CONSTRAINT inspection_passed_weighed CHECK (outcome <> 'passed' OR grams IS NOT NULL),
    CONSTRAINT inspection_findings_shape CHECK (jsonb_typeof(findings) = 'array'),
    CONSTRAINT inspection_note_given CHECK (btrim(note) <> '' AND length(note) <= 1000),
    CONSTRAINT inspection_not_itself CHECK (replaces_id <> id),
    CONSTRAINT inspection_reason_iff_replaces CHECK ((replaces_id IS NULL) = (reason IS NULL)),
    CONSTRAINT inspection_reason_given CHECK (btrim(reason) <> '' AND length(reason) <= 1000)
  )`;
