import {
  restoreCompetition,
  type HoldCode,
  type ImplementStanding,
  type Judgement,
  type Verdict,
} from '#rules';
import { Circle, correction, discus } from './support/competition.js';

/** Two throwers of 1 kg. */
function circleOfOneKilo(): Circle {
  const setup = discus(2);
  return new Circle({
    ...setup,
    competitors: setup.competitors.map((c) => ({ ...c, implementGrams: 1000 })),
  });
}

function named(implementStanding: ImplementStanding, grams: number | null = 1000, implementId = 'D1') {
  return { implementId, implementStanding, implementGrams: grams };
}

function hold(verdict: Verdict | undefined): HoldCode | null {
  return verdict?.standing === 'held' ? verdict.hold.code : null;
}

function notices(verdict: Verdict | undefined): readonly string[] {
  return verdict?.standing === 'accepted' ? verdict.notices : [];
}

const questions = (circle: Circle) => circle.state.questions.map(({ entry, about }) => [entry, about]);

const query = (...attempts: string[]) =>
  ({ kind: 'implement-query', attempts, implementId: 'D1', reason: 'mass 998 g, at least 1000 g' }) as const;

const rule = (entry: string, decision: 'count' | 'dismiss') =>
  ({ kind: 'ruling', entry, decision, reason: 'looked at' }) as const;

// An implement that was not checked makes a trial a failure: WA TR32.2, number from memory.
describe('a trial that names its implement', () => {
  it.each<[ImplementStanding, number | null, HoldCode | null]>([
    ['passed', 1000, null],
    ['passed', 1500, 'WRONG_IMPLEMENT'],
    ['other event', null, 'WRONG_IMPLEMENT'],
    ['other mass', 1000, 'WRONG_IMPLEMENT'],
    ['not inspected', 1000, 'IMPLEMENT_NOT_PASSED'],
    ['incomplete', 1000, 'IMPLEMENT_NOT_PASSED'],
    ['failed', 1000, 'IMPLEMENT_NOT_PASSED'],
    ['kept back', 1000, 'IMPLEMENT_NOT_PASSED'],
    ['unknown', null, 'IMPLEMENT_NOT_PASSED'],
  ])('%s, of %s g: %s', (standing, grams, code) => {
    const circle = circleOfOneKilo();
    circle.trial('a', 1, '50.00', named(standing, grams));
    expect(hold(circle.verdict)).toBe(code);
    expect(questions(circle)).toHaveLength(code === null ? 0 : 1);
  });

  it('is held by the rule of the implement, until the referee rules', () => {
    const circle = circleOfOneKilo();
    const id = circle.trial('a', 1, '50.00', named('failed'));
    expect(circle.verdict).toMatchObject({ hold: { rule: 'WA TR32.2' } });
    circle.referee(rule(id, 'count'));
    expect(circle.state.attempts.get(id)).toMatchObject({
      standing: 'counts',
      judgement: { implementId: 'D1', implementStanding: 'failed', implementGrams: 1000 },
    });
  });

  it('is a failure with whatever implement, and a protested one is open like a valid one', () => {
    const circle = circleOfOneKilo();
    circle.trial('a', 1, 'X', named('failed'));
    expect([hold(circle.verdict), notices(circle.verdict)]).toEqual([null, ['IMPLEMENT_IN_QUESTION']]);
    circle.trial('b', 1, 'X', { ...named('failed'), protested: 5000 });
    expect(hold(circle.verdict)).toBe('IMPLEMENT_NOT_PASSED');
  });
});

describe('a protested trial that is held for its implement', () => {
  function ruledTwice(second: 'count' | 'dismiss'): Circle {
    const circle = circleOfOneKilo();
    const id = circle.trial('a', 1, 'X', { ...named('not inspected'), protested: 5000 });
    circle.referee(rule(id, 'count'));
    expect(questions(circle)).toEqual([[id, 'protest']]);
    circle.referee(rule(id, second));
    expect(circle.verdict?.standing).toBe('accepted');
    expect(questions(circle)).toEqual([]);
    return circle;
  }

  it('is let in by one ruling, and its protest is decided by the next', () => {
    expect(ruledTwice('count').state.card.competitors[0]!.series[0]?.mark).toBe(5000);
    expect(ruledTwice('dismiss').state.card.competitors[0]!.series[0]?.outcome).toBe('foul');
  });
});

describe('a correction', () => {
  const judgementOf = (circle: Circle, id: string): Judgement => circle.state.attempts.get(id)!.judgement;

  it('leaves the implement as it was known, and another mass is another implement', () => {
    const circle = circleOfOneKilo();
    const id = circle.trial('a', 1, '50.00', named('passed'));
    circle.enter(correction(id, '50.10'));
    expect(judgementOf(circle, id)).toMatchObject({ mark: 5010, ...named('passed') });
    circle.referee({ ...correction(id, '50.10'), implementGrams: 1500 });
    expect(notices(circle.verdict)).toEqual(['IMPLEMENT_IN_QUESTION']);
    expect(judgementOf(circle, id)).not.toHaveProperty('implementId');
    expect(judgementOf(circle, id).implementGrams).toBe(1500);
    circle.referee({ ...correction(id, '50.10'), ...named('passed', 1000, 'D2') });
    expect(judgementOf(circle, id)).toMatchObject(named('passed', 1000, 'D2'));
  });

  it('that only names the implement is one', () => {
    const circle = circleOfOneKilo();
    const id = circle.trial('a', 1, '50.00');
    circle.enter({ ...correction(id, '50.00'), ...named('passed') });
    expect(circle.verdict?.standing).toBe('accepted');
    circle.enter({ ...correction(id, '50.00'), ...named('passed') });
    expect(circle.verdict).toMatchObject({ refusal: { code: 'ALREADY_SO' } });
  });

  it('of an official is held where the trial would have been; a referee’s counts', () => {
    const circle = circleOfOneKilo();
    const id = circle.trial('a', 1, '50.00');
    circle.enter({ ...correction(id, '50.00'), ...named('not inspected') });
    expect(hold(circle.verdict)).toBe('IMPLEMENT_NOT_PASSED');
    circle.enter({ ...correction(id, '50.00'), implementGrams: 1500 });
    expect(hold(circle.verdict)).toBe('WRONG_IMPLEMENT');
    circle.referee({ ...correction(id, '50.00'), ...named('not inspected') });
    expect(notices(circle.verdict)).toEqual(['IMPLEMENT_IN_QUESTION']);
  });
});

describe('trials whose implement did not pass afterwards', () => {
  function queried(): { circle: Circle; ids: string[] } {
    const circle = circleOfOneKilo();
    const ids = [
      circle.trial('a', 1, '50.00', named('passed')),
      circle.trial('b', 1, '49.00', named('passed')),
    ];
    circle.enter(query(...ids));
    return { circle, ids };
  }

  it('count as before and are questions, which keep the result from being signed', () => {
    const { circle, ids } = queried();
    expect(questions(circle)).toEqual(ids.map((id) => [id, 'implement']));
    expect(circle.state.card.competitors.map(({ series }) => series[0]?.mark)).toEqual([5000, 4900]);
    circle.referee({ kind: 'sign-off', incomplete: 'darkness' });
    expect(circle.verdict).toMatchObject({ refusal: { code: 'OPEN_QUESTIONS' } });
  });

  it('stand or fall one by one as the referee rules, also when they are asked about again', () => {
    const { circle, ids } = queried();
    const [first, second] = ids as [string, string];
    circle.referee(rule(first, 'count'));
    const dismissal = circle.referee(rule(second, 'dismiss'));
    expect(questions(circle)).toEqual([]);
    // Taken and a failure: nobody is called again for it.
    expect(circle.state.attempts.get(second)).toMatchObject({
      standing: 'counts',
      judgement: { outcome: 'foul', mark: null, foul: 'IMPLEMENT', implementId: 'D1' },
    });
    circle.referee({ kind: 'reversal', entry: dismissal, reason: 'the scale was not level' });
    expect(questions(circle)).toEqual([[second, 'implement']]);
    circle.enter(query(first));
    expect(questions(circle)).toEqual([
      [first, 'implement'],
      [second, 'implement'],
    ]);
    circle.referee(rule(first, 'count'));
    expect(circle.verdict?.standing).toBe('accepted');
    circle.referee(rule(first, 'count'));
    expect(circle.verdict).toMatchObject({ refusal: { code: 'ALREADY_SO' } });
  });

  it('are two questions when there is a protest as well', () => {
    const circle = circleOfOneKilo();
    const id = circle.trial('a', 1, 'X', { ...named('passed'), protested: 5000 });
    circle.enter(query(id));
    expect(questions(circle)).toEqual([
      [id, 'protest'],
      [id, 'implement'],
    ]);
    circle.referee(rule(id, 'count'));
    expect(questions(circle)).toEqual([]);
    expect(circle.state.card.competitors[0]!.series[0]?.mark).toBe(5000);
  });

  it('stay in the series when they had been held and ruled to count before', () => {
    const circle = circleOfOneKilo();
    const id = circle.trial('a', 1, '50.00', named('incomplete'));
    const admission = circle.referee(rule(id, 'count'));
    circle.enter(query(id));
    expect(questions(circle)).toEqual([[id, 'implement']]);
    circle.referee(rule(id, 'dismiss'));
    expect(questions(circle)).toEqual([]);
    expect(circle.state.attempts.get(id)).toMatchObject({
      standing: 'counts',
      judgement: { outcome: 'foul' },
    });
    circle.referee({ ...correction(id, '50.00'), ...named('passed', 1000, 'D2') });
    expect(circle.state.card.competitors[0]!.series[0]?.mark).toBe(5000);
    circle.referee({ kind: 'reversal', entry: admission, reason: 'thrown in the warm-up' });
    expect(circle.state.attempts.has(id)).toBe(false);
  });

  it('are none any more when it was another implement, when they failed, or when the query is taken back', () => {
    const { circle, ids } = queried();
    const [first, second] = ids as [string, string];
    circle.referee({ ...correction(first, '50.00'), ...named('passed', 1000, 'D2') });
    circle.referee(correction(second, 'X'));
    expect(questions(circle)).toEqual([]);
    const again = circle.referee({ ...query(first), implementId: 'D2' });
    expect(questions(circle)).toEqual([[first, 'implement']]);
    circle.referee({ kind: 'reversal', entry: again, reason: 'another discus was weighed' });
    expect(questions(circle)).toEqual([]);
  });

  it('of a signed result wait until it is reopened', () => {
    const circle = circleOfOneKilo();
    const id = circle.trial('a', 1, '50.00', named('passed'));
    circle.referee({ kind: 'sign-off', incomplete: 'darkness' });
    const asked = circle.enter(query(id));
    expect(hold(circle.verdict)).toBe('SIGNED_OFF');
    circle.referee({ kind: 'reopening', reason: 'the implement was light' });
    circle.referee(rule(asked, 'count'));
    expect(questions(circle)).toEqual([[id, 'implement']]);
    const { setup, journal, questions: open } = circle.state;
    expect(restoreCompetition(setup, journal).questions).toEqual(open);
  });

  it('must be trials that are there and count', () => {
    const circle = circleOfOneKilo();
    circle.enter(query('e99'));
    expect(circle.verdict).toMatchObject({ refusal: { code: 'UNKNOWN_ENTRY', field: 'attempts' } });
    const start = circle.enter({ kind: 'start', competitor: 'a', status: 'DNS' });
    circle.enter(query(start));
    expect(circle.verdict).toMatchObject({ refusal: { code: 'WRONG_KIND_OF_ENTRY', field: 'attempts' } });
    const heldTrial = circle.trial('b', 1, '50.00', named('failed'));
    circle.enter(query(heldTrial));
    expect(circle.verdict).toMatchObject({ refusal: { code: 'NOT_IN_FORCE', field: 'attempts' } });
  });
});
