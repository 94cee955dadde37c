import { openForMigration } from './data-source.js';
import { startEmbedded } from './embedded/start-embedded.js';
import { migrate, migrationsPending, revertMigration, schemaDifference } from './migrate.js';

/**
 * `npm run migrate` brings the database up to date, `npm run migrate -- down` takes the latest migration back, and
 * `npm run migrate:check` says what is missing or differs from the entities (exit status 1). The database is the one
 * of DATABASE_URL, or the embedded one in SECTORLINE_DATA (by default `.sectorline`).
 */
const COMMANDS: Readonly<Record<string, (url: string) => Promise<string[]>>> = {
  up: async (url) => {
    const ran = await migrate(url);
    return ran.length === 0
      ? ['Nothing to do: the database is up to date.']
      : ran.map((name) => `up    ${name}`);
  },
  down: async (url) => {
    const name = await revertMigration(url);
    return [name === null ? 'Nothing to take back.' : `down  ${name}`];
  },
  check: async (url) => {
    const faults = await faultsOf(url);
    process.exitCode = faults.length === 0 ? 0 : 1;
    return faults.length === 0 ? ['The database is up to date and as the entities say.'] : faults;
  },
};

async function faultsOf(url: string): Promise<string[]> {
  const database = await openForMigration({ url });
  try {
    if (await migrationsPending(database)) return ['Migrations are missing: npm run migrate.'];
    return (await schemaDifference(database)).map((statement) => `differs: ${statement}`);
  } finally {
    await database.destroy();
  }
}

async function main(name: string): Promise<void> {
  const command = COMMANDS[name];
  if (command === undefined)
    throw new Error(`There is no "${name}"; say ${Object.keys(COMMANDS).join(', ')}.`);
  const given = process.env.DATABASE_URL;
  const embedded = given ? null : await startEmbedded({ home: process.env.SECTORLINE_DATA || '.sectorline' });
  try {
    for (const line of await command(embedded?.url ?? given!)) console.log(line);
  } finally {
    await embedded?.stop();
  }
}

try {
  await main(process.argv[2] ?? 'up');
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
