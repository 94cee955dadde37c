import { signal } from '@preact/signals';
import { ApiClient, type Answer, type Failure } from '../offline/api-client.js';
import { exchanged, type Pass } from '../offline/pass.js';
import { uuidV7 } from '../offline/uuid-v7.js';

/** What somebody may do, as the server says. */
export interface Grant {
  readonly role: string;
  readonly on: string | null;
}

interface Kept {
  readonly deviceId: string;
  readonly token: string | null;
  /** Of a person who signed in by name; null: the token of a post. */
  readonly refreshToken: string | null;
}

const PLACE = 'sectorline-office';

const VIEWER = `query OfficeViewer { viewer { label displayName grants { role on } } }`;
const SIGN_IN = `mutation OfficeSignIn($input: SignInInput!) {
  signIn(input: $input) { session { accessToken refreshToken } userErrors { code message } }
}`;
const REFRESH = `mutation OfficeRefresh($input: SessionRefreshInput!) {
  sessionRefresh(input: $input) { session { accessToken refreshToken } userErrors { code message } }
}`;

interface Opened {
  readonly session: { readonly accessToken: string; readonly refreshToken: string } | null;
  readonly userErrors: readonly { readonly message: string }[];
}

/** Who works here. Kept on this device until somebody signs out. */
export class Session {
  readonly grants = signal<readonly Grant[] | null>(null);
  readonly name = signal('');
  private kept: Kept = readKept();
  private refreshing: Promise<boolean> | null = null;
  private readonly client = new ApiClient(() => this.kept.token);

  get isThere(): boolean {
    return this.kept.token !== null;
  }

  /** What the journal calls this device when a person signs in on it. */
  get device(): string {
    return `office ${this.kept.deviceId.slice(-6)}`;
  }

  /** Null: done. */
  async comeIn({ kind, text }: Pass): Promise<Failure | null> {
    const token = kind === 'token' ? text : await exchanged(text, this.kept.deviceId);
    if (typeof token !== 'string') return token;
    this.keep({ token, refreshToken: null });
    return this.look();
  }

  /** Null: done. */
  async signIn(loginName: string, password: string): Promise<Failure | null> {
    const input = { loginName, password, device: this.device };
    const answer = await new ApiClient(() => null).send<{ signIn: Opened }>(SIGN_IN, { input });
    if (!answer.ok) return answer.failure;
    const { session, userErrors } = answer.data.signIn;
    if (!session) return { kind: 'no-right', message: userErrors[0]?.message ?? '' };
    this.keep({ token: session.accessToken, refreshToken: session.refreshToken });
    return this.look();
  }

  /** Asks who this is; null: known. */
  async look(): Promise<Failure | null> {
    const answer = await this.send<{
      viewer: { label: string | null; displayName: string | null; grants: Grant[] };
    }>(VIEWER, {});
    if (!answer.ok) {
      if (answer.failure.kind === 'no-right') this.forget();
      return answer.failure;
    }
    const { label, displayName, grants } = answer.data.viewer;
    this.name.value = displayName ?? label ?? '';
    this.grants.value = grants;
    return null;
  }

  /** A person's token holds for a quarter of an hour; when it is over, it is made new once and the document sent again. */
  async send<T>(query: string, variables: Readonly<Record<string, unknown>>): Promise<Answer<T>> {
    const answer = await this.client.send<T>(query, variables);
    if (answer.ok || answer.failure.kind !== 'no-right' || this.kept.refreshToken === null) return answer;
    this.refreshing ??= this.refresh().finally(() => (this.refreshing = null));
    return (await this.refreshing) ? this.client.send<T>(query, variables) : answer;
  }

  forget(): void {
    this.keep({ token: null, refreshToken: null });
    this.grants.value = null;
    this.name.value = '';
  }

  private async refresh(): Promise<boolean> {
    const input = { refreshToken: this.kept.refreshToken };
    const answer = await new ApiClient(() => null).send<{ sessionRefresh: Opened }>(REFRESH, { input });
    if (!answer.ok) return false;
    const { session } = answer.data.sessionRefresh;
    if (!session) return false;
    this.keep({ token: session.accessToken, refreshToken: session.refreshToken });
    return true;
  }

  private keep(tokens: Pick<Kept, 'token' | 'refreshToken'>): void {
    this.kept = { deviceId: this.kept.deviceId, ...tokens };
    try {
      localStorage.setItem(PLACE, JSON.stringify(this.kept));
    } catch {
      // A browser that keeps nothing: whoever works here signs in again next time.
    }
  }
}

function readKept(): Kept {
  try {
    const kept = JSON.parse(localStorage.getItem(PLACE) ?? 'null') as Kept | null;
    if (typeof kept?.deviceId === 'string') return kept;
  } catch {
    // What cannot be read is as good as nothing.
  }
  return { deviceId: uuidV7(), token: null, refreshToken: null };
}
