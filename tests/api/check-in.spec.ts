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
