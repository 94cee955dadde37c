import { Circle } from '../support/at-the-circle.js';
import { discusSheet } from '../support/circle.js';
import { openField, type Field } from './support/field.js';
import { ThumbOfficial } from './support/official.js';
import { Tablet } from './support/tablet.js';

const LINK = `mutation ($input: DeviceLinkCreateInput!) {
  deviceLinkCreate(input: $input) { link { url } userErrors { code message } }
}`;

describe('a tablet that is handed out with a link', () => {
  let field: Field;
  let tablet: Tablet;
  beforeAll(async () => {
    field = await openField();
    tablet = await Tablet.open();
  });
  afterAll(async () => {
    await tablet.discard();
    await field.close();
  });

  it('comes in by it, keeps no secret in its address, and records under its name', async () => {
    const circle = await Circle.open(field.api, discusSheet(2));
    const until = new Date(Date.now() + 3_600_000).toISOString();
    const input = { on: circle.competition.id, label: 'Circle 2 tablet', until, devices: 1 };
    const { deviceLinkCreate } = await field.api.data(LINK, { input }, circle.director);
    const [desk] = field.deskFor('').split('#');
    const page = await tablet.page(`${desk}#${deviceLinkCreate.link.url.split('#')[1]}`);
    const official = new ThumbOfficial(page);
    await official.enter('1', '40.00');
    await official.isSent();
    expect(page.url()).toBe(desk);
    const [entry] = await circle.journal();
    expect(entry).toMatchObject({ authority: 'official', device: 'Circle 2 tablet' });
  });
});
