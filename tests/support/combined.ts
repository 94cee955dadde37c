import { expect } from '@jest/globals';
import { randomUUID } from 'node:crypto';
import type { ApiClient } from './client.js';
import type { StaffedMeet } from './circle.js';

const PAYLOAD = `
  entry { id sequence standing notices hold { code message rule remedy } }
  isReplay
  combinedEvent { id version status }
  userErrors { code message path rule remedy ... on VersionConflict { currentVersion } }`;

const STANDING = `query ($id: ID!) { combinedEvent(id: $id) {
  version status sheet result
  components { event position source progress hasWind competition { id } problems { code bib } }
  standing { version isOfficial isProvisional isComplete isDisputed differsFromSigned
    rows { entrant bib name club place isEqual total status decidedBy reason reasonRule isWindValidForRecords
      results { event outcome mark timing wind points isEntered isProvisional runningTotal placeAfter }
      wind { mean isLegal reason rule } }
    stages { event rows { entrant total place isEqual points } } }
} }`;

/* What an answer or a row is expected to be. */

export const refused = (code: string, ...path: string[]): object =>
  expect.objectContaining({
    entry: null,
    userErrors: [expect.objectContaining({ code, path: path.length > 0 ? ['input', ...path] : null })],
  });
export const held = (code: string): object =>
  expect.objectContaining({
    entry: expect.objectContaining({ standing: 'HELD', hold: expect.objectContaining({ code }) }),
    userErrors: [],
  });
export const rowOf = ({ standing }: any, bib: string): any =>
  standing.rows.find((row: any) => row.bib === bib);

/** A combined event of a staffed meet, as tests use it. */
export class CombinedScene {
  private constructor(
    readonly api: ApiClient,
    readonly meet: StaffedMeet,
    readonly id: string,
    /** Ids by bib. */
    readonly entrants: Readonly<Record<string, string>>,
  ) {}

  /** A heptathlon with entrants of these bibs, or what `changes` say. */
  static async open(
    api: ApiClient,
    meet: StaffedMeet,
    bibs: readonly string[] = ['1', '2', '3'],
    changes: object = {},
  ): Promise<CombinedScene> {
    const { combinedEvent } = await call(api, meet.director, 'combinedEventCreate', {
      meetId: meet.id,
      title: 'Heptathlon women',
      programme: 'HEPTATHLON',
      ...changes,
    });
    const entrants: Record<string, string> = {};
    for (const bib of bibs) {
      const entered = await call(api, meet.director, 'combinedEntrantEnter', {
        ...{
          combinedEventId: combinedEvent.id,
          listedName: `Runa Fieldmark ${bib}`,
          bib,
          isGuest: bib === 'G',
        },
        listedClub: `Club ${bib}`,
      });
      entrants[bib] = entered.entrantId;
    }
    return new CombinedScene(api, meet, combinedEvent.id, entrants);
  }

  /** An entry into the journal of a combined event that was made in another way. */
  static enterIn(
    api: ApiClient,
    meet: StaffedMeet,
    id: string,
    mutation: string,
    input: object,
  ): Promise<any> {
    return new CombinedScene(api, meet, id, {}).enter(mutation, input);
  }

  /** Calls one mutation of the journal and gives its payload; the entry gets an id unless it has one. */
  async enter(mutation: string, input: object, token = this.meet.referee): Promise<any> {
    return call(
      this.api,
      token,
      mutation,
      { combinedEventId: this.id, entryId: randomUUID(), ...input },
      PAYLOAD,
    );
  }

  /** A time like `13.04 +1.2`, or `DNS`, `DNF`, `DQ`. */
  async time(
    bib: string,
    event: string,
    written: string,
    token = this.meet.referee,
    more = {},
  ): Promise<any> {
    const [first = '', wind] = written.split(' ');
    const isTime = /^\d/.test(first);
    const judged = isTime ? { outcome: 'FINISHED', time: first, wind: wind ?? null } : { outcome: first };
    const input = { entrantId: this.entrants[bib], event, ...judged, ...more };
    return this.enter('combinedTimeRecord', input, token);
  }

  /** A mark like `1.77` or `5.99 +1.0`, or `NM`, `DNS`, `DQ`. */
  async mark(bib: string, event: string, written: string): Promise<any> {
    const [first = '', wind] = written.split(' ');
    const isMark = /^\d/.test(first);
    const judged = isMark ? { outcome: 'VALID', mark: first, wind: wind ?? null } : { outcome: first };
    return this.enter('combinedMarkRecord', { entrantId: this.entrants[bib], event, ...judged });
  }

  async link(event: string, competitionId: string | null, token = this.meet.director): Promise<any> {
    return call(this.api, token, 'combinedComponentLink', { combinedEventId: this.id, event, competitionId });
  }

  async read(token: string | null = null): Promise<any> {
    return (await this.api.data(STANDING, { id: this.id }, token)).combinedEvent;
  }

  async version(): Promise<number> {
    return (await this.read(this.meet.director)).version;
  }
}

const SETUP: Readonly<Record<string, string>> = {
  combinedEventCreate: 'combinedEvent { id version status } isReplay userErrors { code path message remedy }',
  combinedEntrantEnter:
    'entrantId combinedEvent { id version } isReplay userErrors { code path message remedy }',
  combinedEntrantWithdraw: 'combinedEvent { id version } userErrors { code path message remedy }',
  combinedComponentLink: 'combinedEvent { id version } userErrors { code path message remedy }',
};

export async function call(
  api: ApiClient,
  token: string | null,
  mutation: string,
  input: object,
  selection = SETUP[mutation]!,
): Promise<any> {
  const type = `${mutation[0]?.toUpperCase()}${mutation.slice(1)}Input`;
  const document = `mutation ($input: ${type}!) { ${mutation}(input: $input) { ${selection} } }`;
  return (await api.data(document, { input }, token))[mutation];
}
