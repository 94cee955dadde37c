import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Competitions that are the groups of one qualification, and the final that comes of them. Standard and number to
 * fill up to are the groups' own. Who goes on is counted and never stored; the draw of the final is.
 */
export class Qualifications1795613000100 implements MigrationInterface {
  name = 'Qualifications1795613000100';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(QUALIFICATION);
    await runner.query(QUALIFICATION_GROUP);
    await runner.query(`CREATE INDEX qualification_by_meet ON qualification (meet_id, organisation_id)`);
    await runner.query(`
      DO $block$
      BEGIN
        IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'sectorline_app') THEN
          GRANT SELECT, INSERT, UPDATE, DELETE ON qualification TO sectorline_app;
          GRANT SELECT, INSERT, DELETE ON qualification_group TO sectorline_app;
        END IF;
      END
      $block$`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`DROP TABLE qualification_group`);
    await runner.query(`DROP TABLE qualification`);
  }
}

const QUALIFICATION = `
  CREATE TABLE qualification (
    organisation_id uuid NOT NULL,
    id uuid NOT NULL,
    meet_id uuid NOT NULL,
    title title NOT NULL,
    final_id uuid,
    CONSTRAINT qualification_pkey PRIMARY KEY (organisation_id, id),
    CONSTRAINT qualification_final_once UNIQUE (final_id, organisation_id),
    CONSTRAINT qualification_meet_fkey FOREIGN KEY (organisation_id, meet_id) REFERENCES meet (organisation_id, id),
    CONSTRAINT qualification_final_fkey FOREIGN KEY (organisation_id, final_id)
      REFERENCES competition (organisation_id, id)
  )`;

const QUALIFICATION_GROUP = `
  CREATE TABLE qualification_group (
    organisation_id uuid NOT NULL,
    qualification_id uuid NOT NULL,
    position integer NOT NULL,
    competition_id uuid NOT NULL,
    CONSTRAINT qualification_group_pkey PRIMARY KEY (organisation_id, qualification_id, position),
    CONSTRAINT qualification_group_once UNIQUE (competition_id, organisation_id),
    CONSTRAINT qualification_group_qualification_fkey FOREIGN KEY (organisation_id, qualification_id)
      REFERENCES qualification (organisation_id, id),
    CONSTRAINT qualification_group_competition_fkey FOREIGN KEY (organisation_id, competition_id)
      REFERENCES competition (organisation_id, id),
    CONSTRAINT qualification_group_position_range CHECK (position >= 1)
  )`;
