/** Why there is no answer to read. */
export type Failure =
  /** No network, no server, or it answers too late. Try again. */
  | { readonly kind: 'unreachable' }
  /** It answers, and cannot work at the moment. Try again. */
  | { readonly kind: 'unavailable' }
  /** The token is not valid (any more), or not for this. */
  | { readonly kind: 'no-right'; readonly message: string }
  /** The request itself was refused; sending it again changes nothing. */
  | { readonly kind: 'refused'; readonly code: string; readonly message: string };

export type Answer<T> =
  | { readonly ok: true; readonly data: T }
  | { readonly ok: false; readonly failure: Failure };

interface GraphqlAnswer<T> {
  readonly data?: T | null;
  readonly errors?: readonly {
    readonly message: string;
    readonly extensions?: { readonly code?: string };
  }[];
}

const NO_RIGHT = new Set(['UNAUTHENTICATED', 'FORBIDDEN']);
const PASSING = new Set(['UNAVAILABLE', 'INTERNAL', 'INTERNAL_SERVER_ERROR']);

/** Half-open connections are common on a field: after so long there was no answer. */
const PATIENCE_MS = 10_000;

/** Sends documents to the API of the server that this page came from. */
export class ApiClient {
  constructor(
    private readonly token: () => string | null,
    private readonly patienceMs: number = PATIENCE_MS,
  ) {}

  /** A paper of the server; null: there is none, or no answer. */
  async paper(address: string): Promise<Blob | null> {
    const token = this.token();
    try {
      const response = await fetch(address, {
        ...(token !== null && { headers: { authorization: `Bearer ${token}` } }),
        signal: AbortSignal.timeout(this.patienceMs),
        cache: 'no-store',
        credentials: 'omit',
      });
      return response.ok ? await response.blob() : null;
    } catch {
      return null;
    }
  }

  async send<T>(query: string, variables: Readonly<Record<string, unknown>>): Promise<Answer<T>> {
    const token = this.token();
    try {
      const response = await fetch('/graphql', {
        method: 'POST',
        headers: {
          'content-type': 'application/json',
          accept: 'application/graphql-response+json',
          ...(token !== null && { authorization: `Bearer ${token}` }),
        },
        body: JSON.stringify({ query, variables }),
        signal: AbortSignal.timeout(this.patienceMs),
        cache: 'no-store',
        credentials: 'omit',
      });
      return read<T>(response.status, (await response.json()) as GraphqlAnswer<T>);
    } catch {
      return failed({ kind: 'unreachable' });
    }
  }
}

function read<T>(status: number, { data, errors }: GraphqlAnswer<T>): Answer<T> {
  const [error] = errors ?? [];
  if (!error && data) return { ok: true, data };
  const code = error?.extensions?.code ?? '';
  const message = error?.message ?? '';
  if (NO_RIGHT.has(code) || status === 401 || status === 403) return failed({ kind: 'no-right', message });
  if (!error || PASSING.has(code) || status >= 500 || status === 429) return failed({ kind: 'unavailable' });
  return failed({ kind: 'refused', code, message });
}

function failed(failure: Failure): { readonly ok: false; readonly failure: Failure } {
  return { ok: false, failure };
}
