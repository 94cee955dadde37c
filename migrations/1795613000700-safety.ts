import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Interruptions and all-clears are entries of the journal like any other. Taking this back needs a journal without them. */
export class Safety1795613000700 implements MigrationInterface {
  name = 'Safety1795613000700';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(KIND_KNOWN([...KINDS, 'interruption', 'all-clear']));
    for (const constraint of CONSTRAINTS) {
      await runner.query(`ALTER DOMAIN journal_body ADD CONSTRAINT ${constraint}`);
    }
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(KIND_KNOWN(KINDS));
    for (const constraint of [...CONSTRAINTS].reverse()) {
      await runner.query(`ALTER DOMAIN journal_body DROP CONSTRAINT ${constraint.split(' ')[0]}`);
    }
  }
}

const KINDS = [
  ...['attempt', 'wind', 'correction', 'move', 'order'],
  ...['jump', 'jump-off', 'jump-correction', 'jump-move', 'jump-order', 'bar', 'uprights'],
  ...['jump-off-declined', 'reversal', 'replacement', 'ruling', 'start', 'disqualification'],
  ...['reinstatement', 'admission', 'sign-off', 'reopening'],
];

const KIND_KNOWN = (kinds: readonly string[]): string => `
  ALTER DOMAIN journal_body DROP CONSTRAINT journal_body_kind_known;
  ALTER DOMAIN journal_body ADD CONSTRAINT journal_body_kind_known
    CHECK ((jsonb_typeof(VALUE) = 'object' AND VALUE ->> 'kind' IN (${kinds.map((kind) => `'${kind}'`).join(', ')})) IS TRUE)`;

const CONSTRAINTS = [
  `journal_body_cause_known CHECK (VALUE ->> 'kind' <> 'interruption' OR (VALUE ->> 'cause' ~ '^[a-z][a-z-]{1,39}$') IS TRUE)`,
  `journal_body_seen_at CHECK (VALUE ->> 'kind' <> 'interruption' OR (VALUE @@ '$.seenAt.type() == "number" && $.seenAt >= 0 && $.seenAt.floor() == $.seenAt') IS TRUE)`,
  `journal_body_stop_noted CHECK (VALUE ->> 'kind' <> 'interruption' OR coalesce(jsonb_typeof(VALUE -> 'note'), 'null') = 'null' OR (jsonb_typeof(VALUE -> 'note') = 'string' AND btrim(VALUE ->> 'note') <> '' AND length(VALUE ->> 'note') <= 1000) IS TRUE)`,
  `journal_body_checks_listed CHECK (VALUE ->> 'kind' <> 'all-clear' OR (VALUE @@ 'strict $.confirmed.type() == "array" && $.confirmed.size() >= 1 && !(exists($.confirmed[*] ? (@.type() != "string")))') IS TRUE)`,
  `journal_body_cleared_at CHECK (VALUE ->> 'kind' <> 'all-clear' OR (VALUE @@ '$.newWarmUp.type() == "boolean" && $.clearedAt.type() == "number" && $.clearedAt >= 0 && $.clearedAt.floor() == $.clearedAt') IS TRUE)`,
  `journal_body_despite_explained CHECK (VALUE ->> 'kind' <> 'all-clear' OR coalesce(jsonb_typeof(VALUE -> 'despite'), 'null') = 'null' OR (jsonb_typeof(VALUE -> 'despite') = 'string' AND btrim(VALUE ->> 'despite') <> '' AND length(VALUE ->> 'despite') <= 1000) IS TRUE)`,
];
