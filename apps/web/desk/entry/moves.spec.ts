import { applyAll, editionsOf, ruleSet, type CompetitionSetup, type Entry } from '#rules';
import type { Folded } from '../competition/fold.js';
import { moveTo, shiftFrom } from './moves.js';

const edition = editionsOf('WA').at(-1)!;
const SETUP: CompetitionSetup = {
  rules: 'WA',
  edition,
  event: 'discus',
  indoor: false,
  stage: 'final',
  qualifying: null,
  plan: ruleSet('WA', edition).plan.value,
  unit: 'cm',
  competitors: ['a', 'b', 'c', 'd'].map((key) => ({
    key,
    bib: key,
    name: null,
    club: null,
    flight: null,
    guest: false,
    implementGrams: null,
  })),
};

/** The first round with these marks, one after the other from `a`. */
function afterMarks(...marks: readonly number[]): Folded {
  const entries = marks.map(
    (mark, at): Entry => ({
      id: `trial ${at + 1}`,
      by: 'official',
      actor: 'one',
      kind: 'attempt',
      competitor: 'abcd'[at]!,
      round: 1,
      outcome: 'valid',
      mark,
      wind: null,
      foul: null,
      protested: null,
      implementGrams: null,
    }),
  );
  return { kind: 'distance', state: applyAll(SETUP, entries).state };
}

describe('a trial on a wrong line', () => {
  it('goes to whom it belongs', () => {
    expect(moveTo(afterMarks(4000), 'trial 1', 'c', 'line')).toEqual({
      kind: 'move',
      moves: [{ attempt: 'trial 1', competitor: 'c', round: 1 }],
      reason: 'line',
    });
  });

  it('changes places with the trial that stands there', () => {
    const body = moveTo(afterMarks(4000, 4100), 'trial 1', 'b', 'line');
    expect(body).toMatchObject({
      moves: [
        { attempt: 'trial 1', competitor: 'b' },
        { attempt: 'trial 2', competitor: 'a' },
      ],
    });
  });

  it('takes all after it along by one line', () => {
    expect(shiftFrom(afterMarks(4000, 4100, 4200), 'trial 2')).toEqual([
      { attempt: 'trial 2', competitor: 'c', round: 1 },
      { attempt: 'trial 3', competitor: 'd', round: 1 },
    ]);
  });

  it('takes nobody along when the last of them would have nowhere to go', () => {
    expect(shiftFrom(afterMarks(4000, 4100, 4200, 4300), 'trial 2')).toBeNull();
  });
});
