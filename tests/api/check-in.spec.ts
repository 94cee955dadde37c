import { randomUUID } from 'node:crypto';
import { startApi, type TestApi } from '../support/api.js';
import { Circle } from '../support/at-the-circle.js';
import { discusSheet } from '../support/circle.js';
import { Tent } from '../support/inspection.js';

let api: TestApi;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.close());

const COMPETITORS = [{ bib: '1', name: 'Odalys Thornwick', club: 'Heron' }, { bib: '2' }, { bib: '3' }];
const SHEET = discusSheet(3, { implementGrams: 1000, competitors: COMPETITORS });

async function open(): Promise<{ circle: Circle; tent: Tent }> {
  const circle = await Circle.open(api, SHEET);
  return { circle, tent: new Tent(api, circle) };
}

const LIST = `query ($id: ID!) { competition(id: $id) { version checkIn {
  competitor { bib club } name didNotStart current { isPresent isLate note } history { isPresent } implements { label status }
} } }`;

async function list({ competition, official }: Circle): Promise<any> {
  return (await api.data(LIST, { id: competition.id }, official)).competition;
}

describe('check-in', () => {
  it('lists everybody with the name in whole, and keeps every word about them', async () => {
    const { circle, tent } = await open();
    const competitorId = circle.competitorOf(1);
    const { version } = await list(circle);
    const first = await tent.call('competitorCheckIn', { competitorId, isPresent: true, device: 'Tent' });
    expect(first.line.current).toEqual({
      ...{ isPresent: true, isLate: false, note: null, authority: 'official', device: 'Tent' },
    });
    await tent.call('competitorCheckIn', { competitorId, isPresent: false, note: 'gone to the long jump' });
    await tent.call('competitorCheckIn', { competitorId, isPresent: true });
    const { checkIn, version: after } = await list(circle);
    expect(
      checkIn.map(({ competitor, name, current }: any) => [competitor.bib, name, current?.isPresent]),
    ).toEqual([
      ['1', 'Odalys Thornwick', true],
      ['2', '#2', undefined],
      ['3', '#3', undefined],
    ]);
    expect(checkIn[0].history.map(({ isPresent }: any) => isPresent)).toEqual([true, false, true]);
    // Nothing that the crowd reads has changed.
    expect(after).toBe(version);
  });

  it('takes who comes after the first trial, and says that it was late', async () => {
    const { circle, tent } = await open();
    await circle.record(1, 1, '50.00');
    const late = { competitorId: circle.competitorOf(2), isPresent: true, note: 'held up at the shot' };
    const { line, notices } = await tent.call('competitorCheckIn', late);
    expect([line.current.isLate, line.current.note, notices]).toEqual([
      true,
      'held up at the shot',
      ['LATE'],
    ]);
    const gone = await tent.call('competitorCheckIn', {
      competitorId: circle.competitorOf(1),
      isPresent: false,
    });
    expect([gone.line.current.isLate, gone.notices]).toEqual([false, ['HAS_TRIALS']]);
  });

  it('leaves a DNS to the journal, and says when it still stands', async () => {
    const { circle, tent } = await open();
    const competitorId = circle.competitorOf(3);
    await circle.enter('competitorStartSet', { competitorId, status: 'DNS' });
    const { line, notices } = await tent.call('competitorCheckIn', { competitorId, isPresent: true });
    expect([line.didNotStart, notices]).toEqual([true, ['MARKED_DNS']]);
  });

  it('may be sent again, and many at once are all kept', async () => {
    const { circle, tent } = await open();
    const input = { id: randomUUID(), competitorId: circle.competitorOf(1), isPresent: true };
    await tent.call('competitorCheckIn', input);
    expect(await tent.call('competitorCheckIn', input)).toMatchObject({ isReplay: true });
    const other = await tent.call('competitorCheckIn', { ...input, isPresent: false });
    expect(other.userErrors).toMatchObject([{ code: 'ID_REUSED' }]);
    const { id: _, ...again } = input;
    await Promise.all(Array.from({ length: 8 }, () => tent.call('competitorCheckIn', again)));
    expect((await list(circle)).checkIn[0].history).toHaveLength(9);
  });

  it('keeps the line of a competitor about whom it has written', async () => {
    const { circle, tent } = await open();
    const competitorId = circle.competitorOf(2);
    await tent.call('competitorCheckIn', { competitorId, isPresent: true });
    const { competitorWithdraw } = await api.data(
      `mutation ($input: CompetitorWithdrawInput!) { competitorWithdraw(input: $input) { userErrors { code path remedy } } }`,
      { input: { competitorId } },
      circle.director,
    );
    expect(competitorWithdraw.userErrors).toMatchObject([
      { code: 'CHECKED_IN', path: ['input', 'competitorId'] },
    ]);
  });

  it('shows beside each the own implements and those of the club', async () => {
    const { circle, tent } = await open();
    const made = await api.data(
      `mutation ($name: String!) {
         clubCreate(input: { name: $name }) { club { id } }
         athleteCreate(input: { givenName: "Ilka", familyName: "Brandis", sex: W }) { athlete { id } }
       }`,
      { name: `Otter Throws ${randomUUID()}` },
      circle.director,
    );
    const clubId = made.clubCreate.club.id;
    const entry = { competitionId: circle.competition.id, clubId, bib: '9' };
    const { competitorEnter } = await api.data(
      `mutation ($input: CompetitorEnterInput!) { competitorEnter(input: $input) { competitor { id } } }`,
      { input: { ...entry, athleteId: made.athleteCreate.athlete.id } },
      circle.director,
    );
    await tent.passed({ label: 'own', competitorId: competitorEnter.competitor.id });
    await tent.register({ label: 'of the club', clubId });
    await tent.register({ label: 'a shot', event: 'SHOT', grams: 4000, clubId });
    const { checkIn } = await list(circle);
    expect(checkIn.map((line: any) => line.implements)).toEqual([
      [],
      [],
      [],
      [
        { label: 'of the club', status: 'NOT_INSPECTED' },
        { label: 'own', status: 'PASSED' },
      ],
    ]);
  });

  it('is read and written by those who work at the competition', async () => {
    const { circle, tent } = await open();
    const stranger = await Circle.open(api, SHEET, circle.meet);
    const input = { competitorId: circle.competitorOf(1), isPresent: true };
    const codeOf = ({ errors }: any): string | undefined => errors?.[0]?.extensions.code;
    expect(codeOf(await tent.send('competitorCheckIn', input, stranger.official))).toBe('FORBIDDEN');
    const read = (token: string | null) => api.send(LIST, { id: circle.competition.id }, token);
    expect(codeOf(await read(stranger.official))).toBe('FORBIDDEN');
    expect(codeOf(await read(null))).toBe('UNAUTHENTICATED');
    expect(codeOf(await read(circle.referee))).toBeUndefined();
  });
});

const CALL_LIST = `query ($id: ID!) { competition(id: $id) { version callList {
  name handedness isUnmatched competitor { id bib club displayName flight } alsoEntered { title }
} } }`;

async function callList({ competition, official }: Circle): Promise<any[]> {
  return (await api.data(CALL_LIST, { id: competition.id }, official)).competition.callList;
}

describe('somebody whom nobody knows', () => {
  const add = (circle: Circle, bib: string, entryId: string = randomUUID()): Promise<any> =>
    circle.enter('competitorAdd', { entryId, bib, listedName: 'Runa Askvold', listedClub: 'Tarn Valley' });
  const idOf = (entryId: string): string => Buffer.from(`Competitor:${entryId}`).toString('base64url');

  it('is entered at the circle under the id of the entry, last in the order, and can go on at once', async () => {
    const { circle } = await open();
    await circle.recordCard(['50.00'], ['51.00'], ['52.00']);
    const entryId = randomUUID();
    expect((await add(circle, '3', entryId)).entry).toMatchObject({ standing: 'ACCEPTED' });
    // The bib is worn already; the same entry again is the same competitor.
    expect(await add(circle, '3', entryId)).toMatchObject({ isReplay: true });
    const { entry } = await circle.enter('attemptRecord', {
      ...{ competitorId: idOf(entryId), round: 1, outcome: 'VALID', mark: '60.00' },
    });
    expect(entry).toMatchObject({ standing: 'ACCEPTED' });
    expect((await callList(circle)).at(-1)).toMatchObject({
      ...{ name: 'Runa Askvold', isUnmatched: true },
      competitor: { bib: '3/2', club: 'Tarn Valley', displayName: 'R. A.' },
    });
    expect((await circle.places())[0]).toBe('3/2 1. 60.00');
    const bodies = (await circle.journal()).map(({ body }: any) => body);
    expect(JSON.stringify(bodies)).not.toContain('Askvold');
  });

  it('is matched by the director, before the result is signed', async () => {
    const { circle } = await open();
    const entryId = randomUUID();
    await add(circle, '77', entryId);
    const sign = async () => {
      const { competition } = await circle.enter('noteRecord', {
        ...{ about: 'MEASURING', text: 'tape changed', seenAt: '2026-06-13T12:00:00Z' },
      });
      const input = { incomplete: 'light failed', expectedVersion: competition.version };
      return circle.enter('competitionSignOff', input, circle.referee);
    };
    expect((await sign()).userErrors).toMatchObject([{ code: 'UNMATCHED' }]);
    const { athleteCreate } = await api.data(
      `mutation { athleteCreate(input: { givenName: "Runa", familyName: "Askvold", sex: W, handedness: LEFT }) { athlete { id handedness } } }`,
      {},
      api.adminToken,
    );
    const { id: athleteId } = athleteCreate.athlete;
    const match = (more: object) =>
      circle.enter('competitorMatch', { competitorId: idOf(entryId), ...more }, circle.director);
    const nobody = Buffer.from(`Athlete:${randomUUID()}`).toString('base64url');
    expect((await match({ athleteId: nobody })).userErrors).toMatchObject([{ code: 'NOT_FOUND' }]);
    expect((await match({ athleteId })).userErrors).toEqual([]);
    expect((await match({ athleteId })).userErrors).toMatchObject([{ code: 'ALREADY_MATCHED' }]);
    expect((await callList(circle)).at(-1)).toMatchObject({
      ...{ name: 'Runa Askvold', handedness: 'LEFT', isUnmatched: false },
      competitor: { club: 'Tarn Valley' },
    });
    expect((await sign()).userErrors).toEqual([]);
    const other = await Circle.open(api, SHEET, circle.meet);
    await other.enter('competitorAdd', { entryId: randomUUID(), bib: '9', listedName: 'R. Askvold' });
    const [line] = (await callList(other)).slice(-1);
    const input = { competitorId: line.competitor.id, athleteId };
    await other.enter('competitorMatch', input, other.director);
    expect((await callList(circle)).at(-1).alsoEntered).toEqual([{ title: 'Test' }]);
  });

  it('has no id that somebody has already', async () => {
    const { circle } = await open();
    const taken = Buffer.from(circle.competitorOf(1), 'base64url').toString().split(':')[1]!;
    expect((await add(circle, '88', taken)).userErrors).toMatchObject([{ code: 'ID_REUSED' }]);
    expect(await callList(circle)).toHaveLength(3);
  });
});

describe('a start list in use', () => {
  it('has its bibs put right without moving a trial', async () => {
    const { circle } = await open();
    await circle.recordCard(['50.00'], ['51.00']);
    const bibs = [
      { competitorId: circle.competitorOf(1), bib: '2' },
      { competitorId: circle.competitorOf(2), bib: '1' },
    ];
    const { entry } = await circle.enter('bibsSet', { bibs, reason: 'swapped in the call room' });
    expect(entry).toMatchObject({ standing: 'ACCEPTED' });
    expect(await circle.places()).toEqual(['1 1. 51.00', '2 2. 50.00', '3 -']);
    const taken = { bibs: [{ competitorId: circle.competitorOf(3), bib: '1' }], reason: 'read again' };
    expect((await circle.enter('bibsSet', taken)).userErrors).toMatchObject([
      { code: 'BIB_TAKEN', path: ['input', 'bibs'] },
    ]);
  });

  it('lets somebody go last in another flight before the first trial', async () => {
    const flights = ['A', 'A', 'B', 'B'].map((flight, at) => ({ bib: String(at + 1), flight }));
    const circle = await Circle.open(api, discusSheet(4, { competitors: flights }));
    const move = (bib: number) =>
      circle.enter('competitorFlightSet', {
        ...{ competitorId: circle.competitorOf(bib), flight: 'B', reason: 'was at the long jump' },
      });
    expect((await move(1)).entry).toMatchObject({ standing: 'ACCEPTED' });
    const list = (await callList(circle)).map(({ competitor }) => `${competitor.bib}${competitor.flight}`);
    expect(list).toEqual(['2A', '3B', '4B', '1B']);
    await circle.record(2, 1, '50.00');
    expect((await move(2)).userErrors).toMatchObject([
      { code: 'HAS_TRIALS', path: ['input', 'competitorId'] },
    ]);
  });

  it('calls who is away last, and keeps what was written down beside the trials', async () => {
    const { circle } = await open();
    const away = { competitorId: circle.competitorOf(1), to: 'Long jump', until: '2026-06-13T12:20:00Z' };
    await circle.enter('competitorExcuse', away);
    expect((await circle.read()).progress.up).toMatchObject({ bib: '2' });
    await circle.enter('cardSign', { remark: 'wet circle' });
    const kinds = (await circle.journal()).map(({ kind, body }: any) => [kind, body.to ?? body.remark]);
    expect(kinds).toEqual([
      ['excuse', 'Long jump'],
      ['card-signed', 'wet circle'],
    ]);
  });
});
