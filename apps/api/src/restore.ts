import { restoreBackup, startEmbedded } from '#persistence';
import { readConfig } from './platform/config.js';

/** `npm run restore -- FILE`: puts a backup into an empty database and brings it up to date. */
const config = readConfig(process.env);
const [path] = process.argv.slice(2);
try {
  if (path === undefined) throw new Error('Say which file: npm run restore -- FILE.');
  const server = config.databaseUrl === null ? await startEmbedded({ home: config.dataDirectory }) : null;
  try {
    const { head, rows, migrated } = await restoreBackup(server?.url ?? config.databaseUrl!, path);
    const since = migrated.length === 0 ? '' : ` and brought up to date (${migrated.join(', ')})`;
    process.stdout.write(
      `${rows} rows of ${head.takenAt} are there again${since}. Now: npm run check-meet\n`,
    );
  } finally {
    await server?.stop();
  }
} catch (error) {
  process.stderr.write(`Nothing was restored: ${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = 1;
}
