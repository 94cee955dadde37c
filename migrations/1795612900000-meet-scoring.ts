import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * How a meet is scored for its clubs. A change is a new revision, so that it stays known by which points a table was
 * made. Points are decimal texts: numbers would lose what was written.
 */
export class MeetScoring1795612900000 implements MigrationInterface {
  name = 'MeetScoring1795612900000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(MEET_SCORING);
    await runner.query(`
      CREATE TRIGGER meet_scoring_insert_only BEFORE UPDATE OR DELETE OR TRUNCATE ON meet_scoring
      FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()`);
    await runner.query(`
      DO $block$
      BEGIN
        IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'sectorline_app') THEN
          GRANT SELECT, INSERT ON meet_scoring TO sectorline_app;
        END IF;
      END
      $block$`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`DROP TABLE meet_scoring`);
  }
}

const MEET_SCORING = `
  CREATE TABLE meet_scoring (
    organisation_id uuid NOT NULL,
    meet_id uuid NOT NULL,
    revision integer NOT NULL,
    preset text,
    places jsonb,
    teams integer,
    scorers_per_club integer,
    relays_per_club integer,
    non_scorers text NOT NULL,
    divisions jsonb NOT NULL,
    set_by signature NOT NULL,
    set_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    CONSTRAINT meet_scoring_pkey PRIMARY KEY (organisation_id, meet_id, revision),
    CONSTRAINT meet_scoring_meet_fkey FOREIGN KEY (organisation_id, meet_id) REFERENCES meet (organisation_id, id),
    CONSTRAINT meet_scoring_revision_range CHECK (revision >= 1),
    CONSTRAINT meet_scoring_preset_known CHECK (preset IN ('dual', 'triangular', 'quadrangular', 'six-places', 'eight-places', 'by-teams')),
    CONSTRAINT meet_scoring_preset_or_places CHECK ((preset IS NULL) <> (places IS NULL)),
    CONSTRAINT meet_scoring_places_shape CHECK (places IS NULL OR (jsonb_typeof(places -> 'individual') = 'array' AND jsonb_typeof(places -> 'relay') = 'array') IS TRUE),
    CONSTRAINT meet_scoring_teams_range CHECK (teams >= 1 AND teams <= 100),
    CONSTRAINT meet_scoring_scorers_range CHECK (scorers_per_club >= 1),
    CONSTRAINT meet_scoring_relays_range CHECK (relays_per_club >= 1),
    CONSTRAINT meet_scoring_non_scorers_known CHECK (non_scorers IN ('out', 'hold')),
    CONSTRAINT meet_scoring_divisions_shape CHECK (jsonb_typeof(divisions) = 'array')
  )`;
