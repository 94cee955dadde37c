import { randomUUID } from 'node:crypto';
import type { ApiClient } from './client.js';
import { Circle } from './at-the-circle.js';
import { Bar } from './at-the-bar.js';
import { staffedMeet, type StaffedMeet } from './circle.js';

const LINES = `lines { group bib place isEqual mark qualified status isThrough isLevelForLast reason }`;

const READ = `query ($id: ID!) { meet(id: $id) { qualifications {
  id title standard fill groups { id status } final { id title }
  table { isProvisional isDisputed byStandard byPerformance rule ${LINES} }
} } }`;

const CREATE = `mutation ($input: QualificationCreateInput!) { qualificationCreate(input: $input) {
  qualification { id title standard fill } isReplay userErrors { code path message }
} }`;

const FINAL = `mutation ($input: QualificationFinalDrawInput!) { qualificationFinalDraw(input: $input) {
  order isReplay userErrors { code path message rule remedy }
  draw { id number seed isAsDrawn isInForce reason entries { bib } flights { bibs } }
  final { id title stage event status startList { bib displayName club isGuest flight implementGrams } }
} }`;

/** The sheet of one group in the hammer: bibs from `first` on. */
export function groupSheet(first: number, count: number, changes: object = {}): object {
  const competitors = Array.from({ length: count }, (_, at) => ({
    bib: String(first + at),
    name: `Nobody ${first + at}`,
    club: `Club ${at % 2}`,
  }));
  const qualifying = { standard: '60.00', fill: 4 };
  const head = { format: 'sectorline-sheet/1', rules: 'WA', event: 'hammer', stage: 'qualification' };
  return { ...head, qualifying, competitors, ...changes };
}

/** The groups of one qualification at a meet of their own. */
export class Groups {
  private constructor(
    readonly api: ApiClient,
    readonly meet: StaffedMeet,
    readonly circles: readonly Circle[],
    readonly id: string,
  ) {}

  static async open(api: ApiClient, sheets: readonly object[], input: object = {}): Promise<Groups> {
    const meet = await staffedMeet(api);
    const circles: Circle[] = [];
    for (const sheet of sheets) circles.push(await Circle.open(api, sheet, meet));
    const competitionIds = circles.map(({ competition }) => competition.id);
    const made = await create(api, meet, { competitionIds, ...input });
    if (!made.qualification) throw new Error(JSON.stringify(made.userErrors));
    return new Groups(api, meet, circles, made.qualification.id);
  }

  /** Of the group at this place, from 0. */
  circle(at: number): Circle {
    return this.circles[at]!;
  }

  /** A bar of the group, where there is one. */
  bar(at: number): Bar {
    return Bar.at(this.circle(at));
  }

  /** Records series by bib in a group, competitor by competitor. */
  async record(at: number, series: Readonly<Record<number, readonly string[]>>): Promise<void> {
    for (const [bib, cells] of Object.entries(series)) {
      for (const [index, cell] of cells.entries()) {
        const { entry, userErrors } = await this.circle(at).record(Number(bib), index + 1, cell);
        if (entry?.standing !== 'ACCEPTED') throw new Error(JSON.stringify({ bib, cell, entry, userErrors }));
      }
    }
  }

  async signOff(...groups: readonly number[]): Promise<void> {
    for (const at of groups) {
      const circle = this.circle(at);
      const { version: expectedVersion } = await circle.read();
      const { userErrors } = await circle.enter(
        'competitionSignOff',
        { expectedVersion, incomplete: 'all have enough' },
        this.meet.referee,
      );
      if (userErrors.length > 0) throw new Error(JSON.stringify(userErrors));
    }
  }

  async read(token: string | null = null): Promise<any> {
    const { meet } = await this.api.data(READ, { id: this.meet.id }, token);
    return meet.qualifications.find(({ id }: any) => id === this.id);
  }

  /** Place, bib, mark and how they go on, e.g. `1 12 61.00 Q`. */
  async lines(): Promise<string[]> {
    const { table } = await this.read();
    return table.lines.map(({ place, bib, mark, qualified, status }: any) =>
      [place ?? '-', bib, mark ?? status, qualified].filter((part) => part !== null).join(' '),
    );
  }

  async drawFinal(input: object = {}, token = this.meet.director): Promise<any> {
    const asked = { id: randomUUID(), qualificationId: this.id, seed: 'hammer final', ...input };
    return (await this.api.data(FINAL, { input: asked }, token)).qualificationFinalDraw;
  }
}

/** The whole payload. */
export async function create(api: ApiClient, meet: StaffedMeet, input: object): Promise<any> {
  const given = { meetId: meet.id, title: 'Hammer, women', ...input };
  return (await api.data(CREATE, { input: given }, meet.director)).qualificationCreate;
}
