import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Signed-off results, archived as sheets. Names stay out: an athlete who asks to be forgotten must not be in here. */
export class OfficialResults1795612800003 implements MigrationInterface {
  name = 'OfficialResults1795612800003';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(OFFICIAL_RESULT);
    await runner.query(`
      CREATE TRIGGER official_result_insert_only BEFORE UPDATE OR DELETE OR TRUNCATE ON official_result
      FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()`);
    await runner.query(IN_SEQUENCE);
    await runner.query(`
      CREATE TRIGGER official_result_in_sequence BEFORE INSERT ON official_result
      FOR EACH ROW EXECUTE FUNCTION official_result_in_sequence()`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`DROP TABLE official_result`);
    await runner.query(`DROP FUNCTION official_result_in_sequence()`);
  }
}

const OFFICIAL_RESULT = `
  CREATE TABLE official_result (
    organisation_id uuid NOT NULL,
    competition_id uuid NOT NULL,
    revision integer NOT NULL,
    sequence integer NOT NULL,
    sheet jsonb NOT NULL,
    result jsonb NOT NULL,
    signed_by signature NOT NULL,
    signed_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    CONSTRAINT official_result_pkey PRIMARY KEY (organisation_id, competition_id, revision),
    CONSTRAINT official_result_competition_fkey FOREIGN KEY (organisation_id, competition_id)
      REFERENCES competition (organisation_id, id),
    CONSTRAINT official_result_revision_range CHECK (revision >= 1),
    CONSTRAINT official_result_sequence_range CHECK (sequence >= 0),
    CONSTRAINT official_result_sheet_shape CHECK (jsonb_typeof(sheet) = 'object'),
    CONSTRAINT official_result_result_shape CHECK (jsonb_typeof(result) = 'object'),
    CONSTRAINT official_result_without_names CHECK (
      NOT jsonb_path_exists(sheet, '$.**.name') AND NOT jsonb_path_exists(result, '$.**.name'))
  )`;

/** Revisions follow one another, none counts less of the journal than the one before, none more than there is. */
const IN_SEQUENCE = `
  CREATE FUNCTION official_result_in_sequence() RETURNS trigger LANGUAGE plpgsql SET search_path FROM CURRENT AS $function$
  DECLARE
    last_revision integer;
    signed_to integer;
    counted integer;
  BEGIN
    SELECT revision, sequence INTO last_revision, signed_to FROM official_result
     WHERE organisation_id = NEW.organisation_id AND competition_id = NEW.competition_id
     ORDER BY revision DESC LIMIT 1;
    SELECT last_sequence INTO counted FROM competition
     WHERE organisation_id = NEW.organisation_id AND id = NEW.competition_id;
    IF NOT FOUND THEN
      RETURN NEW;
    END IF;
    IF NEW.revision = coalesce(last_revision, 0) + 1
       AND NEW.sequence BETWEEN coalesce(signed_to, 0) AND counted THEN
      RETURN NEW;
    END IF;
    RAISE EXCEPTION 'official result of competition %: revision % does not follow the last one',
      NEW.competition_id, NEW.revision
      USING ERRCODE = 'check_violation', CONSTRAINT = TG_NAME, TABLE = TG_TABLE_NAME;
  END
  $function$`;
