import { callsOf, cardSignatureOf, verticalProgressOf, type SharedBody } from '#rules';
import { Bar, highJumpOf } from './support/bar.js';
import { Circle, discus } from './support/competition.js';

const excuse = (competitor: string, to: string | null = 'Long jump'): SharedBody => ({
  kind: 'excuse',
  competitor,
  to,
  until: null,
});

const order = ({ state }: Circle, count = 4): string =>
  [...callsOf(state)]
    .slice(0, count)
    .map(({ competitor, round }) => `${competitor}${round}`)
    .join(' ');

describe('who is away at another event', () => {
  // WA TR4.3: in each round the referee may let such a competitor act in another order than that of the draw.
  it('is called last in the round until back', () => {
    const circle = new Circle(discus(3));
    circle.enter(excuse('a'));
    expect(order(circle)).toBe('b1 c1 a1 b2');
    circle.enter(excuse('a', null));
    expect(order(circle)).toBe('a1 b1 c1 a2');
  });

  it('is back with the next trial, and still away when a pass was written down', () => {
    const circle = new Circle(discus(2));
    circle.enter(excuse('a'));
    circle.trial('b', 1, '50.00');
    circle.trial('a', 1, '-');
    expect(order(circle, 2)).toBe('b2 a2');
    circle.trial('a', 2, 'X');
    expect(circle.state.away.size).toBe(0);
  });

  it('keeps the place in the last round where the rules leave its order alone', () => {
    const circle = new Circle(discus(2));
    const [last] = [...callsOf(circle.state)].slice(-2).map(({ competitor }) => competitor);
    circle.enter(excuse(last!));
    expect([...callsOf(circle.state)].slice(-2)[0]!.competitor).toBe(last);
  });

  it('is called last at the bar as well', () => {
    const bar = new Bar(highJumpOf('1.70 1.75', 2));
    bar.enter(excuse('a'));
    expect(verticalProgressOf(bar.state).calls.map(({ competitor }) => competitor)).toEqual(['b', 'a']);
  });

  it('cannot come back without having been away', () => {
    const circle = new Circle(discus(2));
    circle.enter(excuse('a', null));
    expect(circle.verdict).toMatchObject({ standing: 'refused', refusal: { code: 'ALREADY_SO' } });
  });
});

describe('the signature of the chief judge', () => {
  const SIGNED: SharedBody = { kind: 'card-signed', remark: null };

  it('holds until something is entered on the card', () => {
    const circle = new Circle(discus(2));
    expect(cardSignatureOf(circle.state)).toBeNull();
    circle.trial('a', 1, '50.00');
    circle.enter(SIGNED);
    circle.enter({ kind: 'note', about: 'equipment', text: 'cage rope torn', competitor: null, seenAt: 0 });
    expect(cardSignatureOf(circle.state)).toMatchObject({ sequence: 2, isCurrent: true });
    circle.trial('b', 1, '51.00');
    expect(cardSignatureOf(circle.state)).toMatchObject({ sequence: 2, isCurrent: false });
  });
});

describe('a start list in use', () => {
  it('never has a bib twice, and lets two be swapped in one entry', () => {
    const circle = new Circle(discus(2));
    const [first, second] = circle.state.setup.competitors.map(({ bib }) => bib);
    circle.enter({ kind: 'bibs', bibs: [{ competitor: 'a', bib: second! }], reason: 'x' });
    expect(circle.verdict).toMatchObject({ refusal: { code: 'BIB_TAKEN', field: 'bibs' } });
    const both = [
      { competitor: 'a', bib: second! },
      { competitor: 'b', bib: first! },
    ];
    circle.enter({ kind: 'bibs', bibs: both, reason: 'x' });
    expect(circle.verdict).toMatchObject({ standing: 'accepted' });
  });

  it('has its flights, and who has acted stays in one', () => {
    const circle = new Circle(discus(2));
    circle.enter({ kind: 'flight', competitor: 'a', flight: 'Z', reason: 'x' });
    expect(circle.verdict).toMatchObject({ refusal: { code: 'FLIGHT_UNKNOWN' } });
    circle.trial('a', 1, '50.00');
    circle.enter({ kind: 'flight', competitor: 'a', flight: 'Z', reason: 'x' });
    expect(circle.verdict).toMatchObject({ refusal: { code: 'HAS_TRIALS', field: 'competitor' } });
  });

  it('is not signed while nobody knows who somebody is', () => {
    const setup = discus(2);
    const [first, ...others] = setup.competitors;
    const circle = new Circle({ ...setup, competitors: [{ ...first!, unmatched: true }, ...others] });
    circle.enter({ kind: 'sign-off', incomplete: 'dark' }, { by: 'referee' });
    expect(circle.verdict).toMatchObject({ refusal: { code: 'UNMATCHED' } });
  });
});
