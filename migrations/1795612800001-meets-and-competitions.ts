import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * A meet, what is ranked at it, and who competes. A plan holds only what differs from the rule set's own; a high jump
 * or pole vault has its announced heights and terms instead.
 *
 * Indexes beside the keys begin with what they are for. One that began with the organisation would fit every question,
 * and as long as a table is too new to have been analysed the planner may then read a whole organisation with it.
 */
export class MeetsAndCompetitions1795612800001 implements MigrationInterface {
  name = 'MeetsAndCompetitions1795612800001';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(MEET);
    await runner.query(`CREATE INDEX meet_by_date ON meet (organisation_id, starts_on, id)`);
    await runner.query(COMPETITION);
    await runner.query(`CREATE INDEX competition_by_meet ON competition (meet_id, organisation_id)`);
    await runner.query(COUNTERS_ADVANCE);
    await runner.query(`
      CREATE TRIGGER competition_counters_advance BEFORE INSERT OR UPDATE ON competition
      FOR EACH ROW EXECUTE FUNCTION competition_counters_advance()`);
    await runner.query(COMPETITOR);
    await runner.query(`CREATE INDEX competitor_by_athlete ON competitor (athlete_id, organisation_id)`);
    await runner.query(`CREATE INDEX competitor_by_club ON competitor (club_id, organisation_id)`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`DROP TABLE competitor`);
    await runner.query(`DROP TABLE competition`);
    await runner.query(`DROP FUNCTION competition_counters_advance()`);
    await runner.query(`DROP TABLE meet`);
  }
}

const MEET = `
  CREATE TABLE meet (
    organisation_id uuid NOT NULL,
    id uuid NOT NULL,
    name title NOT NULL,
    venue text NOT NULL,
    starts_on date NOT NULL,
    ends_on date NOT NULL,
    time_zone label NOT NULL,
    rules rule_set_code NOT NULL,
    edition label NOT NULL,
    minors_display name_display NOT NULL DEFAULT 'initials',
    published_at timestamptz,
    CONSTRAINT meet_pkey PRIMARY KEY (organisation_id, id),
    CONSTRAINT meet_organisation_fkey FOREIGN KEY (organisation_id) REFERENCES organisation (id),
    CONSTRAINT meet_venue_length CHECK (length(venue) <= 200),
    CONSTRAINT meet_dates_in_order CHECK (starts_on <= ends_on),
    CONSTRAINT meet_dates_range CHECK (starts_on >= '1900-01-01' AND ends_on <= '2200-01-01')
  )`;

const COMPETITION = `
  CREATE TABLE competition (
    organisation_id uuid NOT NULL,
    id uuid NOT NULL,
    meet_id uuid NOT NULL,
    title title NOT NULL,
    event event_code NOT NULL,
    rules rule_set_code NOT NULL,
    edition label NOT NULL,
    indoor boolean NOT NULL DEFAULT false,
    stage stage NOT NULL DEFAULT 'final',
    qualifying qualifying,
    plan plan_overrides NOT NULL DEFAULT '{}',
    vertical vertical_terms,
    unit mark_unit NOT NULL,
    category_sex sex,
    category_age label,
    implement_grams implement_grams,
    scoring scoring,
    status competition_status NOT NULL DEFAULT 'draft',
    version integer NOT NULL DEFAULT 0,
    last_sequence integer NOT NULL DEFAULT 0,
    starts_at timestamptz,
    CONSTRAINT competition_pkey PRIMARY KEY (organisation_id, id),
    CONSTRAINT competition_meet_fkey FOREIGN KEY (organisation_id, meet_id) REFERENCES meet (organisation_id, id),
    CONSTRAINT competition_qualifying_iff_qualification CHECK ((stage = 'qualification') = (qualifying IS NOT NULL)),
    CONSTRAINT competition_vertical_iff_bar CHECK ((event IN ('high-jump', 'pole-vault')) = (vertical IS NOT NULL)),
    CONSTRAINT competition_plan_without_bar CHECK (vertical IS NULL OR plan = '{}'),
    CONSTRAINT competition_counters CHECK (last_sequence >= 0 AND version >= last_sequence)
  )`;

/** A version that fell would make an old reading pass for a new one; a counter that leapt would tear the journal. */
const COUNTERS_ADVANCE = `
  CREATE FUNCTION competition_counters_advance() RETURNS trigger LANGUAGE plpgsql AS $function$
  BEGIN
    IF TG_OP = 'INSERT' THEN
      IF NEW.last_sequence = 0 THEN
        RETURN NEW;
      END IF;
    ELSIF NEW.last_sequence = OLD.last_sequence AND NEW.version >= OLD.version THEN
      RETURN NEW;
    ELSIF NEW.last_sequence = OLD.last_sequence + 1 AND NEW.version > OLD.version THEN
      RETURN NEW;
    END IF;
    RAISE EXCEPTION 'competition %: version never falls, and the journal is counted one entry at a time', NEW.id
      USING ERRCODE = 'check_violation', CONSTRAINT = 'competition_counters_advance', TABLE = TG_TABLE_NAME;
  END
  $function$`;

const COMPETITOR = `
  CREATE TABLE competitor (
    organisation_id uuid NOT NULL,
    id uuid NOT NULL,
    competition_id uuid NOT NULL,
    athlete_id uuid,
    listed_name text,
    listed_club text,
    club_id uuid,
    bib label NOT NULL,
    position integer NOT NULL,
    flight label,
    guest boolean NOT NULL DEFAULT false,
    implement_grams implement_grams,
    written jsonb,
    CONSTRAINT competitor_pkey PRIMARY KEY (organisation_id, id),
    CONSTRAINT competitor_competition_fkey FOREIGN KEY (organisation_id, competition_id)
      REFERENCES competition (organisation_id, id),
    CONSTRAINT competitor_athlete_fkey FOREIGN KEY (organisation_id, athlete_id) REFERENCES athlete (organisation_id, id),
    CONSTRAINT competitor_club_fkey FOREIGN KEY (organisation_id, club_id) REFERENCES club (organisation_id, id),
    CONSTRAINT competitor_bib_unique UNIQUE (competition_id, bib, organisation_id) DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT competitor_position_unique UNIQUE (competition_id, position, organisation_id)
      DEFERRABLE INITIALLY DEFERRED,
    CONSTRAINT competitor_athlete_unique UNIQUE (competition_id, athlete_id, organisation_id),
    CONSTRAINT competitor_one_name CHECK (athlete_id IS NULL OR listed_name IS NULL),
    CONSTRAINT competitor_one_club CHECK (club_id IS NULL OR listed_club IS NULL),
    CONSTRAINT competitor_listed_name_length CHECK (length(listed_name) BETWEEN 1 AND 200),
    CONSTRAINT competitor_listed_club_length CHECK (length(listed_club) BETWEEN 1 AND 200),
    CONSTRAINT competitor_position_range CHECK (position >= 1),
    CONSTRAINT competitor_written_shape CHECK
      (jsonb_typeof(written) = 'object' AND written - 'place' - 'mark' = '{}' AND length(written::text) <= 200)
  )`;
