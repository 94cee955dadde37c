import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Draws of flights and of the order of competition, kept for good with everything that it takes to make them again.
 * Competitors are known by bib: names stay out, for a row can never be removed. What happens to a drawn start list
 * afterwards (somebody enters late, withdraws, is moved by hand) is added beside the draw and leaves it as it was.
 */
export class Draws1795613000101 implements MigrationInterface {
  name = 'Draws1795613000101';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      ALTER TABLE competitor ADD COLUMN seed_mark integer
      CONSTRAINT competitor_seed_mark_range CHECK (seed_mark BETWEEN 1 AND 99999)`);
    await runner.query(DRAW);
    await runner.query(DRAW_AMENDMENT);
    for (const table of ['draw', 'draw_amendment']) {
      await runner.query(`
        CREATE TRIGGER ${table}_insert_only BEFORE UPDATE OR DELETE OR TRUNCATE ON ${table}
        FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()`);
    }
    await runner.query(`
      DO $block$
      BEGIN
        IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'sectorline_app') THEN
          GRANT SELECT, INSERT ON draw, draw_amendment TO sectorline_app;
        END IF;
      END
      $block$`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`DROP TABLE draw_amendment`);
    await runner.query(`DROP TABLE draw`);
    await runner.query(`ALTER TABLE competitor DROP COLUMN seed_mark`);
  }
}

const DRAW = `
  CREATE TABLE draw (
    organisation_id uuid NOT NULL,
    id uuid NOT NULL,
    competition_id uuid NOT NULL,
    number integer NOT NULL,
    procedure label NOT NULL,
    seed text NOT NULL,
    method text NOT NULL,
    clubmates_apart boolean NOT NULL,
    entries jsonb NOT NULL,
    flights jsonb NOT NULL,
    reason text,
    drawn_by signature NOT NULL,
    drawn_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    qualification_id uuid,
    CONSTRAINT draw_pkey PRIMARY KEY (organisation_id, id),
    CONSTRAINT draw_number_unique UNIQUE (competition_id, number, organisation_id),
    CONSTRAINT draw_competition_fkey FOREIGN KEY (organisation_id, competition_id)
      REFERENCES competition (organisation_id, id),
    CONSTRAINT draw_qualification_fkey FOREIGN KEY (organisation_id, qualification_id)
      REFERENCES qualification (organisation_id, id),
    CONSTRAINT draw_number_range CHECK (number >= 1),
    CONSTRAINT draw_seed_form CHECK (length(seed) BETWEEN 1 AND 200 AND octet_length(seed) = length(seed) AND seed !~ '[[:cntrl:]]'),
    CONSTRAINT draw_method_known CHECK (method IN ('lot', 'seed marks', 'equal strength')),
    CONSTRAINT draw_entries_shape CHECK (jsonb_typeof(entries) = 'array'),
    CONSTRAINT draw_flights_shape CHECK (jsonb_typeof(flights) = 'array'),
    CONSTRAINT draw_again_with_reason CHECK (number = 1 OR reason IS NOT NULL),
    CONSTRAINT draw_reason_given CHECK (btrim(reason) <> '' AND length(reason) <= 1000),
    CONSTRAINT draw_without_names CHECK (
      NOT jsonb_path_exists(entries, '$.**.name') AND NOT jsonb_path_exists(flights, '$.**.name'))
  )`;

const DRAW_AMENDMENT = `
  CREATE TABLE draw_amendment (
    organisation_id uuid NOT NULL,
    draw_id uuid NOT NULL,
    number integer NOT NULL,
    kind text NOT NULL,
    lines jsonb NOT NULL,
    made_by signature NOT NULL,
    made_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    CONSTRAINT draw_amendment_pkey PRIMARY KEY (organisation_id, draw_id, number),
    CONSTRAINT draw_amendment_draw_fkey FOREIGN KEY (organisation_id, draw_id) REFERENCES draw (organisation_id, id),
    CONSTRAINT draw_amendment_number_range CHECK (number >= 1),
    CONSTRAINT draw_amendment_kind_known CHECK (kind IN ('entered late', 'withdrawn', 'set by hand')),
    CONSTRAINT draw_amendment_lines_shape CHECK (jsonb_typeof(lines) = 'array'),
    CONSTRAINT draw_amendment_without_names CHECK (NOT jsonb_path_exists(lines, '$.**.name'))
  )`;
