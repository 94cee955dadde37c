import type { Delay, HeightWhy, MarkWhy, Needs, PublicCompetition, Row } from '../formats/competition.js';
import type { Wording } from '../words/wording.js';

/* What the parts of a snapshot say in a language. */

/** Why a row stands where it stands, where more than the best mark decides; otherwise nothing is to be explained. */
export function whyText({ why }: Pick<Row, 'why'>, wording: Wording): string | null {
  if (why === null) return null;
  return why.by === 'mark' ? markWhy(why, wording) : heightWhy(why, wording);
}

function markWhy(why: MarkWhy, { say, decimal }: Wording): string | null {
  const level = why.level.map(decimal).join(' · ');
  const own = why.own === null ? null : decimal(why.own);
  const other = why.other === null ? '' : decimal(why.other);
  if (why.nth === null) {
    if (level === '') return say('cell.O');
    const shared = say('reason.shared', { level });
    return why.isUndecidable ? `${shared} (${say('cell.O')})` : shared;
  }
  if (why.nth < 2) return null;
  if (own === null) return say('reason.noFurther', { level, other });
  return say('reason.level', { level, own, other });
}

function heightWhy(
  { decidedBy, own, other, isJumpedOff }: HeightWhy,
  { say, decimal }: Wording,
): string | null {
  if (isJumpedOff) return say('reason.jumpOff');
  const height = decimal(own.height);
  if (decidedBy === 'equal') return say('reason.shared', { level: height });
  if (other === null || decidedBy === 'first' || decidedBy === 'height') return null;
  return decidedBy === 'failures at height'
    ? say('reason.failuresAt', { height, own: own.failuresAtHeight, other: other.failuresAtHeight })
    : say('reason.failures', { height, own: own.totalFailures, other: other.totalFailures });
}

/** One thing that is needed; `isFar`: first place, where a nearer one comes first. */
export interface Need {
  readonly text: string;
  readonly isFar: boolean;
}

/** What is needed with the next trial: the nearest better place, first place, and to go on. */
export function needTexts(needs: Needs, { say, decimal, place }: Wording): Need[] {
  const { places, cut, standard } = needs;
  const far = places.length > 1 ? places.at(-1) : undefined;
  const better = [places[0], far].flatMap((one) => {
    if (!one) return [];
    const values = { mark: decimal(one.mark), place: place(one.place) };
    const text =
      one.trial !== null
        ? say('need.clear', { ...values, trial: one.trial })
        : say(one.isShared ? 'need.shared' : 'need.place', values);
    return [{ text, isFar: one === far }];
  });
  const pass = cut && (cut.isIn ? say('need.in') : cut.mark && say('need.cut', { mark: decimal(cut.mark) }));
  const reached = standard && say('need.standard', { mark: decimal(standard) });
  return [...better, ...[pass, reached].flatMap((text) => (text ? [{ text, isFar: false }] : []))];
}

/** What a mark is called where there is none. */
export function statusText(
  { status, mark, place }: Pick<Row, 'status' | 'mark' | 'place'>,
  wording: Wording,
): string | null {
  if (status !== null && !(status === 'NM' && mark !== null)) return wording.sayCode('status', status);
  return place === null && mark === null ? wording.say('status.waiting') : null;
}

/** Of a cell of a card that is no mark: what it means. */
export function cellText(cell: string, wording: Wording): string {
  return cell.length === 1 ? wording.sayCode('cell', cell) : wording.decimal(cell);
}

/** Where a competition is, in a few words. */
export function whereText(
  {
    state,
    isJumpOff,
    bar,
    round,
    rounds,
  }: Pick<PublicCompetition, 'state' | 'isJumpOff' | 'bar' | 'round' | 'rounds'>,
  { say, decimal }: Wording,
): string | null {
  if (state !== 'running') return null;
  if (isJumpOff) return say('jumpOff');
  if (bar !== null) return say('bar', { height: decimal(bar.height) });
  if (round === null) return null;
  return say('round', { n: rounds === null ? round : `${round}/${rounds}` });
}

/**
 * What has happened between two versions, in a few words: the latest trial that is new, else another state. `null`:
 * nothing that the crowd would want to be told.
 */
export function newsBetween(
  before: PublicCompetition,
  now: PublicCompetition,
  wording: Wording,
): string | null {
  const known = new Map(before.rows.map((row) => [row.competitor, row]));
  for (const row of now.rows) {
    const what = newIn(row, known.get(row.competitor), wording);
    if (what === null) continue;
    const place = row.place === null ? [] : [wording.place(row.place)];
    return `${row.name}: ${[...what, ...place].join(', ')}`;
  }
  return before.state === now.state ? null : `${now.title}: ${wording.sayCode('state', now.state)}`;
}

/** What, and in which round or at which height. */
function newIn(row: Row, before: Row | undefined, wording: Wording): string[] | null {
  const trial = row.trials.at(-1);
  if (trial && trial.round > (before?.trials.at(-1)?.round ?? 0)) {
    return [cellText(trial.cell, wording), wording.say('round', { n: trial.round })];
  }
  const cells = new Map(before?.heights.map(({ height, cell }) => [height, cell]));
  const jump = row.heights.find(({ height, cell }) => cell !== null && cell !== (cells.get(height) ?? null));
  if (!jump) return null;
  const last = jump.cell!.slice(-1);
  const what = last === 'O' ? wording.say('cell.cleared') : wording.sayCode('cell', last);
  return [what, wording.decimal(jump.height)];
}

export function delayText({ startsAt, plannedAt, reason }: Delay, { say, time }: Wording): string {
  return say('delayed', { time: time(startsAt), planned: time(plannedAt), reason });
}
