import type { ApiClient } from './client.js';
import {
  attemptOf,
  enterInJournal,
  staffedCompetition,
  staffedMeet,
  type StaffedCompetition,
  type StaffedMeet,
} from './circle.js';

const READ = `query ($id: ID!) { competition(id: $id) {
  version status
  table {
    version isOfficial isDisputed changedAt
    rows { bib place isEqual mark status decidedBy reason reasonRule qualified
           series { entry round cell wind isWindPending foul protestedMark } }
    rowsIfProtestsSucceed { bib place }
  }
  progress { phase round remaining up { bib round } next { bib round } then { bib round } }
  needed { bib place round barrier places { place mark isShared rivalBest equalMark } cut { isIn mark isEqualEnough } }
  questions { entry about holdCode body }
} }`;

const JOURNAL = `query ($id: ID!, $first: Int!, $after: String) { competition(id: $id) {
  journal(first: $first, after: $after) {
    edges { cursor node { id sequence kind body standing holdCode authority actor device deviceAt recordedAt } }
    pageInfo { hasNextPage hasPreviousPage endCursor }
  }
} }`;

/** One competition and what those who work at it do and read there, over HTTP. */
export class Circle {
  private constructor(
    readonly api: ApiClient,
    readonly meet: StaffedMeet,
    readonly competition: StaffedCompetition,
  ) {}

  /** A competition of its own, from the start list of a sheet; by default three discus throwers. */
  static async open(api: ApiClient, sheet?: object, meet?: StaffedMeet): Promise<Circle> {
    const where = meet ?? (await staffedMeet(api));
    return new Circle(api, where, await staffedCompetition(api, where, sheet));
  }

  get official(): string {
    return this.competition.official;
  }

  get referee(): string {
    return this.meet.referee;
  }

  get director(): string {
    return this.meet.director;
  }

  competitorOf(bib: number): string {
    const id = this.competition.competitors[bib];
    if (id === undefined) throw new Error(`Nobody has bib ${bib}.`);
    return id;
  }

  /** Makes one entry, as the official unless a token says otherwise; the whole payload. */
  enter(mutation: string, input: object, token: string | null = this.official): Promise<any> {
    return enterInJournal(this.api, token, mutation, { competitionId: this.competition.id, ...input });
  }

  /** Records what a cell of a field card says. */
  record(bib: number, round: number, cell: string, more: object = {}, token?: string): Promise<any> {
    const input = { competitorId: this.competitorOf(bib), round, ...attemptOf(cell), ...more };
    return this.enter('attemptRecord', input, token);
  }

  /** Records rounds of several competitors, round by round; `series[0]` is of bib 1. Gives the entries' ids. */
  async recordCard(...series: readonly (readonly string[])[]): Promise<string[][]> {
    const ids: string[][] = series.map(() => []);
    const rounds = Math.max(...series.map((cells) => cells.length));
    for (let round = 1; round <= rounds; round++) {
      for (const [index, cells] of series.entries()) {
        const cell = cells[round - 1];
        if (cell === undefined) continue;
        const { entry, userErrors } = await this.record(index + 1, round, cell);
        if (entry?.standing !== 'ACCEPTED') throw new Error(JSON.stringify({ entry, userErrors }));
        ids[index]!.push(entry.id);
      }
    }
    return ids;
  }

  /** Everything that is shown of the competition. */
  async read(token: string | null = this.official): Promise<any> {
    return (await this.api.data(READ, { id: this.competition.id }, token)).competition;
  }

  /** Bib, place and mark of every row of the table, e.g. `["2 1. 61.10", "1 2. 58.10", "3 - NM"]`. */
  async places(): Promise<string[]> {
    const { table } = await this.read();
    return table.rows.map(({ bib, place, mark, status }: any) =>
      `${bib} ${place === null ? '-' : `${place}.`} ${mark ?? status ?? ''}`.trim(),
    );
  }

  /** The series of one competitor as a card has it. */
  async seriesOf(bib: number): Promise<string[]> {
    const { table } = await this.read();
    return table.rows.find((row: any) => row.bib === String(bib)).series.map(({ cell }: any) => cell);
  }

  async journalPage(
    first: number,
    after: string | null = null,
    token: string | null = this.official,
  ): Promise<any> {
    const answer = await this.api.data(JOURNAL, { id: this.competition.id, first, after }, token);
    return answer.competition.journal;
  }

  /** The whole journal, read page by page. */
  async journal(pageSize = 100): Promise<any[]> {
    const entries: any[] = [];
    for (let after: string | null = null; ; ) {
      const { edges, pageInfo } = await this.journalPage(pageSize, after);
      entries.push(...edges.map(({ node }: any) => node));
      if (!pageInfo.hasNextPage) return entries;
      after = pageInfo.endCursor;
    }
  }
}
