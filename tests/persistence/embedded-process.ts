/**
 * A process that uses the embedded server, for tests that kill it. Parameters: the options as JSON and, to become a
 * normal user before it starts, a user's number. Writes one line of JSON; stops when its input ends.
 */
import { startEmbedded, type EmbeddedOptions } from '#persistence';

const [options = '{}', user] = process.argv.slice(2);
if (user !== undefined) {
  process.setgroups?.([]);
  process.setgid?.(Number(user));
  process.setuid?.(Number(user));
}
try {
  const server = await startEmbedded(JSON.parse(options) as EmbeddedOptions);
  process.stdout.write(`${JSON.stringify({ url: server.url, adopted: server.adopted })}\n`);
  process.stdin.resume();
  process.stdin.once('end', () => void server.stop());
} catch (error) {
  process.stdout.write(
    `${JSON.stringify({ fault: (error as { fault?: string }).fault, message: String(error) })}\n`,
  );
}
