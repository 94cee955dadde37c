import {
  fault,
  FIRST_CHECKS,
  firstFault,
  lastChecks,
  type CodedCheck,
  type Fault,
  type FaultContext,
} from '../journal/faults.js';
import { isMark } from '../quantities/mark.js';
import { ruleSet } from '../rule-sets/index.js';
import type { JumpJudgement, JumpTurn, VerticalEntry } from './entry.js';
import { fitsIncident } from './incidents.js';
import { jumpOffOf } from './jump-off-course.js';
import { isComplete } from './progress.js';
import { isJumpedAt } from './progression.js';
import type { VerticalState } from './state.js';

/** The first reason, in order of precedence, why an entry can never be right; `undefined` when there is none. */
export function verticalFaultOf(state: VerticalState, entry: VerticalEntry): Fault | undefined {
  return firstFault(state, entry, CHECKS);
}

type Context = FaultContext<VerticalState>;

/** The uprights of no stand can be moved further. */
const MAX_BEHIND_ZERO_CM = 200;

const CHECKS: readonly CodedCheck<VerticalState, VerticalEntry>[] = [
  ...FIRST_CHECKS,
  ['CUT_NOT_IN_PLAN', cutNotInPlan],
  ['HEIGHT_OUT_OF_RANGE', heightOutOfRange],
  ['HEIGHT_NOT_LEFT_OUT', cannotBeLeftOut],
  ['TRIAL_OUT_OF_RANGE', (_, entry) => turnField(entry, isNoTrial, 'trial')],
  [
    'UPRIGHTS_NOT_OF_EVENT',
    ({ state }, entry) => fault(entry.kind === 'uprights' && state.setup.event !== 'pole-vault', null),
  ],
  ['UPRIGHTS_OUT_OF_RANGE', uprightsOutOfRange],
  ['FOUL_NOT_OF_EVENT', foulNotOfEvent],
  ['INCIDENT_NOT_OF_OUTCOME', incidentNotOfOutcome],
  [
    'PROTEST_NOT_EXPECTED',
    (_, entry) => judged(entry, (j) => fault(j.protested && j.outcome !== 'failed', 'protested')),
  ],
  ['NO_JUMP_OFF', noJumpOff],
  ['JUMP_OFF_ROUND_OPEN', jumpOffRoundOpen],
  ...lastChecks<VerticalState>(isComplete),
  ['ALREADY_SO', alreadySo],
];

function judged(
  entry: VerticalEntry,
  check: (judgement: JumpJudgement) => string | null | undefined,
): string | null | undefined {
  const isJudgement = entry.kind === 'jump' || entry.kind === 'jump-off' || entry.kind === 'jump-correction';
  return isJudgement ? check(entry) : undefined;
}

/** The field at fault among the trials at heights that an entry names. */
function turnField(
  entry: VerticalEntry,
  wrong: (turn: JumpTurn) => boolean,
  field: keyof JumpTurn,
): string | undefined {
  if (entry.kind === 'jump-move') return entry.moves.some(wrong) ? 'moves' : undefined;
  const names = entry.kind === 'jump' || entry.kind === 'jump-off' || entry.kind === 'jump-order';
  return names && wrong(entry) ? field : undefined;
}

/** There are no cuts: somebody can be let through from a qualification to the final only. */
function cutNotInPlan({ state: { setup } }: Context, entry: VerticalEntry): string | null | undefined {
  if (entry.kind !== 'admission') return undefined;
  return fault(setup.stage !== 'qualification' || entry.after !== null, 'after');
}

function heightOutOfRange({ state: { setup } }: Context, entry: VerticalEntry): string | null | undefined {
  if (entry.kind === 'bar') return fault(!isMark(entry.height, setup.unit), 'height');
  return turnField(entry, ({ height }) => !isMark(height, setup.unit), 'height');
}

/** Left out is a height of the competition, below the bar, at which nobody jumped. */
function cannotBeLeftOut({ state }: Context, entry: VerticalEntry): string | null | undefined {
  if (entry.kind !== 'bar') return undefined;
  const wrong = entry.leavesOut.some(
    (height) => height >= entry.height || !state.heights.includes(height) || isJumpedAt(state, height),
  );
  return fault(wrong, 'leavesOut');
}

function isNoTrial({ trial }: JumpTurn): boolean {
  return !Number.isSafeInteger(trial) || trial < 1;
}

function uprightsOutOfRange(_: Context, entry: VerticalEntry): string | null | undefined {
  if (entry.kind !== 'uprights') return undefined;
  const { behindZeroCm: cm } = entry;
  const right = Number.isSafeInteger(cm) && cm >= 0 && cm <= MAX_BEHIND_ZERO_CM && !Object.is(cm, -0);
  return fault(!right, 'behindZeroCm');
}

function foulNotOfEvent({ state: { setup } }: Context, entry: VerticalEntry): string | null | undefined {
  const known = ruleSet(setup.rules, setup.edition).fouls[setup.event];
  return judged(entry, ({ foul, outcome }) => {
    const right = foul === null || (outcome === 'failed' && known.some(({ value }) => value === foul));
    return fault(!right, 'foul');
  });
}

function incidentNotOfOutcome(
  { state: { setup } }: Context,
  entry: VerticalEntry,
): string | null | undefined {
  return judged(entry, ({ incident, outcome }) =>
    fault(incident !== null && !fitsIncident(incident, setup.event, outcome), 'incident'),
  );
}

/** Declined is a jump-off that is due or under way. */
function noJumpOff({ state }: Context, entry: VerticalEntry): string | null | undefined {
  if (entry.kind !== 'jump-off-declined' || state.jumpOffDeclined) return undefined;
  const phase = jumpOffOf(state)?.phase;
  return fault(phase !== 'due' && phase !== 'running', null);
}

/** Nobody is to have jumped for nothing, or to be left without a jump: it is declined between two rounds. */
function jumpOffRoundOpen({ state }: Context, entry: VerticalEntry): string | null | undefined {
  if (entry.kind !== 'jump-off-declined') return undefined;
  return fault((jumpOffOf(state)?.round ?? Infinity) <= state.card.jumpOff.length, null);
}

function alreadySo({ state }: Context, entry: VerticalEntry): string | null | undefined {
  switch (entry.kind) {
    case 'jump-correction':
      return fault(sameJudgement(state.attempts.get(entry.attempt)?.judgement, entry), null);
    case 'jump-move':
      return fault(
        entry.moves.every((move) => {
          const jump = state.attempts.get(move.attempt);
          const sameTurn = jump?.height === move.height && jump.trial === move.trial;
          return sameTurn && jump.competitor === move.competitor;
        }),
        'moves',
      );
    case 'bar':
      return fault(entry.height === state.barSet && entry.leavesOut.length === 0, 'height');
    case 'uprights': {
      const own = state.competitors.find(({ key }) => key === entry.competitor);
      return fault(own?.behindZeroCm === entry.behindZeroCm, 'behindZeroCm');
    }
    case 'jump-off-declined':
      return fault(state.jumpOffDeclined, null);
    default:
      return undefined;
  }
}

function sameJudgement(now: JumpJudgement | undefined, then: JumpJudgement): boolean {
  const keys = ['outcome', 'foul', 'incident', 'protested'] as const;
  return now !== undefined && keys.every((key) => now[key] === then[key]);
}
