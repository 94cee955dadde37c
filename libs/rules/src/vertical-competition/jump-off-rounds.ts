import type { HoldCode } from '../journal/verdict.js';
import { isDecided, playRound, startJumpOff, type JumpOffState } from '../vertical/jump-off.js';
import type { JumpOffRound, VerticalCard } from '../vertical/vertical-card.js';
import { levelForFirst } from '../vertical/vertical-ranking.js';
import { groupedBy, type Gathered, type JumpDraft } from './jumps.js';
import { isJump } from './rows.js';
import type { VerticalSetup } from './setup.js';

/** The jump-off as a card has it, and the jumps that fit nowhere in it. */
export interface JumpOffRounds {
  readonly rounds: readonly JumpOffRound[];
  readonly outside: ReadonlyMap<string, HoldCode>;
}

interface Field {
  readonly bibOf: ReadonlyMap<string, string>;
  /** Set aside: the jumps that they made before they were disqualified are kept and decide nothing. */
  readonly disqualified: ReadonlySet<string>;
  readonly level: ReadonlySet<string>;
}

/** The rounds so far: who was in the last one, and what they decide. */
interface Played {
  readonly rounds: readonly JumpOffRound[];
  readonly state: JumpOffState;
  /** `null`: nobody jumped in it, so that nobody's jump is missing. */
  readonly inLast: ReadonlySet<string> | null;
}

/**
 * Arranges the jumps of the jump-off by rounds; within one, by the order of competition.
 * @param card without the jump-off
 */
export function arrangeJumpOff(
  setup: VerticalSetup,
  gathered: Gathered,
  drafts: readonly JumpDraft[],
  card: VerticalCard,
): JumpOffRounds {
  const outside = new Map<string, HoldCode>();
  const level = levelForFirst(card);
  const field: Field = {
    bibOf: new Map(setup.competitors.map(({ key, bib }) => [key, bib])),
    disqualified: new Set(gathered.decisions.disqualifiedAt.keys()),
    level: new Set(level),
  };
  let played: Played = { rounds: [], state: startJumpOff(level), inLast: null };
  for (const trials of byTrial(drafts)) {
    const allowed = trials.filter((draft) => keep(outside, draft, holdOf(setup, gathered, draft)));
    const round = roundOf(field, played, allowed, outside);
    if (round.length > 0) played = playOn(setup, field, played, round);
  }
  return { rounds: played.rounds, outside };
}

/** The jumps of one round that fit; the others go outside. */
function roundOf(
  field: Field,
  { rounds, state, inLast }: Played,
  jumps: readonly JumpDraft[],
  outside: Map<string, HoldCode>,
): JumpDraft[] {
  const isNext = jumps[0]?.trial === rounds.length + 1;
  const hasGap = (draft: JumpDraft): boolean =>
    !isNext || (inLast !== null && !inLast.has(draft.competitor) && !isSetAside(field, draft));
  const fitting = jumps.filter((draft) =>
    keep(
      outside,
      draft,
      faultIn(field, state, jumps, draft) ?? (hasGap(draft) ? 'EARLIER_TRIAL_OPEN' : null),
    ),
  );
  // The bar of a round stands where the first jump of it that came in says.
  const height = fitting[0]?.height;
  return fitting.filter((draft) =>
    keep(outside, draft, draft.height === height ? null : 'ANOTHER_JUMP_OFF_HEIGHT'),
  );
}

function playOn(
  setup: VerticalSetup,
  field: Field,
  { rounds, state }: Played,
  round: readonly JumpDraft[],
): Played {
  const counted = round.filter((draft) => !isSetAside(field, draft));
  return {
    rounds: [...rounds, written(setup, field, round)],
    state: playRound(state, written(setup, field, counted)),
    inLast: counted.some(isJump) ? new Set(round.map(({ competitor }) => competitor)) : null,
  };
}

function keep(outside: Map<string, HoldCode>, draft: JumpDraft, hold: HoldCode | null): boolean {
  if (hold) outside.set(draft.id, hold);
  return hold === null;
}

/** The jumps of each round, in the order in which they came to count. */
function byTrial(drafts: readonly JumpDraft[]): JumpDraft[][] {
  const sorted = drafts.toSorted((a, b) => a.trial - b.trial || a.entered - b.entered);
  return [...groupedBy(sorted, ({ trial }) => trial).values()];
}

function holdOf(
  setup: VerticalSetup,
  { decisions, declinedAt }: Gathered,
  { competitor, entered }: JumpDraft,
): HoldCode | null {
  if (entered > (decisions.disqualifiedAt.get(competitor) ?? Infinity)) return 'DISQUALIFIED';
  if (decisions.notStarted.has(competitor)) return 'NOT_STARTED';
  if (setup.stage !== 'final' || setup.tieForFirst === 'shared') return 'NOT_IN_JUMP_OFF';
  return entered > (declinedAt ?? Infinity) ? 'JUMP_OFF_DECLINED' : null;
}

function faultIn(
  field: Field,
  state: JumpOffState,
  round: readonly JumpDraft[],
  draft: JumpDraft,
): HoldCode | null {
  if (isSetAside(field, draft)) return null;
  const bib = field.bibOf.get(draft.competitor)!;
  if (field.level.size < 2 || !field.level.has(bib)) return 'NOT_IN_JUMP_OFF';
  if (!state.remaining.includes(bib)) return 'OUT_OF_JUMP_OFF';
  // A round that held somebody disqualified later is not too late because it would have been without him.
  const heldAllTheSame = round.some((other) => isSetAside(field, other));
  return isDecided(state) && !heldAllTheSame ? 'OUT_OF_JUMP_OFF' : null;
}

function isSetAside({ disqualified }: Field, { competitor }: JumpDraft): boolean {
  return disqualified.has(competitor);
}

function written(
  { competitors }: VerticalSetup,
  { bibOf }: Field,
  round: readonly JumpDraft[],
): JumpOffRound {
  const outcomes = new Map(round.map(({ competitor, judgement }) => [competitor, judgement.outcome]));
  return {
    height: round[0]?.height ?? 0,
    tries: competitors.flatMap(({ key }) => {
      const trial = outcomes.get(key);
      return trial ? [{ bib: bibOf.get(key)!, trial }] : [];
    }),
  };
}
