import { ruleSet } from '../rule-sets/index.js';
import type { Citation } from '../rule-sets/rule-set.js';
import type { VerticalCard } from '../vertical/vertical-card.js';
import { levelForFirst } from '../vertical/vertical-ranking.js';
import { verticalStanding } from '../vertical/vertical-standing.js';
import { jumpOffOf } from './jump-off-course.js';
import type { JumpCall } from './progress.js';
import type { JumpState, VerticalState } from './state.js';

/** How long a competitor has for a jump, and why. */
export interface JumpTime {
  readonly seconds: number;
  readonly because:
    | 'first trial'
    | 'consecutive trials'
    | 'one left'
    | 'two or three left'
    | 'more than three left';
  /** Competitors left when the bar was set at this height, with those who could still be in a jump-off. */
  readonly left: number;
  /** In the pole vault the clock starts when the uprights are set as asked for. */
  readonly startsWhen: 'called' | 'uprights set';
  readonly rule: Citation;
}

/**
 * The time allowed for a jump. The number left is that at the start of the height: a change applies from the next.
 * `othersSince`: somebody of another competition at the same bar has jumped since the latest jump of this one.
 */
export function timeAllowedFor(state: VerticalState, call: JumpCall, othersSince = false): JumpTime {
  const { rules, edition, event, combined } = state.setup;
  const book = ruleSet(rules, edition);
  const { value, cite } = combined ? book.vertical[event].combinedTime : book.verticalTimeAllowed[event];
  const left = call.jumpOff ? (jumpOffOf(state)?.inRound.length ?? 0) : leftAt(state, call.height);
  const because = reasonFor(state, call, left, othersSince);
  const seconds = {
    'first trial': value.firstTrialS,
    'consecutive trials': value.consecutiveS,
    'one left': value.oneS,
    'two or three left': value.twoOrThreeS,
    'more than three left': value.moreThanThreeS,
  }[because];
  const startsWhen = event === 'pole-vault' ? 'uprights set' : 'called';
  return { seconds, because, left, startsWhen, rule: cite };
}

function reasonFor(
  state: VerticalState,
  call: JumpCall,
  left: number,
  othersSince: boolean,
): JumpTime['because'] {
  const jumps = jumpsTaken(state);
  if (!jumps.some(({ competitor }) => competitor === call.competitor)) return 'first trial';
  if (left <= 1) return 'one left';
  if (!othersSince && isConsecutive(state, call, jumps.at(-1))) return 'consecutive trials';
  return left <= 3 ? 'two or three left' : 'more than three left';
}

/** All jumps that were taken and count, in the order in which they were recorded. */
export function jumpsTaken({ attempts }: VerticalState): JumpState[] {
  return [...attempts.values()].filter(isTaken).sort((a, b) => a.sequence - b.sequence);
}

function isTaken({ standing, judgement: { outcome } }: JumpState): boolean {
  return standing === 'counts' && (outcome === 'cleared' || outcome === 'failed');
}

function isConsecutive({ setup }: VerticalState, call: JumpCall, last: JumpState | undefined): boolean {
  if (last?.competitor !== call.competitor) return false;
  const { consecutiveAcrossHeights } = ruleSet(setup.rules, setup.edition).vertical[setup.event];
  return consecutiveAcrossHeights.value || last.height === call.height;
}

/** Who had to be counted when the bar came to a height. */
function leftAt({ setup, card, heights }: VerticalState, height: number): number {
  const before = upTo(card, heights.indexOf(height));
  const level = levelForFirst(before);
  const couldJumpOff = setup.stage === 'final' && setup.tieForFirst === 'jump-off' && level.length > 1;
  return before.competitors.filter(({ bib, status, series }) => {
    if (status !== null) return false;
    const { ended, best } = verticalStanding(series);
    const reached = best !== null && heights[best]! >= (setup.qualifying?.standard ?? Infinity);
    return (ended === null && !reached) || (couldJumpOff && level.includes(bib));
  }).length;
}

function upTo(card: VerticalCard, index: number): VerticalCard {
  const competitors = card.competitors.map((one) => ({ ...one, series: one.series.slice(0, index) }));
  return { ...card, competitors, jumpOff: [] };
}
