import { meets } from '#persistence';
import type { Database } from '../platform/database/database.js';
import type { POSTS, Role } from '../platform/identity/grant.js';
import type { Tokens } from '../platform/identity/tokens.js';
import { globalId } from '../platform/inputs/global-id.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import { demoPeople, type DemoPerson } from './demo-people.js';
import type { DemoSeed } from './seed.js';

export type DemoState = 'absent' | 'unfinished' | 'loaded';

/**
 * The invented meet: loaded once, through the API. It makes its own ids, so a load that was cut short is simply run
 * again, and it publishes the meet last: a published demo is a whole one.
 */
export class Demo {
  readonly meetId: string;
  readonly competitionId: string;

  constructor(
    private readonly seed: DemoSeed,
    private readonly database: Database,
    private readonly organisationId: string,
    private readonly tokens: Tokens,
  ) {
    this.meetId = globalId('Meet', seed.DEMO.meetId);
    this.competitionId = globalId('Competition', seed.DEMO.runningCompetitionId);
  }

  async state(): Promise<DemoState> {
    const { organisationId, seed } = this;
    const meet = await this.database.read((at) => meets.find(at, organisationId, seed.DEMO.meetId));
    if (!meet) return 'absent';
    return meet.publishedAt === null ? 'unfinished' : 'loaded';
  }

  /** True: somebody keeps meets of their own here, and invented ones have no business among them. */
  async isUnwanted(): Promise<boolean> {
    const { organisationId } = this;
    const page = await this.database.read((at) => meets.page(at, organisationId, { first: 1 }));
    return page.edges.length > 0;
  }

  async load(baseUrl: string): Promise<void> {
    await this.seed.loadDemo(baseUrl, await this.token('admin', null));
  }

  /** Puts on record whom the demonstration's coach follows. */
  async enterSquad(baseUrl: string): Promise<void> {
    await this.seed.enterSquad(baseUrl, await this.token('admin', null));
  }

  /** Two seasons of the coach's squad: so many throws that nobody waits for them. */
  async loadSquad(baseUrl: string, people: readonly DemoPerson[], isOver: () => boolean): Promise<void> {
    const coach = people.find(({ loginName }) => loginName === 'demo.coach');
    if (!coach || isOver()) return;
    const coachToken = await signedIn(baseUrl, coach);
    await this.seed.loadSquad({ baseUrl, adminToken: await this.token('admin', null), coachToken, isOver });
  }

  /** One token for each post at the demo meet, new at every start. */
  async posts(): Promise<Readonly<Record<(typeof POSTS)[number], string>>> {
    const { meetId, runningCompetitionId } = this.seed.DEMO;
    return {
      director: await this.token('director', meetId),
      referee: await this.token('referee', meetId),
      official: await this.token('official', runningCompetitionId),
      admin: await this.token('admin', null),
    };
  }

  /** Who may sign in at the desk, each with a new password. Once the meet is there. */
  people(): Promise<readonly DemoPerson[]> {
    return demoPeople(this.database, this.organisationId, this.seed.DEMO);
  }

  private token(role: Role, on: string | null): Promise<string> {
    const untilS = Math.floor(Date.now() / 1000) + 30 * 24 * 60 * 60;
    const grants = [{ role, on, from: null, until: untilS }];
    return this.tokens.issue({
      holder: uuidV7(),
      organisationId: this.organisationId,
      grants,
      label: `demo ${role}`,
      isDemo: true,
    });
  }
}

const SIGN_IN = `mutation ($input: SignInInput!) { signIn(input: $input) { session { accessToken } } }`;

async function signedIn(baseUrl: string, { loginName, password }: DemoPerson): Promise<string> {
  const response = await fetch(`${baseUrl}/graphql`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ query: SIGN_IN, variables: { input: { loginName, password } } }),
  });
  const { data } = (await response.json()) as {
    data?: { signIn?: { session?: { accessToken: string } | null } };
  };
  const token = data?.signIn?.session?.accessToken;
  if (token === undefined) throw new Error('The demonstration’s coach could not sign in.');
  return token;
}
