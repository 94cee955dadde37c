import { readConfig } from './platform/config.js';
import { homeOrganisation } from './platform/database/home-organisation.js';
import { signingKey } from './platform/identity/secret.js';
import { Tokens } from './platform/identity/tokens.js';
import { uuidV7 } from './platform/inputs/uuid-v7.js';
import { Log } from './platform/log.js';
import { openStore } from './start/store.js';

/** Prints an administrator's token for a year: the first key to an installation. Whoever can run this has the secret. */
const config = readConfig(process.env);
const store = await openStore(config, new Log('silent'));
try {
  const tokens = new Tokens(
    await signingKey(config.secret, config.dataDirectory),
    await homeOrganisation(store.database),
  );
  const until = Math.floor(Date.now() / 1000) + 365 * 24 * 60 * 60;
  const token = await tokens.issue({
    holder: uuidV7(),
    organisationId: tokens.everybody.organisationId,
    grants: [{ role: 'admin', on: null, from: null, until }],
    label: 'administrator',
  });
  process.stdout.write(`${token}\n`);
} finally {
  await store.close();
}
