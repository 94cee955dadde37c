import { en } from '../../apps/web/labels/en.js';
import { Circle } from '../support/at-the-circle.js';
import { discusSheet } from '../support/circle.js';
import { openField, type Field } from './support/field.js';
import { judged } from './support/discus-final.js';
import { written } from './support/journal.js';
import { ThumbOfficial } from './support/official.js';
import { Tablet } from './support/tablet.js';

describe('two tablets at one competition', () => {
  let field: Field;
  const tablets: Tablet[] = [];
  beforeAll(async () => {
    field = await openField();
    tablets.push(await Tablet.open(), await Tablet.open());
  });
  afterAll(async () => {
    for (const tablet of tablets) await tablet.discard();
    await field.close();
  });

  const officials = async (circle: Circle, tokens: readonly string[]) =>
    Promise.all(
      tokens.map(async (token, at) => new ThumbOfficial(await tablets[at]!.page(field.deskFor(token)))),
    );

  it('see each other’s entries and go on from them', async () => {
    const circle = await Circle.open(field.api, discusSheet(3));
    const other = await field.api.token('official', circle.competition.id);
    const [one, two] = await officials(circle, [circle.official, other]);
    await one!.enter('1', '40.00');
    await two!.enter('2', '41.00');
    await one!.enter('3', '42.00');
    await two!.page.locator('.up .up-who .bib', { hasText: /^1$/ }).waitFor();
    await two!.see('standing');
    expect(
      await two!.page.locator('.row').evaluateAll((rows) => rows.map((row) => row.getAttribute('data-bib'))),
    ).toEqual(['3', '2', '1']);
    await two!.see('entry');
    expect(await written(circle)).toHaveLength(3);
  });

  it('that both entered the same trial without a network leave a question to the referee, and lose nothing', async () => {
    const circle = await Circle.open(field.api, discusSheet(2));
    const [one, two] = await officials(circle, [circle.official, circle.referee]);
    await Promise.all([one!, two!].map((official) => official.page.locator('.up').waitFor()));
    await field.network.shut();
    await one!.enter('1', '40.00');
    await two!.enter('1', '44.00');
    await field.network.open();
    await one!.isSent();
    await two!.isSent();
    const journal = await written(circle);
    expect(journal.map(({ standing }) => standing)).toEqual(['accepted', 'held']);
    expect(journal.map(({ mark }) => mark).sort()).toEqual([4000, 4400]);
    for (const official of [one!, two!]) {
      await official.see('standing');
      await official.page.getByText(en['question.title']).waitFor();
    }
    await two!.page.locator('.questions input').fill('Read again');
    await two!.button(en['question.dismiss']).click();
    await one!.page.getByText(en['question.title']).waitFor({ state: 'detached' });
  });

  it('stop together, and go on when the checklist is confirmed', async () => {
    const circle = await Circle.open(field.api, discusSheet(2));
    const other = await field.api.token('official', circle.competition.id);
    const [one, two] = await officials(circle, [circle.official, other]);
    await Promise.all([one!, two!].map((official) => official.page.locator('.up-who').waitFor()));
    await one!.button(en.stop).click();
    await one!.page.locator('.dialog input[value="person-in-sector"]').check();
    await one!.page.locator('.dialog .danger').click();
    await two!.page.getByText(en['stop.title']).waitFor();
    await two!.page.getByText(en['call.nobody']).waitFor();

    await two!.button(en.clear).click();
    const go = two!.page.locator('.dialog .main');
    for (const point of await two!.page.locator('.dialog .switch input').all()) {
      expect(await go.isDisabled()).toBe(true);
      await point.check();
      if (await go.isEnabled()) break;
    }
    await go.click();
    await one!.enter('1', '40.00');
    await one!.isSent();
    expect((await written(circle)).map(({ kind }) => kind)).toEqual(['interruption', 'all-clear', 'attempt']);
  });

  it('hand over what could not be sent, as a file', async () => {
    const circle = await Circle.open(field.api, discusSheet(2));
    const other = await field.api.token('official', circle.competition.id);
    const [one, two] = await officials(circle, [circle.official, other]);
    await Promise.all([one!, two!].map((official) => official.page.locator('.up').waitFor()));
    await one!.page.route('**/graphql', (route) => route.abort());
    await one!.enter('1', '40.00');
    await one!.enter('2', 'X SECTOR');
    await one!.see('more');
    const [download] = await Promise.all([
      one!.page.waitForEvent('download'),
      one!.button(en['more.export']).click(),
    ]);
    await two!.see('more');
    await two!.page.locator('input[type=file]').setInputFiles(await download.path());
    await two!.isSent();
    expect(await written(circle)).toEqual([
      { kind: 'attempt', standing: 'accepted', bib: '1', round: 1, ...judged('40.00') },
      { kind: 'attempt', standing: 'accepted', bib: '2', round: 1, ...judged('X SECTOR') },
    ]);
    await one!.page.unroute('**/graphql');
    await one!.isSent();
    expect(await written(circle)).toHaveLength(2);
  });
});
