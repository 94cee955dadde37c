import type { QueryRunner } from 'typeorm';

interface Reference {
  readonly child: string;
  readonly parent: string;
}

/** All tables but the bookkeeping of migrations, each after those that its rows name. Throws on a circle. */
export async function tablesInOrder(runner: QueryRunner): Promise<string[]> {
  const tables = (await runner.query(
    `SELECT quote_ident(tablename) AS name FROM pg_tables
      WHERE schemaname = current_schema() AND tablename <> 'schema_migration' ORDER BY 1`,
  )) as { readonly name: string }[];
  const references = (await runner.query(
    `SELECT conrelid::regclass::text AS child, confrelid::regclass::text AS parent FROM pg_constraint
      WHERE contype = 'f' AND connamespace = current_schema()::regnamespace AND conrelid <> confrelid`,
  )) as Reference[];
  const left = new Set(tables.map(({ name }) => name));
  const order: string[] = [];
  while (left.size > 0) {
    const next = [...left].filter(
      (name) => !references.some(({ child, parent }) => child === name && left.has(parent)),
    );
    if (next.length === 0) throw new Error(`Tables name each other in a circle: ${[...left].join(', ')}.`);
    for (const name of next) {
      left.delete(name);
      order.push(name);
    }
  }
  return order;
}
