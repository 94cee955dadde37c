import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * When a result was posted, who protested, and what was decided about it. Beside the journal, since a protest may come
 * after the result was signed, when the journal takes no more; added to and never changed, as there. A competitor is
 * named without a key, so that a protest keeps nobody on a start list who is to be taken off.
 */
export class Protests1795613001310 implements MigrationInterface {
  name = 'Protests1795613001310';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of [RESULT_POSTING, PROTEST, PROTEST_STEP]) await runner.query(statement);
    await runner.query(`
      CREATE INDEX result_posting_by_competition ON result_posting (competition_id, organisation_id)`);
    await runner.query(`CREATE INDEX protest_by_competition ON protest (competition_id, organisation_id)`);
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
    await runner.query(`DROP TABLE protest_step, protest, result_posting`);
  }
}

const TABLES = ['result_posting', 'protest', 'protest_step'];

/** Who wrote it down, when, and on what. */
const WRITTEN = `
    authority authority NOT NULL,
    actor signature NOT NULL,
    device signature,
    device_at timestamptz,
    recorded_at timestamptz NOT NULL DEFAULT clock_timestamp()`;

const RESULT_POSTING = `
  CREATE TABLE result_posting (
    organisation_id uuid NOT NULL,
    id uuid NOT NULL,
    competition_id uuid NOT NULL,
    sequence integer NOT NULL,
    posted_at timestamptz NOT NULL,
    place text,
    incomplete why,${WRITTEN},
    CONSTRAINT result_posting_pkey PRIMARY KEY (organisation_id, id),
    CONSTRAINT result_posting_competition_fkey FOREIGN KEY (organisation_id, competition_id)
      REFERENCES competition (organisation_id, id),
    CONSTRAINT result_posting_sequence_range CHECK (sequence >= 0),
    CONSTRAINT result_posting_place_given CHECK (btrim(place) <> '' AND length(place) <= 200)
  )`;

const PROTEST = `
  CREATE TABLE protest (
    organisation_id uuid NOT NULL,
    id uuid NOT NULL,
    competition_id uuid NOT NULL,
    form text NOT NULL,
    ground text NOT NULL,
    lodged_by text NOT NULL,
    lodged_at timestamptz NOT NULL,
    competitor_id uuid,
    attempt_id uuid,
    reason why NOT NULL,
    deposit text,
    deposit_paid boolean NOT NULL,
    timeliness text NOT NULL,
    window_until timestamptz,${WRITTEN},
    CONSTRAINT protest_pkey PRIMARY KEY (organisation_id, id),
    CONSTRAINT protest_competition_fkey FOREIGN KEY (organisation_id, competition_id)
      REFERENCES competition (organisation_id, id),
    CONSTRAINT protest_attempt_fkey FOREIGN KEY (organisation_id, attempt_id)
      REFERENCES journal_entry (organisation_id, entry_id),
    CONSTRAINT protest_form_known CHECK (form IN ('oral', 'written')),
    CONSTRAINT protest_ground_known CHECK (ground IN ('rules', 'clerical', 'eligibility', 'judgement')),
    CONSTRAINT protest_lodged_by_given CHECK (btrim(lodged_by) <> '' AND length(lodged_by) <= 200),
    CONSTRAINT protest_deposit_given CHECK (btrim(deposit) <> '' AND length(deposit) <= 100),
    CONSTRAINT protest_deposit_paid_of_one CHECK (deposit IS NOT NULL OR NOT deposit_paid),
    CONSTRAINT protest_timeliness_known CHECK (timeliness IN ('in time', 'late', 'not taken')),
    CONSTRAINT protest_late_after_window CHECK (timeliness <> 'late' OR (window_until IS NOT NULL AND lodged_at > window_until))
  )`;

const PROTEST_STEP = `
  CREATE TABLE protest_step (
    organisation_id uuid NOT NULL,
    id uuid NOT NULL,
    protest_id uuid NOT NULL,
    number integer NOT NULL,
    kind text NOT NULL,
    outcome text,
    done_by text NOT NULL,
    done_at timestamptz NOT NULL,
    reason why NOT NULL,
    rule text,
    deposit text,
    timeliness text NOT NULL,${WRITTEN},
    CONSTRAINT protest_step_pkey PRIMARY KEY (organisation_id, id),
    CONSTRAINT protest_step_in_order UNIQUE (protest_id, number, organisation_id),
    CONSTRAINT protest_step_protest_fkey FOREIGN KEY (organisation_id, protest_id)
      REFERENCES protest (organisation_id, id),
    CONSTRAINT protest_step_number_range CHECK (number >= 1),
    CONSTRAINT protest_step_kind_known CHECK (kind IN ('decision', 'appeal', 'appeal-decision', 'withdrawal')),
    CONSTRAINT protest_step_outcome_of_decision CHECK (
      (outcome IS NOT NULL) = (kind IN ('decision', 'appeal-decision'))),
    CONSTRAINT protest_step_outcome_known CHECK (outcome IN ('upheld', 'dismissed')),
    CONSTRAINT protest_step_done_by_given CHECK (btrim(done_by) <> '' AND length(done_by) <= 200),
    CONSTRAINT protest_step_rule_given CHECK (btrim(rule) <> '' AND length(rule) <= 200),
    CONSTRAINT protest_step_deposit_known CHECK (deposit IN ('paid', 'returned', 'forfeited')),
    CONSTRAINT protest_step_timeliness_known CHECK (timeliness IN ('in time', 'late')),
    CONSTRAINT protest_step_by_right CHECK (outcome IS NULL OR authority IN ('referee', 'director'))
  )`;
