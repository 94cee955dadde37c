import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Combined events: who is in them, and from which competitions of the meet their events are counted. Links are rows
 * that are only added to; the newest of an event is in force, and one without a competition ends it.
 */
export class CombinedEvents1795613000000 implements MigrationInterface {
  name = 'CombinedEvents1795613000000';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of [...DOMAINS, COMBINED_EVENT, COMBINED_ENTRANT, COMBINED_LINK, ...INDEXES])
      await runner.query(statement);
    await runner.query(`
      CREATE TRIGGER combined_link_insert_only BEFORE UPDATE OR DELETE OR TRUNCATE ON combined_link
      FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()`);
    await runner.query(GRANTS);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`DROP TABLE combined_link, combined_entrant, combined_event`);
    await runner.query(`DROP DOMAIN combined_timing, combined_ties, combined_event_code, combined_programme`);
  }
}

const DOMAINS = [
  `
  CREATE DOMAIN combined_programme AS text
    CONSTRAINT combined_programme_known CHECK (VALUE IN ('decathlon', 'heptathlon', 'heptathlon-indoor', 'pentathlon-indoor', 'decathlon-women', 'throws-pentathlon'))`,
  `
  CREATE DOMAIN combined_event_code AS text
    CONSTRAINT combined_event_code_known CHECK (VALUE IN ('60m', '100m', '200m', '400m', '800m', '1000m', '1500m', '60mh', '100mh', '110mh', 'high-jump', 'pole-vault', 'long-jump', 'shot', 'discus', 'hammer', 'javelin', 'weight'))`,
  `
  CREATE DOMAIN combined_ties AS text
    CONSTRAINT combined_ties_known CHECK (VALUE IN ('stay', 'more events'))`,
  `
  CREATE DOMAIN combined_timing AS text
    CONSTRAINT combined_timing_known CHECK (VALUE IN ('electronic', 'hand'))`,
];

const COMBINED_EVENT = `
  CREATE TABLE combined_event (
    organisation_id uuid NOT NULL,
    id uuid NOT NULL,
    meet_id uuid NOT NULL,
    title title NOT NULL,
    programme combined_programme NOT NULL,
    scored_by sex NOT NULL,
    category_sex sex,
    category_age label,
    rules rule_set_code NOT NULL,
    edition label NOT NULL,
    ties combined_ties NOT NULL,
    timing combined_timing NOT NULL,
    status competition_status NOT NULL DEFAULT 'draft',
    version integer NOT NULL DEFAULT 0,
    last_sequence integer NOT NULL DEFAULT 0,
    CONSTRAINT combined_event_pkey PRIMARY KEY (organisation_id, id),
    CONSTRAINT combined_event_meet_fkey FOREIGN KEY (organisation_id, meet_id) REFERENCES meet (organisation_id, id),
    CONSTRAINT combined_event_scored_by_programme CHECK (CASE programme
      WHEN 'throws-pentathlon' THEN scored_by IN ('W', 'M')
      WHEN 'decathlon' THEN scored_by = 'M'
      WHEN 'heptathlon-indoor' THEN scored_by = 'M'
      ELSE scored_by = 'W' END),
    CONSTRAINT combined_event_counters CHECK (last_sequence >= 0 AND version >= last_sequence)
  )`;

const COMBINED_ENTRANT = `
  CREATE TABLE combined_entrant (
    organisation_id uuid NOT NULL,
    id uuid NOT NULL,
    combined_event_id uuid NOT NULL,
    athlete_id uuid,
    listed_name text,
    club_id uuid,
    listed_club text,
    bib label NOT NULL,
    position integer NOT NULL,
    guest boolean NOT NULL DEFAULT false,
    CONSTRAINT combined_entrant_pkey PRIMARY KEY (organisation_id, id),
    CONSTRAINT combined_entrant_event_fkey FOREIGN KEY (organisation_id, combined_event_id)
      REFERENCES combined_event (organisation_id, id),
    CONSTRAINT combined_entrant_athlete_fkey FOREIGN KEY (organisation_id, athlete_id)
      REFERENCES athlete (organisation_id, id),
    CONSTRAINT combined_entrant_club_fkey FOREIGN KEY (organisation_id, club_id) REFERENCES club (organisation_id, id),
    CONSTRAINT combined_entrant_bib_unique UNIQUE (combined_event_id, bib, organisation_id),
    CONSTRAINT combined_entrant_position_unique UNIQUE (combined_event_id, position, organisation_id),
    CONSTRAINT combined_entrant_athlete_unique UNIQUE (combined_event_id, athlete_id, organisation_id),
    CONSTRAINT combined_entrant_one_name CHECK (athlete_id IS NULL OR listed_name IS NULL),
    CONSTRAINT combined_entrant_one_club CHECK (club_id IS NULL OR listed_club IS NULL),
    CONSTRAINT combined_entrant_listed_name_length CHECK (length(listed_name) BETWEEN 1 AND 200),
    CONSTRAINT combined_entrant_listed_club_length CHECK (length(listed_club) BETWEEN 1 AND 200),
    CONSTRAINT combined_entrant_position_range CHECK (position >= 1)
  )`;

const COMBINED_LINK = `
  CREATE TABLE combined_link (
    organisation_id uuid NOT NULL,
    combined_event_id uuid NOT NULL,
    revision integer NOT NULL,
    event combined_event_code NOT NULL,
    competition_id uuid,
    linked_by signature NOT NULL,
    linked_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    CONSTRAINT combined_link_pkey PRIMARY KEY (organisation_id, combined_event_id, revision),
    CONSTRAINT combined_link_event_fkey FOREIGN KEY (organisation_id, combined_event_id)
      REFERENCES combined_event (organisation_id, id),
    CONSTRAINT combined_link_competition_fkey FOREIGN KEY (organisation_id, competition_id)
      REFERENCES competition (organisation_id, id),
    CONSTRAINT combined_link_revision_range CHECK (revision >= 1),
    CONSTRAINT combined_link_of_field_event CHECK (event IN ('high-jump', 'pole-vault', 'long-jump', 'shot', 'discus', 'hammer', 'javelin', 'weight'))
  )`;

const INDEXES = [
  `CREATE INDEX combined_event_by_meet ON combined_event (meet_id, organisation_id)`,
  `CREATE INDEX combined_entrant_by_athlete ON combined_entrant (athlete_id, organisation_id)`,
  `CREATE INDEX combined_entrant_by_club ON combined_entrant (club_id, organisation_id)`,
  `CREATE INDEX combined_link_by_competition ON combined_link (competition_id, organisation_id)`,
];

const GRANTS = `
  DO $block$
  BEGIN
    IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'sectorline_app') THEN
      GRANT SELECT, INSERT, UPDATE ON combined_event TO sectorline_app;
      GRANT SELECT, INSERT, DELETE ON combined_entrant TO sectorline_app;
      GRANT SELECT, INSERT ON combined_link TO sectorline_app;
    END IF;
  END
  $block$`;
