import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * The role that the application takes on: it may add to the journal and to the archive, and change neither. A role
 * belongs to the whole server, so it is made only if this login may make one, and stays when the migration goes
 * down: another database may use it.
 */
export class ApplicationRole1795612800004 implements MigrationInterface {
  name = 'ApplicationRole1795612800004';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(MAKE_ROLE);
    await runner.query(GRANT_RIGHTS);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      DO $block$
      BEGIN
        IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'sectorline_app') THEN
          REVOKE ALL ON organisation, club, athlete, meet, competition, competitor, journal_entry, official_result,
            schema_migration FROM sectorline_app;
        END IF;
      END
      $block$`);
  }
}

const MAKE_ROLE = `
  DO $block$
  BEGIN
    IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = 'sectorline_app')
       AND (SELECT rolsuper OR rolcreaterole FROM pg_roles WHERE rolname = current_user) THEN
      CREATE ROLE sectorline_app NOLOGIN;
    END IF;
  EXCEPTION WHEN duplicate_object OR unique_violation THEN
    NULL; -- Another database of this server was migrated at the same moment.
  END
  $block$`;

const GRANT_RIGHTS = `
  DO $block$
  BEGIN
    IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = 'sectorline_app') THEN
      RETURN;
    END IF;
    IF NOT has_schema_privilege('sectorline_app', current_schema(), 'USAGE') THEN
      EXECUTE format('GRANT USAGE ON SCHEMA %I TO sectorline_app', current_schema());
    END IF;
    GRANT SELECT, INSERT, UPDATE ON organisation, club, athlete, meet, competition, competitor TO sectorline_app;
    GRANT DELETE ON competitor TO sectorline_app;
    GRANT SELECT, INSERT ON journal_entry, official_result TO sectorline_app;
    GRANT SELECT ON schema_migration TO sectorline_app;
    BEGIN
      EXECUTE format('GRANT sectorline_app TO %I', current_user);
    EXCEPTION WHEN insufficient_privilege THEN
      NULL; -- Somebody else made the role; its owner decides who may take it on.
    END;
  END
  $block$`;
