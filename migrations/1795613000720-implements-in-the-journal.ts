import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * A trial may name its implement, with what the register knew of it then, and trials may come into question when it
 * does not pass afterwards. The kinds of entry are taken as they are found, and one is added, so that this fits
 * whatever other kinds there are by then. Taking it back needs a journal without entries of that kind.
 */
export class ImplementsInTheJournal1795613000720 implements MigrationInterface {
  name = 'ImplementsInTheJournal1795613000720';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(kindsChanged('ARRAY[', `ARRAY['implement-query'::text, `));
    for (const constraint of CONSTRAINTS) {
      await runner.query(`ALTER DOMAIN journal_body ADD CONSTRAINT ${constraint}`);
    }
  }

  async down(runner: QueryRunner): Promise<void> {
    for (const constraint of [...CONSTRAINTS].reverse()) {
      await runner.query(`ALTER DOMAIN journal_body DROP CONSTRAINT ${constraint.split(' ')[0]}`);
    }
    await runner.query(kindsChanged(`'implement-query'::text, `, ''));
  }
}

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

const STANDINGS = [
  ...['passed', 'not inspected', 'incomplete', 'failed', 'kept back', 'unknown'],
  ...['other event', 'other mass'],
]
  .map((standing) => `'${standing}'`)
  .join(', ');

const UUID = `'^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$'`;

const CONSTRAINTS = [
  `journal_body_implement_named CHECK (VALUE ->> 'kind' NOT IN ('attempt', 'correction') OR (NOT VALUE ? 'implementId' AND NOT VALUE ? 'implementStanding') OR (jsonb_typeof(VALUE -> 'implementId') = 'string' AND VALUE ->> 'implementId' ~ ${UUID} AND VALUE ->> 'implementStanding' IN (${STANDINGS})) IS TRUE)`,
  `journal_body_query_names_implement CHECK (VALUE ->> 'kind' <> 'implement-query' OR (jsonb_typeof(VALUE -> 'implementId') = 'string' AND VALUE ->> 'implementId' ~ ${UUID}) IS TRUE)`,
  `journal_body_query_names_attempts CHECK (VALUE ->> 'kind' <> 'implement-query' OR (VALUE @@ 'strict $.attempts.type() == "array" && $.attempts.size() >= 1 && !(exists($.attempts[*] ? (@.type() != "string")))') IS TRUE)`,
  `journal_body_query_explained CHECK (VALUE ->> 'kind' <> 'implement-query' OR (jsonb_typeof(VALUE -> 'reason') = 'string' AND btrim(VALUE ->> 'reason') <> '' AND length(VALUE ->> 'reason') <= 1000) IS TRUE)`,
];
