import { join } from 'node:path';
import { startEmbedded, writeBackup } from '#persistence';
import { readConfig } from './platform/config.js';
import { backupName } from './start/backups.js';

/** `npm run backup [-- FILE]`: everything that is stored into one file, while the server runs or not. */
const config = readConfig(process.env);
const at = new Date();
const path = process.argv[2] ?? join(config.backups.directory, backupName(at));
try {
  const server = config.databaseUrl === null ? await startEmbedded({ home: config.dataDirectory }) : null;
  try {
    const { tables, rows } = await writeBackup(server?.url ?? config.databaseUrl!, path, at);
    process.stdout.write(`${path}: ${rows} rows of ${tables} tables\n`);
  } finally {
    await server?.stop();
  }
} catch (error) {
  process.stderr.write(`No backup was written: ${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = 1;
}
