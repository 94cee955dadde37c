import { formatMark, timeAllowedFor, verticalProgressOf, type JumpCall, type JumpOffCourse } from '#rules';
import type { LoadedVertical } from '../platform/competition/loaded.js';
import { globalId } from '../platform/inputs/global-id.js';
import type { CompetitionProgress } from './results.types.js';
import type { TrialCall } from './trial-call.type.js';
import type { JumpOffProgress, JumpTime } from './vertical-progress.types.js';
import { nameOf, type View } from './view.js';

type VerticalView = View<LoadedVertical>;

/** Where a high jump or pole vault is and who is called. */
export function verticalProgress(view: VerticalView): CompetitionProgress {
  const { state } = view.loaded;
  const { phase, calls, outstanding, up, next, then, ...where } = verticalProgressOf(state);
  const called = calls.map((call) => callView(view, call));
  const heightOf = (height: number): string => formatMark(height, state.setup.unit);
  const wantsUp = state.competitors.find(({ key }) => key === up?.competitor);
  return {
    phase,
    round: up?.trial ?? null,
    flight: called[0]?.flight ?? null,
    up: up && (called[0] ?? null),
    next: next && (called[1] ?? null),
    then: then && (called[2] ?? null),
    remaining: calls.length + outstanding.length,
    vertical: {
      bar: heightOf(where.bar),
      nextHeight: where.nextHeight === null ? null : heightOf(where.nextHeight),
      awaits: where.awaits,
      calls: called,
      outstanding: outstanding.map((call) => callView(view, call)),
      left: where.left.map(idOf),
      timeAllowed: up && timeOf(view, up),
      behindZeroCm: wantsUp?.behindZeroCm ?? null,
      winner: where.winner && {
        competitor: idOf(where.winner.competitor),
        isChoosingHeight: where.winner.choosesHeight,
      },
      jumpOff: where.jumpOff && jumpOffView(where.jumpOff, heightOf),
    },
  };
}

function timeOf({ loaded }: VerticalView, call: JumpCall): JumpTime {
  const { rule, ...time } = timeAllowedFor(loaded.state, call);
  return { ...time, rule: rule.rule };
}

function jumpOffView(
  { phase, round, height, ruleHeight, remaining, inRound, toJump }: JumpOffCourse,
  heightOf: (height: number) => string,
): JumpOffProgress {
  return {
    phase,
    round,
    height: heightOf(height),
    ruleHeight: heightOf(ruleHeight),
    remaining: remaining.map(idOf),
    inRound: inRound.map(idOf),
    toJump: toJump.map(idOf),
  };
}

function callView(view: VerticalView, call: JumpCall): TrialCall {
  const { loaded } = view;
  const line = loaded.roster.find(({ competitor }) => competitor.id === call.competitor)!;
  return {
    competitor: idOf(call.competitor),
    bib: line.competitor.bib,
    name: nameOf(view, line),
    round: call.trial,
    flight: line.competitor.flight,
    height: formatMark(call.height, loaded.state.setup.unit),
    isJumpOff: call.jumpOff,
    isUnderProtest: call.underProtest,
  };
}

function idOf(key: string): string {
  return globalId('Competitor', key);
}
