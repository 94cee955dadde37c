import { startApi, type TestApi } from '../support/api.js';
import { enter, makeMeet, type MadeMeet } from '../support/made-meet.js';
import { readPdf } from '../support/read-pdf.js';

let api: TestApi;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.close());

const TERMS = `mutation ($input: MeetEntryTermsSetInput!) { meetEntryTermsSet(input: $input) {
  entryTerms { revision closesAt mostPerClub mostPerAthlete competitionLimits { competitionId mostPerClub } }
  userErrors { code path remedy }
} }`;
const ENTER = `mutation ($input: CompetitorEnterInput!) { competitorEnter(input: $input) {
  competitor { id bib } userErrors { code path remedy }
} }`;
const WITHDRAW = `mutation ($input: CompetitorWithdrawInput!) { competitorWithdraw(input: $input) {
  userErrors { code path }
} }`;
const CHANGES = `query ($id: ID!) { competition(id: $id) {
  entryChanges { kind bib athleteId isLate reason } startList { bib club }
} }`;

const [PAST, FUTURE] = ['2020-01-01T00:00:00Z', '2999-01-01T00:00:00Z'];

async function terms(meet: MadeMeet, input: object): Promise<any> {
  const revision = { meetId: meet.meetId, expectedRevision: 0 };
  return (await api.data(TERMS, { input: { ...revision, ...input } }, meet.director)).meetEntryTermsSet;
}

async function made(document: string, input: object): Promise<any> {
  return Object.values<any>(await api.data(document, { input }, api.adminToken))[0];
}

async function clubWith(name: string, count: number): Promise<{ clubId: string; athletes: string[] }> {
  const club = await made(
    'mutation ($input: ClubCreateInput!) { clubCreate(input: $input) { club { id } } }',
    { name },
  );
  const athletes: string[] = [];
  for (let at = 0; at < count; at += 1) {
    const who = { givenName: `Maud${at}`, familyName: name, sex: 'W', birthDate: '1999-02-11' };
    const { athlete } = await made(
      'mutation ($input: AthleteCreateInput!) { athleteCreate(input: $input) { athlete { id } } }',
      { ...who, clubId: club.club.id },
    );
    athletes.push(athlete.id);
  }
  return { clubId: club.club.id, athletes };
}

const codes = ({ userErrors }: any): string[] =>
  userErrors.map(({ code, path }: any) => `${code} ${path?.at(-1)}`);

async function another(meet: MadeMeet, title: string): Promise<string> {
  const { competition } = await made(
    'mutation ($input: CompetitionCreateInput!) { competitionCreate(input: $input) { competition { id } } }',
    { meetId: meet.meetId, title, event: 'SHOT' },
  );
  return competition.id;
}

/* Limits and closing times are a meet's own: common practice, no published source. */
describe('the terms of entry', () => {
  it('limit what a club and an athlete may, guests aside, and say what to do', async () => {
    const meet = await makeMeet(api);
    const shot = await another(meet, 'Shot women');
    const weight = await another(meet, 'Weight women');
    const { athletes } = await clubWith('Limit Lane', 3);
    const limits = [{ competitionId: shot, mostPerClub: 1 }];
    const set = await terms(meet, { mostPerClub: 2, mostPerAthlete: 2, competitionLimits: limits });
    expect(set.entryTerms).toMatchObject({ revision: 1, closesAt: null, competitionLimits: limits });
    const one = (athlete: number, competitionId: string, more: object = {}): Promise<any> =>
      enter(api, meet, {
        ...{ athleteId: athletes[athlete], listedName: null, bib: null, competitionId, ...more },
      });
    expect(codes(await one(0, meet.competitionId))).toEqual([]);
    expect(codes(await one(1, meet.competitionId))).toEqual([]);
    expect(codes(await one(2, meet.competitionId))).toEqual(['CLUB_FULL clubId']);
    expect(codes(await one(2, meet.competitionId, { isGuest: true }))).toEqual([]);
    expect(codes(await one(0, shot))).toEqual([]);
    expect(codes(await one(1, shot))).toEqual(['CLUB_FULL clubId']);
    expect(codes(await one(0, weight))).toEqual(['ATHLETE_FULL athleteId']);
    // Two at once for the one place that is left: the lock of the meet decides.
    const both = await Promise.all([one(1, shot), one(2, weight), one(1, weight)]);
    expect(both.flatMap(codes)).toEqual(['CLUB_FULL clubId']);
  });

  it('give everybody one bib at the meet, and the next number to who has none', async () => {
    const meet = await makeMeet(api);
    const shot = await another(meet, 'Shot women');
    const { athletes } = await clubWith('Number Lane', 2);
    const bibOf = async (athlete: number, competitionId: string, bib: string | null = null) =>
      (await enter(api, meet, { athleteId: athletes[athlete], listedName: null, bib, competitionId }))
        .competitor.bib;
    expect(await bibOf(0, meet.competitionId, '41')).toBe('41');
    expect(await bibOf(1, meet.competitionId)).toBe('42');
    expect(await bibOf(1, shot)).toBe('42');
    expect(await bibOf(0, shot)).toBe('41');
  });

  it('let coaches enter and withdraw whom they coach until the entries close', async () => {
    const meet = await makeMeet(api);
    const { athletes } = await clubWith('Coach Lane', 2);
    const coach = await api.token('coach', athletes[0]);
    const asCoach = async (input: object): Promise<any> =>
      (await api.data(ENTER, { input: { competitionId: meet.competitionId, ...input } }, coach))
        .competitorEnter;
    const own = { athleteId: athletes[0], seedMark: '41.20' };
    expect(codes(await asCoach(own))).toEqual(['NOT_FOUND competitionId']);
    await made('mutation ($input: MeetPublishInput!) { meetPublish(input: $input) { meet { id } } }', {
      meetId: meet.meetId,
    });
    expect(codes(await asCoach(own))).toEqual(['ENTRIES_NOT_OPEN competitionId']);
    await terms(meet, { closesAt: FUTURE });
    expect(codes(await asCoach({ ...own, bib: '1' }))).toEqual(['FOR_DIRECTORS bib']);
    const entered = await asCoach(own);
    expect([codes(entered), entered.competitor.bib]).toEqual([[], '1']);
    await expect(asCoach({ athleteId: athletes[1] })).rejects.toThrow('FORBIDDEN');
    const withdraw = async (token: string, reason: string | null = null): Promise<any> =>
      (await api.data(WITHDRAW, { input: { competitorId: entered.competitor.id, reason } }, token))
        .competitorWithdraw;
    expect(codes(await terms(meet, { closesAt: PAST }))).toEqual(['VERSION_CONFLICT expectedVersion']);
    await terms(meet, { closesAt: PAST, expectedRevision: 1 });
    expect(codes(await withdraw(coach))).toEqual(['ENTRIES_CLOSED competitionId']);
    expect(codes(await withdraw(meet.director))).toEqual(['LATE_REASON_MISSING reason']);
    expect(codes(await withdraw(meet.director, 'is ill'))).toEqual([]);
    const late = { athleteId: athletes[1], listedName: null, bib: null };
    expect(codes(await enter(api, meet, late))).toEqual(['LATE_REASON_MISSING reason']);
    expect(codes(await enter(api, meet, { ...late, reason: 'post got lost' }))).toEqual([]);
    const { competition } = await api.data(CHANGES, { id: meet.competitionId }, meet.director);
    expect(competition.entryChanges).toEqual([
      { kind: 'ENTERED', bib: '1', athleteId: athletes[0], isLate: false, reason: null },
      { kind: 'WITHDRAWN', bib: '1', athleteId: athletes[0], isLate: true, reason: 'is ill' },
      { kind: 'ENTERED', bib: '1', athleteId: athletes[1], isLate: true, reason: 'post got lost' },
    ]);
  });
});

describe('bibs of a whole meet', () => {
  const ASSIGN = `mutation ($input: BibsAssignInput!) { bibsAssign(input: $input) {
    bibs { bib name club before isFixed competitorIds } changedCount userErrors { code }
  } }`;

  it('are one for each, by club in blocks, and stay where a draw goes by them', async () => {
    const meet = await makeMeet(api);
    const shot = await another(meet, 'Shot women');
    const [one, two] = [await clubWith('Aspen Bibs', 2), await clubWith('Birch Bibs', 1)];
    const line = (athleteId: string | undefined, bib: string, competitionId = meet.competitionId) =>
      enter(api, meet, { athleteId, listedName: null, bib, competitionId });
    await line(two.athletes[0], '1');
    await line(one.athletes[0], '2');
    await line(one.athletes[1], '3');
    await line(two.athletes[0], '9', shot);
    await line(one.athletes[0], '1', shot);
    const assign = async (input: object): Promise<any> =>
      (await api.data(ASSIGN, { input: { meetId: meet.meetId, order: 'CLUB', ...input } }, meet.director))
        .bibsAssign;
    const inWords = ({ bibs }: any): string[] =>
      bibs.map(({ bib, name, before }: any) => `${name}: ${before.join('+')} to ${bib}`);
    const blocks = { from: 10, blockStep: 10, isKeeping: false };
    const preview = await assign({ ...blocks, isPreview: true });
    expect([inWords(preview), preview.changedCount]).toEqual([
      ['Maud0 Aspen Bibs: 2+1 to 10', 'Maud1 Aspen Bibs: 3 to 11', 'Maud0 Birch Bibs: 1+9 to 20'],
      5,
    ]);
    const bibsIn = async (id: string): Promise<string[]> =>
      (await api.data(CHANGES, { id }, meet.director)).competition.startList.map(({ bib }: any) => bib);
    expect(await bibsIn(shot)).toEqual(['9', '1']);
    expect((await assign(blocks)).changedCount).toBe(5);
    expect([await bibsIn(meet.competitionId), await bibsIn(shot)]).toEqual([
      ['20', '10', '11'],
      ['20', '10'],
    ]);
    expect((await assign({ isKeeping: true })).changedCount).toBe(0);
    const draw = `mutation ($input: StartListDrawInput!) { startListDraw(input: $input) { userErrors { code } } }`;
    const { startListDraw } = await api.data(
      draw,
      { input: { competitionId: shot, method: 'LOT', seed: 'Aspen', expectedVersion: 3 } },
      meet.director,
    );
    expect(startListDraw.userErrors).toEqual([]);
    const after = await assign({ isKeeping: false });
    expect(inWords(after)).toEqual([
      ...['Maud0 Aspen Bibs: 10 to 10', 'Maud1 Aspen Bibs: 11 to 1', 'Maud0 Birch Bibs: 20 to 20'],
    ]);
    // A figure by itself is higher than it is wide, most of all on the larger paper.
    for (const [paper, size] of Object.entries({ A5: [595, 420], A4: [842, 595] })) {
      const address = `${api.url}/print/meets/${meet.meetId}/bib-cards.pdf?paper=${paper}&lang=fi`;
      const pdf = await fetch(address, { headers: { authorization: `Bearer ${meet.director}` } });
      const read = await readPdf(await pdf.arrayBuffer());
      expect([read.title, read.size.map(Math.round)]).toEqual(['Kilpailunumerot: Evening of throws', size]);
      expect(read.pages).toEqual([
        ['1', 'Maud1 Aspen Bibs', 'Aspen Bibs'],
        ['10', 'Maud0 Aspen Bibs', 'Aspen Bibs'],
        ['20', 'Maud0 Birch Bibs', 'Birch Bibs'],
      ]);
    }
  });
});
