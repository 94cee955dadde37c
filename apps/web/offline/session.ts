import { signal } from '@preact/signals';
import { ApiClient, type Answer, type Failure } from './api-client.js';
import { exchanged, type Pass } from './pass.js';
import { uuidV7 } from './uuid-v7.js';

/** What somebody may do, as the server says. */
export interface Grant {
  readonly role: string;
  readonly on: string | null;
}

interface Kept {
  readonly deviceId: string;
  /** As the server said last: a page that works without a network knows by it who this is. */
  readonly name: string;
  readonly grants: readonly Grant[] | null;
  readonly token: string | null;
  /** Of a person who signed in by name; null: the token of a post. */
  readonly refreshToken: string | null;
}

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
  private kept: Kept;
  private refreshing: Promise<boolean> | null = null;
  private readonly client = new ApiClient(() => this.kept.token);

  /** `page`: each page of this origin keeps a sign-in of its own. */
  constructor(
    private readonly page: 'office' | 'notebook',
    private readonly place: SessionPlace = inBrowser(page),
  ) {
    this.kept = readKept(place.kept);
    if (!place.isKnownOffline || !this.isThere) return;
    this.name.value = this.kept.name;
    this.grants.value = this.kept.grants;
  }

  get isThere(): boolean {
    return this.kept.token !== null;
  }

  /** What the journal calls this device when a person signs in on it. */
  get device(): string {
    return `${this.page} ${this.kept.deviceId.slice(-6)}`;
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
    this.keep({ name: this.name.value, grants });
    return null;
  }

  /** A person's token holds for a quarter of an hour; when it is over, it is made new once and the document sent again. */
  async send<T>(query: string, variables: Readonly<Record<string, unknown>>): Promise<Answer<T>> {
    const answer = await this.client.send<T>(query, variables);
    if (answer.ok || answer.failure.kind !== 'no-right' || this.kept.refreshToken === null) return answer;
    this.refreshing ??= this.refresh().finally(() => (this.refreshing = null));
    return (await this.refreshing) ? this.client.send<T>(query, variables) : answer;
  }

  /** A file of the server; null: there is none, or no answer. */
  paper(address: string): Promise<Blob | null> {
    return this.client.paper(address);
  }

  forget(): void {
    this.keep({ token: null, refreshToken: null, name: '', grants: null });
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

  private keep(change: Partial<Kept>): void {
    this.kept = { ...this.kept, ...change };
    this.place.keep(JSON.stringify(this.kept));
  }
}

/** Where the sign-in lies, as a text. */
export interface SessionPlace {
  readonly kept: string | null;
  readonly keep: (text: string) => void;
  /** Who was signed in still is when there is no network. */
  readonly isKnownOffline: boolean;
}

function inBrowser(page: string): SessionPlace {
  const name = `sectorline-${page}`;
  try {
    return {
      kept: localStorage.getItem(name),
      keep: (text) => localStorage.setItem(name, text),
      isKnownOffline: false,
    };
  } catch {
    // A browser that keeps nothing: whoever works here signs in again next time.
    return { kept: null, keep: () => undefined, isKnownOffline: false };
  }
}

const NOBODY = { token: null, refreshToken: null, name: '', grants: null };

function readKept(text: string | null): Kept {
  try {
    const kept = JSON.parse(text ?? 'null') as Partial<Kept> | null;
    if (typeof kept?.deviceId === 'string') return { deviceId: kept.deviceId, ...NOBODY, ...kept };
  } catch {
    // What cannot be read is as good as nothing.
  }
  return { deviceId: uuidV7(), ...NOBODY };
}
