import { randomUUID } from 'node:crypto';
import { startApi, type TestApi } from '../support/api.js';
import { Circle } from '../support/at-the-circle.js';
import { highJumpSheet } from '../support/at-the-bar.js';
import { discusSheet } from '../support/circle.js';
import { create, Groups, groupSheet } from '../support/groups.js';

let api: TestApi;
beforeAll(async () => {
  api = await startApi();
});
afterAll(() => api.close());

const codes = ({ userErrors }: any): string[] => userErrors.map(({ code }: any) => code);

/** Two groups in which one has the standard, and three are filled up with. */
async function twoGroups(): Promise<Groups> {
  const groups = await Groups.open(api, [groupSheet(1, 3), groupSheet(11, 3)]);
  await groups.record(0, { 1: ['61.00'], 2: ['55.00', '50.00'], 3: ['54.00'] });
  await groups.record(1, { 11: ['56.00'], 12: ['57.00'], 13: ['X', 'X', 'X'] });
  return groups;
}

describe('a qualification in groups', () => {
  it('is one table over all of them, with who goes on and why', async () => {
    const groups = await twoGroups();
    expect(await groups.lines()).toEqual([
      '1 1 61.00 Q',
      '2 12 57.00 q',
      '3 11 56.00 q',
      '4 2 55.00 q',
      '5 3 54.00',
      '- 13 NM',
    ]);
    const { standard, fill, table } = await groups.read();
    expect([standard, fill, table.byStandard, table.byPerformance]).toEqual(['60.00', 4, 1, 3]);
    expect(table.rule).toBe('WA TR25.9-25.16');
    expect(table.lines.map(({ reason }: any) => reason).slice(0, 5)).toEqual([
      'Reached the standard of 60.00 with 61.00.',
      '2nd over all groups with 57.00, among the best 4.',
      '3rd over all groups with 56.00, among the best 4.',
      '4th over all groups with 55.00, among the best 4.',
      '5th over all groups with 54.00; the last who goes on has 55.00.',
    ]);
  });

  it('is provisional until every group is signed off', async () => {
    const groups = await twoGroups();
    await groups.signOff(0);
    expect((await groups.read()).table.isProvisional).toBe(true);
    await groups.signOff(1);
    expect((await groups.read()).table).toMatchObject({ isProvisional: false, isDisputed: false });
  });

  it('takes on all who are level for the last place, and whom referee, jury or a draw admit', async () => {
    const groups = await Groups.open(api, [groupSheet(1, 3), groupSheet(11, 3)]);
    await groups.record(0, { 1: ['56.00'], 2: ['56.00'], 3: ['X'] });
    await groups.record(1, { 11: ['57.00'], 12: ['58.00'], 13: ['56.00'] });
    const admission = { competitorId: groups.circle(0).competitorOf(3), by: 'JURY', reason: 'was hindered' };
    await groups.circle(0).enter('competitorAdmit', admission, groups.meet.referee);
    expect(await groups.lines()).toEqual([
      '1 12 58.00 q',
      '2 11 57.00 q',
      '3 1 56.00 q',
      '3 2 56.00 q',
      '3 13 56.00 q',
      '- 3 NM qJ',
    ]);
    const { table } = await groups.read();
    expect(
      table.lines.filter(({ isLevelForLast }: any) => isLevelForLast).map(({ bib }: any) => bib),
    ).toEqual(['1', '2', '13']);
    expect(table.lines.at(-1).reason).toBe('Admitted by the jury.');
  });

  // WA TR25.9-25.16 (from memory): who has reached the standard takes no further trial.
  it('holds a trial of somebody who has reached the standard, by the rule and with what to do', async () => {
    const groups = await twoGroups();
    const { entry } = await groups.circle(0).record(1, 2, '62.00');
    expect(entry).toMatchObject({
      standing: 'HELD',
      hold: { code: 'AFTER_STANDARD', rule: 'WA TR25.9-25.16', remedy: expect.stringContaining('dismisses') },
    });
    expect((await groups.lines())[0]).toBe('1 1 61.00 Q');
    expect((await groups.read()).table.isDisputed).toBe(true);
    expect(codes(await groups.drawFinal({ finalTitle: 'Final', reason: 'light fails' }))).toEqual([
      'QUESTIONS_OPEN',
    ]);
  });

  it('is found from its meet and its competitions, which belong to no other', async () => {
    const groups = await twoGroups();
    const ask = 'query ($id: ID!) { competition(id: $id) { qualification { id } } }';
    const { competition } = await api.data(ask, { id: groups.circle(1).competition.id });
    expect(competition.qualification).toEqual({ id: groups.id });
    const competitionIds = [groups.circle(1).competition.id];
    expect(codes(await create(api, groups.meet, { competitionIds }))).toEqual(['GROUP_TWICE']);
    const dissolve = `mutation ($input: QualificationDissolveInput!) {
      qualificationDissolve(input: $input) { qualificationId userErrors { code } } }`;
    const gone = await api.data(dissolve, { input: { qualificationId: groups.id } }, groups.meet.director);
    expect(gone.qualificationDissolve).toEqual({ qualificationId: groups.id, userErrors: [] });
    expect(codes(await create(api, groups.meet, { competitionIds }))).toEqual([]);
  });

  it('is not made of what does not belong together', async () => {
    const group = await Circle.open(api, groupSheet(1, 2));
    const other = (sheet: object): Promise<Circle> => Circle.open(api, sheet, group.meet);
    const differing = await other(groupSheet(11, 2, { qualifying: { standard: '60.00', fill: 5 } }));
    const harder = await other(groupSheet(11, 2, { qualifying: { standard: '61.00', fill: 4 } }));
    const final = await other(discusSheet(2));
    const elsewhere = await Circle.open(api, groupSheet(11, 2));
    const withGroup = (id: string, more: object = {}): Promise<any> =>
      create(api, group.meet, { competitionIds: [group.competition.id, id], ...more });
    for (const [circle, wanted] of [
      [differing, ['DIFFERS']],
      [harder, ['DIFFERS']],
      [final, ['NOT_A_QUALIFICATION', 'DIFFERS', 'DIFFERS', 'DIFFERS']],
      [elsewhere, ['NOT_FOUND']],
      [group, ['GROUP_TWICE']],
    ] as const)
      expect(codes(await withGroup(circle.competition.id))).toEqual(wanted);
    const sound = await other(groupSheet(11, 2));
    const asFinal = { finalId: final.competition.id };
    expect(codes(await withGroup(sound.competition.id, asFinal))).toEqual(['FINAL_DIFFERS']);
    const id = randomUUID();
    expect(await withGroup(sound.competition.id, { id })).toMatchObject({ isReplay: false, userErrors: [] });
    expect(await withGroup(sound.competition.id, { id })).toMatchObject({ isReplay: true, userErrors: [] });
    expect(codes(await withGroup(sound.competition.id, { id, title: 'other' }))).toEqual(['ID_REUSED']);
  });
});

describe('the final of a qualification', () => {
  it('is drawn anew of those who go on once all groups are signed off', async () => {
    const groups = await twoGroups();
    expect((await groups.drawFinal({ finalTitle: 'Hammer, final' })).userErrors).toMatchObject([
      { code: 'GROUPS_OPEN', rule: 'WA TR25.9-25.16', remedy: expect.stringContaining('sign them off') },
    ]);
    await groups.signOff(0, 1);
    const id = randomUUID();
    const drawn = await groups.drawFinal({ id, finalTitle: 'Hammer, final' });
    expect(drawn.userErrors).toEqual([]);
    expect(drawn.order.toSorted()).toEqual(['1', '11', '12', '2']);
    expect(drawn.draw).toMatchObject({ number: 1, isAsDrawn: true, flights: [{ bibs: drawn.order }] });
    expect(drawn.final).toMatchObject({
      title: 'Hammer, final',
      stage: 'FINAL',
      event: 'HAMMER',
      status: 'DRAFT',
    });
    expect(drawn.final.startList.map(({ bib }: any) => bib)).toEqual(drawn.order);
    expect(drawn.final.startList.find(({ bib }: any) => bib === '12')).toEqual({
      ...{
        bib: '12',
        displayName: 'N. 1.',
        club: 'Club 1',
        isGuest: false,
        flight: null,
        implementGrams: null,
      },
    });
    const again = await groups.drawFinal({ id, finalTitle: 'Hammer, final' });
    expect([again.isReplay, again.draw, again.final.id]).toEqual([true, drawn.draw, drawn.final.id]);
    expect(codes(await groups.drawFinal({ id, seed: 'another' }))).toEqual(['ID_REUSED']);
    expect((await groups.read()).final).toEqual({ id: drawn.final.id, title: 'Hammer, final' });
  });

  it('asked for by two at the same moment is set up and drawn once', async () => {
    const groups = await twoGroups();
    const asked = { finalTitle: 'Hammer, final', reason: 'light fails' };
    const two = await Promise.all([groups.drawFinal(asked), groups.drawFinal(asked)]);
    expect(two.flatMap(codes)).toEqual(['FINAL_SET']);
    const ask = 'query ($id: ID!) { meet(id: $id) { competitions { title stage } } }';
    const { meet } = await api.data(ask, { id: groups.meet.id });
    expect(meet.competitions.filter(({ stage }: any) => stage === 'FINAL')).toHaveLength(1);
  });

  it('can be drawn before that with a reason, and a preview stores nothing', async () => {
    const groups = await twoGroups();
    const early = { finalTitle: 'Final', reason: 'light fails' };
    const preview = await groups.drawFinal({ ...early, isPreview: true });
    expect([preview.draw, preview.final, (await groups.read()).final]).toEqual([null, null, null]);
    const drawn = await groups.drawFinal(early);
    expect([drawn.order, drawn.draw.reason]).toEqual([preview.order, 'light fails']);
  });

  it('is drawn again when a result changed, and keeps who still goes on', async () => {
    const groups = await twoGroups();
    const early = { reason: 'light fails' };
    const first = await groups.drawFinal({ finalTitle: 'Final', ...early });
    await groups.circle(0).record(3, 2, '58.00');
    expect(codes(await groups.drawFinal())).toEqual(['REASON_MISSING']);
    const second = await groups.drawFinal({ reason: 'bib 3 improved in the last round' });
    expect(second.order.toSorted()).toEqual(['1', '11', '12', '3']);
    expect(second.draw).toMatchObject({ number: 2, isInForce: true });
    expect(second.final.id).toBe(first.final.id);
    expect(second.final.startList.map(({ bib }: any) => bib)).toEqual(second.order);
  });

  it('set up beforehand is taken, but not with others on its list, nor after its first trial', async () => {
    const groups = await twoGroups();
    const own = discusSheet(1, { event: 'hammer' });
    const final = await Circle.open(api, own, groups.meet);
    const finalId = final.competition.id;
    const reason = 'light fails';
    expect((await groups.drawFinal({ finalId, reason })).userErrors).toMatchObject([
      { code: 'NOT_QUALIFIED', message: expect.stringContaining(': 1.') },
    ]);
    const withdraw = `mutation ($input: CompetitorWithdrawInput!) { competitorWithdraw(input: $input) { userErrors { code } } }`;
    await api.data(withdraw, { input: { competitorId: final.competitorOf(1) } }, groups.meet.director);
    expect(codes(await groups.drawFinal({ finalId: finalId, finalTitle: 'Other', reason }))).toEqual([
      'FINAL_SET',
    ]);
    expect(codes(await groups.drawFinal({ reason }))).toEqual(['FINAL_MISSING']);
    const { final: filled } = await groups.drawFinal({ finalId, reason });
    expect(filled.id).toBe(finalId);
    const ask =
      'query ($id: ID!) { competition(id: $id) { startList { id bib } qualification { id } draws { number } } }';
    const { competition } = await api.data(ask, { id: finalId });
    expect([competition.qualification.id, competition.draws]).toEqual([groups.id, [{ number: 1 }]]);
    const competitorId = competition.startList[0].id;
    await final.enter('attemptRecord', { competitorId, round: 1, outcome: 'VALID', mark: '50.00' });
    expect((await groups.drawFinal({ reason: 'again' })).userErrors).toMatchObject([
      { code: 'COMPETITION_STARTED', rule: 'WA TR25.5' },
    ]);
  });

  it('is refused where nobody goes on or two go on under one bib, and to whom it is not', async () => {
    const reason = 'light fails';
    const empty = await Groups.open(api, [groupSheet(1, 2)]);
    expect(codes(await empty.drawFinal({ finalTitle: 'Final', reason }))).toEqual(['NOBODY_QUALIFIED']);
    const twice = await Groups.open(api, [groupSheet(1, 1), groupSheet(1, 1)]);
    await twice.record(0, { 1: ['50.00'] });
    await twice.record(1, { 1: ['51.00'] });
    expect(codes(await twice.drawFinal({ finalTitle: 'Final', reason }))).toEqual(['BIB_TWICE']);
    expect(codes(await twice.drawFinal({ qualificationId: randomUUID() }))).toEqual(['NOT_FOUND']);
    await expect(twice.drawFinal({ finalTitle: 'Final', reason }, empty.meet.director)).rejects.toThrow(
      'FORBIDDEN',
    );
    await expect(twice.drawFinal({ finalTitle: 'Final', reason }, twice.meet.referee)).rejects.toThrow(
      'FORBIDDEN',
    );
  });
});

describe('a qualification at the bar', () => {
  const HEIGHTS = ['1.60', '1.65', '1.70'];
  const sheetOf = (from: number): object => {
    const competitors = [from, from + 1].map((bib) => ({ bib: String(bib) }));
    const qualifying = { standard: '1.70', fill: 3 };
    return highJumpSheet(2, HEIGHTS, { stage: 'qualification', qualifying, competitors });
  };

  it('ranks over the groups by failures, and its final has its heights announced', async () => {
    const groups = await Groups.open(api, [sheetOf(1), sheetOf(11)]);
    const jump = async (at: number, bib: number, cells: readonly string[]): Promise<void> => {
      for (const [index, cell] of cells.entries())
        for (const [trial, letter] of [...cell].entries())
          await groups.bar(at).jump(bib, HEIGHTS[index]!, trial + 1, letter);
    };
    await jump(0, 1, ['O', 'O', 'O']);
    await jump(0, 2, ['XO', 'O', 'XXX']);
    await jump(1, 11, ['O', 'XO', 'XXX']);
    await jump(1, 12, ['O', 'O', 'XXX']);
    expect(await groups.lines()).toEqual(['1 1 1.70 Q', '2 12 1.65 q', '3 2 1.65 q', '4 11 1.65']);
    const reason = 'light fails';
    expect(codes(await groups.drawFinal({ finalTitle: 'Final', reason }))).toEqual(['FINAL_MISSING']);
    const final = await Circle.open(api, highJumpSheet(0, HEIGHTS), groups.meet);
    const { order } = await groups.drawFinal({ finalId: final.competition.id, reason });
    expect(order.toSorted()).toEqual(['1', '12', '2']);
  });
});
