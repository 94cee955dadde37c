import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * The journal: what officials did, in the order in which it was recorded. Rows are only ever added. What a body may
 * say is held by its domain.
 */
export class Journal1795612800002 implements MigrationInterface {
  name = 'Journal1795612800002';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(JOURNAL_ENTRY);
    await runner.query(REFUSE_CHANGE);
    await runner.query(`
      CREATE TRIGGER journal_entry_insert_only BEFORE UPDATE OR DELETE OR TRUNCATE ON journal_entry
      FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()`);
    await runner.query(IN_SEQUENCE);
    await runner.query(`
      CREATE TRIGGER journal_entry_in_sequence BEFORE INSERT ON journal_entry
      FOR EACH ROW EXECUTE FUNCTION journal_entry_in_sequence()`);
    await runner.query(COUNTED_IS_THERE);
    await runner.query(`
      CREATE CONSTRAINT TRIGGER competition_counted_entry_is_there AFTER UPDATE ON competition
      DEFERRABLE INITIALLY DEFERRED FOR EACH ROW WHEN (OLD.last_sequence <> NEW.last_sequence)
      EXECUTE FUNCTION competition_counted_entry_is_there()`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`DROP TRIGGER competition_counted_entry_is_there ON competition`);
    await runner.query(`DROP FUNCTION competition_counted_entry_is_there()`);
    await runner.query(`DROP TABLE journal_entry`);
    await runner.query(`DROP FUNCTION journal_entry_in_sequence()`);
    await runner.query(`DROP FUNCTION refuse_change()`);
  }
}

const JOURNAL_ENTRY = `
  CREATE TABLE journal_entry (
    organisation_id uuid NOT NULL,
    competition_id uuid NOT NULL,
    sequence integer NOT NULL,
    entry_id uuid NOT NULL,
    kind text NOT NULL,
    body journal_body NOT NULL,
    standing standing NOT NULL,
    verdict jsonb NOT NULL,
    authority authority NOT NULL,
    actor signature NOT NULL,
    device signature,
    device_at timestamptz,
    recorded_at timestamptz NOT NULL DEFAULT clock_timestamp(),
    fingerprint fingerprint NOT NULL,
    CONSTRAINT journal_entry_pkey PRIMARY KEY (organisation_id, competition_id, sequence),
    CONSTRAINT journal_entry_id_unique UNIQUE (entry_id, organisation_id),
    CONSTRAINT journal_entry_competition_fkey FOREIGN KEY (organisation_id, competition_id)
      REFERENCES competition (organisation_id, id),
    CONSTRAINT journal_entry_sequence_range CHECK (sequence >= 1),
    CONSTRAINT journal_entry_body_of_kind CHECK (body ->> 'kind' = kind),
    CONSTRAINT journal_entry_verdict_agrees CHECK ((verdict ->> 'standing' = standing) IS TRUE)
  )`;

/** For the tables that are only ever added to. Also refuses a change that would touch no row. */
const REFUSE_CHANGE = `
  CREATE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql AS $function$
  BEGIN
    RAISE EXCEPTION '% is only ever added to; what replaces a row is another row', TG_TABLE_NAME
      USING ERRCODE = 'check_violation', CONSTRAINT = TG_NAME, TABLE = TG_TABLE_NAME;
  END
  $function$`;

/** The competition counts an entry first; the entry then takes that number, and the one before must be there. */
const IN_SEQUENCE = `
  CREATE FUNCTION journal_entry_in_sequence() RETURNS trigger LANGUAGE plpgsql SET search_path FROM CURRENT AS $function$
  DECLARE
    counted integer;
  BEGIN
    SELECT last_sequence INTO counted FROM competition
     WHERE organisation_id = NEW.organisation_id AND id = NEW.competition_id;
    IF NOT FOUND THEN
      RETURN NEW;
    END IF;
    IF NEW.sequence = counted AND (counted = 1 OR EXISTS (
      SELECT FROM journal_entry
       WHERE organisation_id = NEW.organisation_id AND competition_id = NEW.competition_id
         AND sequence = NEW.sequence - 1)) THEN
      RETURN NEW;
    END IF;
    RAISE EXCEPTION 'journal of competition %: entry % does not follow the last one', NEW.competition_id, NEW.sequence
      USING ERRCODE = 'check_violation', CONSTRAINT = TG_NAME, TABLE = TG_TABLE_NAME;
  END
  $function$`;

/** Looked at when the transaction ends: what was counted must have been written. */
const COUNTED_IS_THERE = `
  CREATE FUNCTION competition_counted_entry_is_there() RETURNS trigger LANGUAGE plpgsql SET search_path FROM CURRENT AS $function$
  BEGIN
    IF EXISTS (
      SELECT FROM journal_entry
       WHERE organisation_id = NEW.organisation_id AND competition_id = NEW.id AND sequence = NEW.last_sequence) THEN
      RETURN NULL;
    END IF;
    RAISE EXCEPTION 'competition %: entry % was counted and not written', NEW.id, NEW.last_sequence
      USING ERRCODE = 'check_violation', CONSTRAINT = TG_NAME, TABLE = TG_TABLE_NAME;
  END
  $function$`;
