import type { RefusalCode, VerticalSetup } from '#rules';
import { Bar, correction, highJumpOf, jump } from './support/bar.js';

describe('what is refused because it can never be right', () => {
  const vault = { event: 'pole-vault' } as const;
  it.each<[RefusalCode, string | null, (bar: Bar) => void, Partial<VerticalSetup>?]>([
    [
      'ID_REUSED',
      'id',
      (b) => {
        b.enter(jump('a', '1.80', 1, 'X'), { id: 'e0' });
        b.enter(jump('b', '1.80', 1, 'X'), { id: 'e0' });
      },
    ],
    ['NOT_ALLOWED', null, (b) => b.enter({ kind: 'reinstatement', competitor: 'a', reason: 'so' })],
    [
      'RESULT_OFFICIAL',
      null,
      (b) => {
        b.referee({ kind: 'sign-off', incomplete: 'dark' });
        b.referee({ kind: 'disqualification', competitor: 'a', rule: 'TR7.1', reason: 'conduct' });
      },
    ],
    ['UNKNOWN_COMPETITOR', 'competitor', (b) => b.jump('z', '1.80', 1, 'X')],
    [
      'UNKNOWN_COMPETITOR',
      'competitors',
      (b) => b.enter({ kind: 'jump-order', height: 180, trial: 1, competitors: ['z'], reason: 'so' }),
    ],
    ['UNKNOWN_ENTRY', 'attempt', (b) => b.referee(correction('none', 'O'))],
    [
      'WRONG_KIND_OF_ENTRY',
      'attempt',
      (b) => b.referee(correction(b.enter({ kind: 'start', competitor: 'a', status: 'DNS' }), 'O')),
    ],
    [
      'NOT_IN_FORCE',
      'attempt',
      (b) => {
        const id = b.jump('a', '1.80', 1, 'X');
        b.enter({ kind: 'reversal', entry: id, reason: 'wrong key' });
        b.referee(correction(id, 'O'));
      },
    ],
    [
      'NO_QUESTION',
      'entry',
      (b) =>
        b.referee({ kind: 'ruling', entry: b.jump('a', '1.80', 1, 'X'), decision: 'count', reason: 'so' }),
    ],
    [
      'NOT_BY_RULING',
      'decision',
      (b) =>
        b.referee({ kind: 'ruling', entry: b.jump('a', '1.80', 2, 'X'), decision: 'count', reason: 'so' }),
    ],
    ['REASON_MISSING', 'reason', (b) => b.referee(correction(b.jump('a', '1.80', 1, 'X'), 'O', ' '))],
    [
      'CUT_NOT_IN_PLAN',
      'after',
      (b) => b.referee({ kind: 'admission', competitor: 'a', after: null, admittedBy: 'J', reason: 'so' }),
    ],
    ['HEIGHT_OUT_OF_RANGE', 'height', (b) => b.jump('a', '1.80', 1, 'X', { height: 0 })],
    ['HEIGHT_OUT_OF_RANGE', 'height', (b) => b.jump('a', '1.80', 1, 'X', { height: 180.5 })],
    ['HEIGHT_OUT_OF_RANGE', 'height', (b) => b.enter({ kind: 'bar', height: 100_000, leavesOut: [] })],
    ['HEIGHT_NOT_LEFT_OUT', 'leavesOut', (b) => b.enter({ kind: 'bar', height: 183, leavesOut: [183] })],
    ['HEIGHT_NOT_LEFT_OUT', 'leavesOut', (b) => b.enter({ kind: 'bar', height: 183, leavesOut: [181] })],
    [
      'HEIGHT_NOT_LEFT_OUT',
      'leavesOut',
      (b) => {
        b.height('1.80', 'X', '-');
        b.enter({ kind: 'bar', height: 183, leavesOut: [180] });
      },
    ],
    ['TRIAL_OUT_OF_RANGE', 'trial', (b) => b.jump('a', '1.80', 0, 'X')],
    [
      'TRIAL_OUT_OF_RANGE',
      'moves',
      (b) => {
        const attempt = b.jump('a', '1.80', 1, 'X');
        const moves = [{ attempt, competitor: 'a', height: 180, trial: 1.5 }];
        b.referee({ kind: 'jump-move', moves, reason: 'so' });
      },
    ],
    ['UPRIGHTS_NOT_OF_EVENT', null, (b) => b.enter({ kind: 'uprights', competitor: 'a', behindZeroCm: 50 })],
    [
      'UPRIGHTS_OUT_OF_RANGE',
      'behindZeroCm',
      (b) => b.enter({ kind: 'uprights', competitor: 'a', behindZeroCm: -1 }),
      vault,
    ],
    ['FOUL_NOT_OF_EVENT', 'foul', (b) => b.jump('a', '1.80', 1, 'X', { foul: 'HANDS' })],
    ['FOUL_NOT_OF_EVENT', 'foul', (b) => b.jump('a', '1.80', 1, 'O', { foul: 'BAR' })],
    ['INCIDENT_NOT_OF_OUTCOME', 'incident', (b) => b.jump('a', '1.80', 1, 'X', { incident: 'POLE_BROKEN' })],
    ['PROTEST_NOT_EXPECTED', 'protested', (b) => b.jump('a', '1.80', 1, '-', { protested: true })],
    ['NO_JUMP_OFF', null, (b) => b.enter({ kind: 'jump-off-declined', reason: 'friends' })],
    [
      'TRIAL_CLASH',
      null,
      (b) => {
        const attempt = b.jump('a', '1.80', 1, 'X');
        b.jump('b', '1.80', 1, 'X');
        const moves = [{ attempt, competitor: 'b', height: 180, trial: 1 }];
        b.referee({ kind: 'jump-move', moves, reason: 'wrong line' });
      },
    ],
    [
      'HAS_TRIALS',
      'status',
      (b) => {
        b.jump('a', '1.80', 1, 'X');
        b.enter({ kind: 'start', competitor: 'a', status: 'DNS' });
      },
    ],
    [
      'NAMED_TWICE',
      'competitors',
      (b) => b.enter({ kind: 'jump-order', height: 180, trial: 1, competitors: ['a', 'a'], reason: 'so' }),
    ],
    [
      'OPEN_QUESTIONS',
      null,
      (b) => {
        b.jump('a', '1.80', 2, 'X');
        b.referee({ kind: 'sign-off', incomplete: 'dark' });
      },
    ],
    ['NOT_COMPLETE', 'incomplete', (b) => b.referee({ kind: 'sign-off', incomplete: null })],
    ['ALREADY_SO', null, (b) => b.referee({ kind: 'reopening', reason: 'so' })],
    ['ALREADY_SO', null, (b) => b.referee(correction(b.jump('a', '1.80', 1, 'O'), 'O'))],
    [
      'ALREADY_SO',
      'height',
      (b) => {
        b.enter({ kind: 'bar', height: 180, leavesOut: [] });
        b.enter({ kind: 'bar', height: 180, leavesOut: [] });
      },
    ],
    [
      'ALREADY_SO',
      'behindZeroCm',
      (b) => {
        b.enter({ kind: 'uprights', competitor: 'a', behindZeroCm: 50 });
        b.enter({ kind: 'uprights', competitor: 'a', behindZeroCm: 50 });
      },
      vault,
    ],
  ])('%s (%s)', (code, field, act, changes = {}) => {
    const bar = new Bar(highJumpOf('1.80 1.83', 2, changes));
    act(bar);
    const before = bar.state.journal.length;
    expect(bar.verdict).toMatchObject({ standing: 'refused', refusal: { code, field } });
    if (bar.verdict?.standing !== 'refused') return;
    expect(bar.verdict.refusal.remedy).not.toBe('');
    expect(bar.state.journal).toHaveLength(before);
  });
});
