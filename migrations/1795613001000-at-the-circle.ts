import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * What officials write down at the circle beside trials: notes, who is away at another event, the chief judge's
 * signature; and changes of a start list that is in use: somebody nobody knows yet, bibs, a flight. With which hand an
 * athlete throws or from which foot he jumps is kept with the athlete. Taking this back needs a journal without such
 * entries.
 */
export class AtTheCircle1795613001000 implements MigrationInterface {
  name = 'AtTheCircle1795613001000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(kindsChanged('ARRAY[', `ARRAY[${ADDED}`));
    for (const constraint of CONSTRAINTS) {
      await runner.query(`ALTER DOMAIN journal_body ADD CONSTRAINT ${constraint}`);
    }
    await runner.query(`ALTER TABLE competitor ADD COLUMN is_unmatched boolean NOT NULL DEFAULT false`);
    await runner.query(`
      ALTER TABLE competitor ADD CONSTRAINT competitor_unmatched_is_nobody
        CHECK (NOT is_unmatched OR athlete_id IS NULL)`);
    await runner.query(`
      ALTER TABLE athlete ADD COLUMN handedness text
        CONSTRAINT athlete_handedness_known CHECK (handedness IN ('left', 'right'))`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`ALTER TABLE athlete DROP COLUMN handedness`);
    await runner.query(`ALTER TABLE competitor DROP COLUMN is_unmatched`);
    for (const constraint of [...CONSTRAINTS].reverse()) {
      await runner.query(`ALTER DOMAIN journal_body DROP CONSTRAINT ${constraint.split(' ')[0]}`);
    }
    await runner.query(kindsChanged(ADDED, ''));
  }
}

const ADDED = ['note', 'excuse', 'card-signed', 'late-entry', 'match', 'bibs', 'flight']
  .map((kind) => `'${kind}'::text, `)
  .join('');

/** The same constraint with one piece of its text put in place of another. */
function kindsChanged(before: string, after: string): string {
  const quoted = (text: string): string => `'${text.replaceAll(`'`, `''`)}'`;
  return `
    DO $block$
    DECLARE
      known text;
    BEGIN
      SELECT pg_get_constraintdef(oid) INTO STRICT known FROM pg_constraint
       WHERE conname = 'journal_body_kind_known' AND contypid = 'journal_body'::regtype;
      IF strpos(known, ${quoted(before)}) = 0 THEN
        RAISE EXCEPTION 'The kinds of entry are written down in another way: %', known;
      END IF;
      ALTER DOMAIN journal_body DROP CONSTRAINT journal_body_kind_known;
      EXECUTE 'ALTER DOMAIN journal_body ADD CONSTRAINT journal_body_kind_known '
        || replace(known, ${quoted(before)}, ${quoted(after)});
    END
    $block$`;
}

/** A text of so many characters that is not blank. */
function words(key: string, most: number): string {
  return `(jsonb_typeof(VALUE -> '${key}') = 'string' AND btrim(VALUE ->> '${key}') <> '' AND length(VALUE ->> '${key}') <= ${most})`;
}

function isNull(key: string): string {
  return `coalesce(jsonb_typeof(VALUE -> '${key}'), 'null') = 'null'`;
}

function moment(key: string): string {
  return `(VALUE @@ '$.${key}.type() == "number" && $.${key} >= 0 && $.${key}.floor() == $.${key}')`;
}

const CONSTRAINTS = [
  `journal_body_note_worded CHECK (VALUE ->> 'kind' <> 'note' OR (VALUE ->> 'about' ~ '^[a-z][a-z-]{1,39}$' AND ${words('text', 1000)}) IS TRUE)`,
  `journal_body_note_at CHECK (VALUE ->> 'kind' <> 'note' OR ${moment('seenAt')} IS TRUE)`,
  `journal_body_excused_somewhere CHECK (VALUE ->> 'kind' <> 'excuse' OR ${isNull('to')} OR ${words('to', 200)} IS TRUE)`,
  `journal_body_excused_until CHECK (VALUE ->> 'kind' <> 'excuse' OR ${isNull('until')} OR ${moment('until')} IS TRUE)`,
  `journal_body_card_remark CHECK (VALUE ->> 'kind' <> 'card-signed' OR ${isNull('remark')} OR ${words('remark', 1000)} IS TRUE)`,
  `journal_body_list_names CHECK (VALUE ->> 'kind' NOT IN ('excuse', 'late-entry', 'match', 'flight') OR (jsonb_typeof(VALUE -> 'competitor') = 'string') IS TRUE)`,
  `journal_body_late_bib CHECK (VALUE ->> 'kind' <> 'late-entry' OR ${words('bib', 64)} IS TRUE)`,
  `journal_body_flight_named CHECK (VALUE ->> 'kind' <> 'flight' OR ${words('flight', 64)} IS TRUE)`,
  `journal_body_bibs_listed CHECK (VALUE ->> 'kind' <> 'bibs' OR (VALUE @@ 'strict $.bibs.type() == "array" && $.bibs.size() >= 1 && !(exists($.bibs[*] ? (@.bib.type() != "string" || @.competitor.type() != "string")))') IS TRUE)`,
  `journal_body_list_change_explained CHECK (VALUE ->> 'kind' NOT IN ('bibs', 'flight') OR ${words('reason', 1000)} IS TRUE)`,
];
