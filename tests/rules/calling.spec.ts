import { BarGroup, CircleGroup, discusOf, highJumpIn, inWords } from './support/calling-group.js';

/*
 * How competitions that are held together take turns is common practice, no published source; cuts, orders and times
 * within a competition are those of its rule book (WA TR25).
 */

const NO_CUT = { cuts: [], cutTies: 'next-best', reorder: 'reverse', reorderAfter: [] } as const;
const THREE = { plan: { ...NO_CUT, rounds: 3 } };
const FOUR = { plan: { ...NO_CUT, rounds: 4 } };
const SIX = { plan: { ...NO_CUT, rounds: 6, cuts: [{ after: 3, through: 2 }], reorderAfter: [3] } };
const two = [null, null];

function rounds(group: CircleGroup, cells: string): void {
  for (const cell of cells.split(' ')) group.trial(cell);
}

describe('a group of throws', () => {
  it('is called in the order that was drawn for it, round by round', () => {
    const group = new CircleGroup({ A: discusOf('A', two, THREE), B: discusOf('B', two, THREE) }, [
      'A.a',
      'B.a',
      'B.b',
      'A.b',
    ]);
    expect(inWords(group.progress.calls.slice(0, 8))).toBe('A.a1 B.a1 B.b1 A.b1 A.a2 B.a2 B.b2 A.b2');
    expect(group.progress).toMatchObject({ phase: 'not started', awaits: 'trial', finished: [] });
    group.trial('40.00');
    expect(group.progress).toMatchObject({
      phase: 'running',
      up: { competition: 'B', competitor: 'B.a' },
      next: { competitor: 'B.b' },
      then: { competitor: 'A.b' },
    });
  });

  it('goes on without a competition that has had all its trials', () => {
    const group = new CircleGroup({ A: discusOf('A', two, THREE), B: discusOf('B', two, FOUR) }, [
      'A.a',
      'B.a',
      'A.b',
      'B.b',
    ]);
    rounds(group, '1.00 2.00 3.00 4.00 '.repeat(3).trim());
    expect(group.progress.finished).toEqual(['A']);
    expect(inWords(group.progress.calls)).toBe('B.a4 B.b4');
    rounds(group, '5.00 X');
    expect(group.progress).toMatchObject({ phase: 'complete', awaits: null, up: null, time: null });
  });

  it('calls after a new order competition by competition, each in its own order', () => {
    const group = new CircleGroup(
      { A: discusOf('A', [null, null, null], SIX), B: discusOf('B', two, FOUR) },
      ['A.a', 'B.a', 'A.b', 'B.b', 'A.c'],
    );
    rounds(group, '50.00 20.00 40.00 21.00 30.00 '.repeat(3).trim());
    // A.c is cut; A.a leads and throws after A.b. B keeps the order that was drawn.
    expect(inWords(group.progress.calls)).toBe('A.b4 A.a4 B.a4 B.b4 A.b5 A.a5 A.b6 A.a6');
  });

  it('lets flights of several competitions take their rounds before the next flight begins', () => {
    const group = new CircleGroup(
      { A: discusOf('A', ['1', '2'], SIX), B: discusOf('B', ['1', '2'], THREE) },
      ['A.a', 'B.a', 'A.b', 'B.b'],
    );
    expect(inWords(group.progress.calls)).toBe(
      'A.a1 B.a1 A.a2 B.a2 A.a3 B.a3 A.b1 B.b1 A.b2 B.b2 A.b3 B.b3 A.a4 A.b4 A.a5 A.b5 A.a6 A.b6',
    );
  });

  it('keeps the turns of the others when an official moves somebody to the front', () => {
    const group = new CircleGroup(
      { A: discusOf('A', [null, null, null], THREE), B: discusOf('B', two, THREE) },
      ['A.a', 'B.a', 'A.b', 'B.b', 'A.c'],
    );
    group.circles
      .get('A')!
      .enter(
        { kind: 'order', round: 1, competitors: ['A.c'], reason: 'called to the relay' },
        { by: 'referee' },
      );
    expect(inWords(group.progress.calls.slice(0, 6))).toBe('A.c1 B.a1 A.a1 B.b1 A.b1 A.a2');
    group.trial('30.00');
    expect(inWords(group.progress.calls.slice(0, 4))).toBe('B.a1 A.a1 B.b1 A.b1');
  });

  it('calls whoever is missing in an earlier round first', () => {
    const group = new CircleGroup({ A: discusOf('A', two, THREE), B: discusOf('B', two, THREE) });
    for (const competitor of ['A.a', 'A.b', 'B.b']) {
      group.trial('30.00', { competition: competitor[0]!, competitor, round: 1 });
    }
    expect(inWords(group.progress.calls.slice(0, 3))).toBe('B.a1 A.a2 A.b2');
  });

  it('gives twice the time only to whoever throws twice in a row in the whole group', () => {
    // WA TR25.17: one minute, two for consecutive trials (from memory).
    const group = new CircleGroup({ A: discusOf('A', [null], FOUR), B: discusOf('B', [null], THREE) });
    const times: (number | undefined)[] = [];
    while (group.progress.up) {
      times.push(group.progress.time?.seconds);
      group.trial('30.00');
    }
    expect(times).toEqual([60, 60, 60, 60, 60, 60, 60]);
    const alone = new CircleGroup({ A: discusOf('A', [null], FOUR) });
    alone.trial('30.00');
    expect(alone.progress.time).toMatchObject({ seconds: 120, because: 'consecutive trials' });
  });

  it('calls nobody while one of its competitions is interrupted', () => {
    const group = new CircleGroup({ A: discusOf('A', two, THREE), B: discusOf('B', two, THREE) });
    const stop = { kind: 'interruption', cause: 'person-in-sector', note: null, seenAt: 1000 } as const;
    group.circles.get('B')!.enter(stop);
    expect(group.progress).toMatchObject({
      ...{ phase: 'not started', awaits: null, up: null, calls: [], time: null },
      ...{ interrupted: ['B'], finished: [] },
    });
  });

  it('is official when all its competitions are', () => {
    const group = new CircleGroup({ A: discusOf('A', [null], THREE), B: discusOf('B', [null], THREE) });
    rounds(group, '1.00 2.00 3.00 1.00 2.00 3.00');
    const sign = (key: string) =>
      group.circles.get(key)!.enter({ kind: 'sign-off', incomplete: null }, { by: 'referee' });
    sign('A');
    expect(group.progress.phase).toBe('complete');
    sign('B');
    expect(group.progress.phase).toBe('official');
  });
});

describe('a group at one bar', () => {
  it('takes all heights together, rising, and everybody who is in at each', () => {
    const group = new BarGroup(
      { A: highJumpIn('A', '1.20 1.30 1.40', 2), B: highJumpIn('B', '1.30 1.35 1.40', 2) },
      ['A.a', 'B.a', 'A.b', 'B.b'],
    );
    const course: string[] = [];
    while (group.progress.up && course.length < 40) {
      const { height, competitor, round } = group.progress.up;
      course.push(`${height} ${competitor}${round}`);
      group.jump(competitor === 'A.b' || height === 140 ? 'X' : 'O');
    }
    expect(course.slice(0, 11)).toEqual([
      ...['120 A.a1', '120 A.b1', '120 A.b2', '120 A.b3'],
      ...['130 A.a1', '130 B.a1', '130 B.b1'],
      ...['135 B.a1', '135 B.b1', '140 A.a1', '140 B.a1'],
    ]);
  });

  it('says the next height of all competitions, and whose bar has to be set', () => {
    const group = new BarGroup({ A: highJumpIn('A', '1.20', 1), B: highJumpIn('B', '1.30 1.35', 2) });
    expect(group.progress).toMatchObject({ up: { height: 120 }, nextHeight: 130, awaitingHeight: [] });
    group.jump('O');
    expect(group.progress).toMatchObject({ up: { height: 130 }, nextHeight: 135, awaitingHeight: ['A'] });
    for (let left = 4; left > 0; left--) group.jump('O');
    expect(group.progress).toMatchObject({ up: null, awaits: 'height', awaitingHeight: ['A', 'B'] });
  });

  it('has jump-offs when nobody else is to jump', () => {
    const group = new BarGroup({ A: highJumpIn('A', '1.20 1.25', 2), B: highJumpIn('B', '1.20 1.30', 1) });
    for (const letter of ['O', 'O', 'O', 'X', 'X', 'X', 'X', 'X', 'X']) group.jump(letter);
    expect(group.progress.up).toMatchObject({ competition: 'B', height: 130, jumpOff: false });
    for (const letter of ['X', 'X', 'X']) group.jump(letter);
    expect(group.progress.up).toMatchObject({ competition: 'A', jumpOff: true, height: 125 });
  });

  it('counts who is left in the own competition, and consecutive trials in the group', () => {
    // WA TR25.17, high jump: one minute, 1.5 with two or three left, 2 for consecutive trials (from memory).
    const alone = new BarGroup({ A: highJumpIn('A', '1.20 1.25', 2) });
    const together = new BarGroup({ A: highJumpIn('A', '1.20 1.25', 2), B: highJumpIn('B', '1.20 1.25', 4) });
    for (const letter of ['O', 'X']) alone.jump(letter);
    for (const letter of ['O', 'X', 'O', 'O', 'O', 'O']) together.jump(letter);
    expect(alone.progress).toMatchObject({
      up: { competitor: 'A.b', round: 2 },
      time: { because: 'consecutive trials', seconds: 120 },
    });
    expect(together.progress).toMatchObject({
      up: { competitor: 'A.b', round: 2 },
      time: { because: 'two or three left', left: 2, seconds: 90 },
    });
  });
});
