import fc from 'fast-check';
import { commonOrder, turnsOf } from './group-order.js';

const BOYS = { key: 'boys', competitors: ['a', 'b', 'c'] };
const VETERANS = { key: 'veterans', competitors: ['x', 'y'] };

function order(startOrder: readonly string[] | null): string {
  return commonOrder([BOYS, VETERANS], startOrder)
    .map(({ competitor }) => competitor)
    .join('');
}

describe('the common order of a group', () => {
  it.each([
    ['one competition after the other when nothing was set', null, 'abcxy'],
    ['as it was set', ['a', 'x', 'b', 'y', 'c'], 'axbyc'],
    [
      'the turns as they were set, the order of each competition as it is now',
      ['c', 'x', 'a', 'y', 'b'],
      'axbyc',
    ],
    ['those who came later at the end', ['y', 'a'], 'xabcy'],
    ['as if those who were withdrawn had not been named', ['x', 'gone', 'a'], 'xabcy'],
    ['as if nobody had been named twice', ['x', 'x', 'a', 'x'], 'xabcy'],
  ])('is %s', (_, startOrder, expected) => {
    expect(order(startOrder)).toBe(expected);
  });

  it('lets those who were moved to the front have the first turns of their own competition', () => {
    const turns = (moved: readonly string[]) =>
      Object.fromEntries(turnsOf(commonOrder([BOYS, VETERANS], ['a', 'x', 'b', 'y', 'c']), 'boys', moved));
    expect(turns([])).toEqual({ a: 0, b: 2, c: 4 });
    expect(turns(['c', 'x', 'c'])).toEqual({ c: 0, a: 2, b: 4 });
  });

  it('names everybody once and keeps the order of every competition', () => {
    const sizes = fc.array(fc.nat({ max: 4 }), { maxLength: 4 });
    const named = fc.array(fc.tuple(fc.nat({ max: 4 }), fc.nat({ max: 5 })));
    fc.assert(
      fc.property(sizes, named, (counts, places) => {
        const competitions = counts.map((count, key) => ({
          key: String(key),
          competitors: Array.from({ length: count }, (_, at) => `${key}-${at}`),
        }));
        const found = commonOrder(
          competitions,
          places.map(([key, at]) => `${key}-${at}`),
        );
        for (const { key, competitors } of competitions) {
          const own = found.filter(({ competition }) => competition === key);
          expect(own.map(({ competitor }) => competitor)).toEqual(competitors);
        }
        expect(found).toHaveLength(counts.reduce((sum, count) => sum + count, 0));
      }),
    );
  });
});
