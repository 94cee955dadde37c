import type { Card } from '../card.js';
import { editionsOf } from '../rule-sets/index.js';
import { smallestMark, stepOf } from './smallest-mark.js';

function cardOf(rules: Card['rules'], unit: Card['unit'], event: Card['event'] = 'discus'): Card {
  return {
    rules,
    edition: editionsOf(rules).at(-1)!,
    event,
    indoor: false,
    stage: 'final',
    qualifying: null,
    plan: { rounds: 6, cuts: [], cutTies: 'mark', reorderAfter: [], reorder: 'reverse' },
    unit,
    competitors: [],
    admitted: [],
  };
}

describe('the step of a card', () => {
  it('is the centimetre', () => {
    expect(stepOf(cardOf('WA', 'cm'))).toBe(1);
  });

  // NFHS 6-6, as officials' guides put it: long throws to the lesser inch, the shot to the lesser quarter inch.
  it('is what the rule set measures in feet and inches', () => {
    expect(stepOf(cardOf('NFHS', 'qin'))).toBe(4);
    expect(stepOf(cardOf('NFHS', 'qin', 'shot'))).toBe(1);
  });
});

describe('the smallest mark', () => {
  const metric = cardOf('WA', 'cm');

  it('of one who is behind is not less than the mark to beat', () => {
    const tried: number[] = [];
    const mark = smallestMark(metric, { own: 5000, toBeat: 5810 }, (one) => tried.push(one) > 0);
    expect([mark, Math.min(...tried)]).toEqual([5810, 5810]);
    expect(smallestMark(metric, { own: 5000, toBeat: 5810 }, (one) => one > 5810)).toBe(5811);
  });

  it('of one who is level may be any that breaks the tie', () => {
    for (const enough of [1, 2, 4321, 5810, 5811]) {
      expect(smallestMark(metric, { own: 5810, toBeat: 5810 }, (one) => one >= enough)).toBe(enough);
    }
  });

  it('lies on the step of the card', () => {
    const imperial = cardOf('NFHS', 'qin');
    expect(smallestMark(imperial, { own: 0, toBeat: 2000 }, (one) => one >= 2000)).toBe(2000);
    expect(smallestMark(imperial, { own: 0, toBeat: 2000 }, (one) => one > 2000)).toBe(2004);
    expect(smallestMark(imperial, { own: 0, toBeat: 2001 }, (one) => one > 2001)).toBe(2004);
    expect(smallestMark(imperial, { own: 0, toBeat: 0 }, () => true)).toBe(4);
  });

  it('does not exist when none is enough or none can be written', () => {
    expect(smallestMark(metric, { own: 0, toBeat: 5810 }, () => false)).toBeNull();
    expect(smallestMark(metric, { own: 0, toBeat: 99_999 }, (one) => one > 99_999)).toBeNull();
    const imperial = cardOf('NFHS', 'qin');
    expect(smallestMark(imperial, { own: 0, toBeat: 47_999 }, () => true)).toBeNull();
  });
});
