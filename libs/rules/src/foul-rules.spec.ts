import { FOULS, foulsOf } from './foul-rules.js';
import { FOUL_CODES } from './fouls.js';

describe('the fouls', () => {
  it('are each a plain sentence with a rule', () => {
    for (const code of FOUL_CODES) {
      expect(FOULS[code].sentence).toMatch(/^[A-Z].+\.$/);
      expect(FOULS[code].rules.length).toBeGreaterThan(0);
    }
  });

  it('name a technical rule, and no event twice', () => {
    for (const code of FOUL_CODES) {
      const events = FOULS[code].rules.flatMap((rule) => rule.events);
      expect(new Set(events).size).toBe(events.length);
      for (const { rule } of FOULS[code].rules) expect(rule).toMatch(/^TR\d/);
    }
  });

  // World Athletics TR27.2 and TR28.2: each vertical jump has a paragraph of its own for the same failure.
  it('have the rule of their event', () => {
    const ruleOfBar = (event: 'high-jump' | 'pole-vault') =>
      foulsOf(event).find(({ code }) => code === 'BAR')?.rule;
    expect(ruleOfBar('high-jump')).toBe('TR27.2.1');
    expect(ruleOfBar('pole-vault')).toBe('TR28.2.1');
  });

  it.each([
    ['shot', ['TIME', 'AID', 'IMPLEMENT', 'RIM', 'BOARD', 'RELEASE', 'SECTOR', 'EARLY', 'EXIT']],
    ['javelin', ['TIME', 'AID', 'IMPLEMENT', 'LINE', 'DELIVERY', 'TURN', 'TIP', 'SECTOR', 'EARLY', 'EXIT']],
    ['long-jump', ['TIME', 'PLANE', 'SIDE', 'SOMERSAULT', 'GROUND', 'LANDSIDE', 'PITEXIT']],
    ['high-jump', ['TIME', 'BAR', 'BARPLANE', 'TWOFOOT']],
  ] as const)('of the %s are those that can occur there', (event, codes) => {
    expect(foulsOf(event).map(({ code }) => code)).toEqual(codes);
  });
});
