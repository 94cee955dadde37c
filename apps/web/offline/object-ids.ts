/*
 * Ids of the API name the kind of the object before its UUID; a journal names the same objects by the UUID alone. The
 * fold needs both.
 */

/** The UUID in an id of the API; the id itself when it has another form. */
export function keyOf(id: string): string {
  try {
    return /^[A-Za-z]+:([0-9a-f-]{36})$/.exec(atob(id.replaceAll('-', '+').replaceAll('_', '/')))?.[1] ?? id;
  } catch {
    return id;
  }
}

/** What an id of the API is the id of, such as `Meet`; null when it has another form. */
export function kindOf(id: string): string | null {
  try {
    return /^([A-Za-z]+):/.exec(atob(id.replaceAll('-', '+').replaceAll('_', '/')))?.[1] ?? null;
  } catch {
    return null;
  }
}

/** The id of the API for the object with this UUID: the inverse of `keyOf`. */
export function idOf(kind: 'Competitor' | 'Competition', key: string): string {
  return btoa(`${kind}:${key}`).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

/** Who holds a token (the subject of its claims, RFC 7519), as a journal names him; null when it does not say. */
export function holderOf(token: string): string | null {
  try {
    const part = token.split('.')[1] ?? '';
    const claims = JSON.parse(atob(part.replaceAll('-', '+').replaceAll('_', '/'))) as { sub?: unknown };
    return typeof claims.sub === 'string' ? claims.sub : null;
  } catch {
    return null;
  }
}
