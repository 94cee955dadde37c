import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * What athletes and meets may keep back. An athlete who was erased has no name any more, but a pseudonym under which
 * the results stay; results of a competition can be withheld from the public until a moment, or until they are let go.
 */
export class Privacy1795613001500 implements MigrationInterface {
  name = 'Privacy1795613001500';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      ALTER TABLE athlete
        ADD COLUMN erased_at timestamptz,
        ADD CONSTRAINT athlete_erased_is_nobody
          CHECK (erased_at IS NULL OR (birth_date IS NULL AND handedness IS NULL AND display = 'bib') IS TRUE)`);
    await runner.query(`
      ALTER TABLE competition
        ADD COLUMN is_withheld boolean NOT NULL DEFAULT false,
        ADD COLUMN withheld_until timestamptz,
        ADD CONSTRAINT competition_withheld_until_something CHECK (withheld_until IS NULL OR is_withheld)`);
    // A name that was written on a list is taken off it; nothing else of an entrant changes.
    await runner.query(`
      DO $block$
      BEGIN
        IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'sectorline_app') THEN
          GRANT UPDATE (listed_name) ON combined_entrant TO sectorline_app;
        END IF;
      END
      $block$`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      DO $block$
      BEGIN
        IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'sectorline_app') THEN
          REVOKE UPDATE (listed_name) ON combined_entrant FROM sectorline_app;
        END IF;
      END
      $block$`);
    await runner.query(`ALTER TABLE competition DROP COLUMN withheld_until, DROP COLUMN is_withheld`);
    await runner.query(`ALTER TABLE athlete DROP COLUMN erased_at`);
  }
}
