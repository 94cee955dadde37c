import { unauthenticated } from '../errors/api-error.js';
import type { Doorkeeper } from './doorkeeper.js';
import type { Identity } from './identity.js';

/** Who sends a request, by its header "Authorization: Bearer". Throws UNAUTHENTICATED for what is no valid token. */
export async function bearerOf(
  { headers }: { readonly headers: { readonly authorization?: string } },
  doorkeeper: Doorkeeper,
): Promise<Identity> {
  const header = headers.authorization;
  if (header === undefined) return doorkeeper.everybody;
  const token = /^Bearer ([\w.~+/-]+=*)$/i.exec(header)?.[1];
  if (token === undefined) throw unauthenticated('The header must be "Authorization: Bearer" and a token.');
  return doorkeeper.identify(token);
}
