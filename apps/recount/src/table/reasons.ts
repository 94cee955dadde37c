import {
  reasonsOf,
  sentenceOf,
  verticalReasonsOf,
  verticalSentenceOf,
  type CompetitionContent,
  type NoPlaceReason,
  type Reason,
  type VerticalReason,
} from '#rules';
import { printable } from './text.js';

/** Decided by the best mark or height alone: the table shows it. */
const PLAIN: ReadonlySet<unknown> = new Set(['first', 1, 'height']);

type AnyPlaceReason = Exclude<Reason | VerticalReason, NoPlaceReason>;

function needsWords(reason: AnyPlaceReason): boolean {
  const decidedInJumpOff = 'jumpedOff' in reason && reason.jumpedOff;
  return decidedInJumpOff || !PLAIN.has(reason.decidedBy);
}

interface Told {
  readonly bib: string;
  readonly rule: string;
  readonly sentence: string;
}

function toldOf<R extends Reason | VerticalReason>(
  reasons: readonly R[],
  sentence: (reason: R) => string,
): Told[] {
  return reasons.flatMap((reason) =>
    reason.place === null || !needsWords(reason)
      ? []
      : [{ bib: reason.bib, rule: reason.rule.rule, sentence: sentence(reason) }],
  );
}

/** For everyone whose place a tie had a part in, why it is that place: lines by the rule that decided. */
export function reasonLines(content: CompetitionContent): ReadonlyMap<string, readonly string[]> {
  const told =
    content.kind === 'vertical'
      ? toldOf(verticalReasonsOf(content.card), verticalSentenceOf)
      : toldOf(reasonsOf(content.card), sentenceOf);
  const competitors: readonly { bib: string; name: string | null }[] = content.card.competitors;
  const names = new Map(competitors.map(({ bib, name }) => [bib, name]));
  const lines = new Map<string, string[]>();
  for (const { bib, rule, sentence } of told) {
    const who = [bib, names.get(bib) ?? ''].join(' ').trim();
    lines.set(rule, [...(lines.get(rule) ?? []), `${printable(who)}, ${sentence}`]);
  }
  return lines;
}
