import { isFarOutside } from '../events/event.js';
import type { NoticeCode } from '../journal/verdict.js';
import { ruleSet } from '../rule-sets/index.js';
import type { BarEntry, JumpEntry, JumpOffEntry, VerticalEntry } from './entry.js';
import { verticalProgressOf, winnerOf } from './progress.js';
import type { VerticalState } from './state.js';

/** What is worth saying about an entry that is accepted, as the competition stood before it. */
export function noticesOf(state: VerticalState, entry: VerticalEntry): NoticeCode[] {
  switch (entry.kind) {
    case 'jump':
    case 'jump-off':
      return noticesOfJump(state, entry);
    case 'bar':
      return noticesOfBar(state, entry);
    case 'uprights': {
      const { min, max } = ruleSet(state.setup.rules, state.setup.edition).vertical[state.setup.event]
        .uprightsCm.value;
      return entry.behindZeroCm < min || entry.behindZeroCm > max ? ['UPRIGHTS_OUTSIDE_RULE'] : [];
    }
    default:
      return [];
  }
}

/** A pass or a retirement at the heights is told at any time; all else has its turn. */
function noticesOfJump(state: VerticalState, entry: JumpEntry | JumpOffEntry): NoticeCode[] {
  const { up, jumpOff } = verticalProgressOf(state);
  const notices: NoticeCode[] = [];
  const isTold = entry.kind === 'jump' && (entry.outcome === 'passed' || entry.outcome === 'retired');
  const isTurn =
    up?.competitor === entry.competitor &&
    up.trial === entry.trial &&
    (up.jumpOff ? entry.kind === 'jump-off' : entry.kind === 'jump' && up.height === entry.height);
  if (!isTold && !isTurn) notices.push('OUT_OF_TURN');
  const begins = jumpOff !== null && jumpOff.inRound.length === jumpOff.toJump.length;
  if (entry.kind === 'jump-off' && begins && entry.height !== jumpOff.ruleHeight) {
    notices.push('NOT_THE_RULE_HEIGHT');
  }
  return notices;
}

function noticesOfBar(state: VerticalState, { height, leavesOut }: BarEntry): NoticeCode[] {
  const { setup, competitors } = state;
  const notices: NoticeCode[] = [];
  const skipped = new Set(leavesOut);
  const isOutstanding = competitors.some(
    ({ next }) => next && next.height < height && !skipped.has(next.height),
  );
  if (isOutstanding) notices.push('TRIALS_OUTSTANDING');
  if (!setup.heights.includes(height) && !winnerOf(state)?.choosesHeight) notices.push('NOT_ANNOUNCED');
  if (isFarOutside(setup.event, height, setup.unit)) notices.push('FAR_OUTSIDE');
  return notices;
}
