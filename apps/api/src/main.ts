import { readConfig } from './platform/config.js';
import { Log } from './platform/log.js';
import { administratorLines, banner } from './start/banner.js';
import { start } from './start/start.js';

let log = new Log('info');

try {
  const config = readConfig(process.env);
  log = new Log(config.logLevel);
  const running = await start(config, log);
  if (config.production) {
    // Standard output is for machines alone, and no token is shown; the first administrator has to be told all the same.
    log.write('info', 'listening', { url: running.url });
    const { firstAdministrator: first } = running;
    if (first) process.stderr.write(`${administratorLines(first).join('\n')}\n`);
  } else process.stdout.write(banner(running));
} catch (error) {
  log.failure('could not start', error);
  process.stderr.write(
    `Sectorline could not start: ${error instanceof Error ? error.message : String(error)}\n`,
  );
  process.exit(1);
}
