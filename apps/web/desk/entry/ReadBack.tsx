import { eventOf, isFarOutside, ruleSet, type FoulCode, type Verdict } from '#rules';
import { markText } from '../../labels/format.js';
import { t, tCode } from '../../labels/languages.js';
import { Button } from '../../ui/Button.jsx';
import { Choice } from '../../ui/Choice.jsx';
import type { Turn } from '../competition/board-shape.js';
import { eventIn, unitIn } from '../competition/head.js';
import type { Body } from '../competition/request.js';
import { useOpen, type Desk } from '../desk-context.js';
import type { OpenCompetition } from '../desk-store.js';
import { bodyText } from './body-text.js';
import { emptyDraft } from './draft.js';
import { Protest, ProtestedMark } from './Protest.jsx';
import { ThrownImplement } from './ThrownImplement.jsx';

/** The second look: what will be recorded, of whom, and what speaks against it. */
export function ReadBack({ turn, body }: { readonly turn: Turn; readonly body: Body }) {
  const { desk, open } = useOpen();
  const { bib, name } = desk.personOf(turn.key);
  const what = bodyText(body, unitIn(open.kept.head));
  const isFailure = 'outcome' in body && (body.outcome === 'foul' || body.outcome === 'failed');
  const isValid = 'outcome' in body && (body.outcome === 'valid' || body.outcome === 'unmeasured');
  // Protested and not measured yet: without the mark there would be nothing to rule on.
  const isUnread = desk.draft.value.protested !== null && body.kind === 'attempt' && body.protested === null;
  const change = () =>
    (desk.draft.value = { ...desk.draft.value, isReadBack: false, outcome: null, protested: null });
  return (
    <section class="read-back" aria-label={t('readBack')}>
      <p class="read-back-who">
        <span class="bib">{bib}</span> {name}
      </p>
      <p class="read-back-what">{what}</p>
      <p class="hint">
        {isValid && <strong>{t('readBack.judges')} </strong>}
        {t('readBack.say')}
      </p>
      <Doubts body={body} open={open} verdict={desk.store.tryOut(body)} />
      <ProtestedMark />
      <div class="pair">
        <Button kind="main" autoFocus isDisabled={isUnread} onPress={() => record(desk, turn, body, what)}>
          {t('record')}
        </Button>
        <Button onPress={change}>{t('change')}</Button>
      </div>
      {isFailure && <Reasons open={open} desk={desk} />}
      {isFailure && <Protest />}
      {body.kind === 'attempt' && <ThrownImplement competitor={turn.key} />}
    </section>
  );
}

async function record(desk: Desk, turn: Turn, body: Body, what: string): Promise<void> {
  const { bib } = desk.personOf(turn.key);
  const draft = desk.draft.value;
  desk.draft.value = emptyDraft();
  const verdict = await desk.enter(body, (standing) =>
    t(standing === 'held' ? 'done.held' : 'done.recorded', { who: bib, what }),
  );
  // What cannot be right is not lost either: it is there to be put right.
  if (verdict?.standing === 'refused') desk.draft.value = { ...draft, isReadBack: false };
}

interface DoubtsProps {
  readonly body: Body;
  readonly open: OpenCompetition;
  readonly verdict: Verdict | null;
}

function Doubts({ body, open, verdict }: DoubtsProps) {
  const { head } = open.kept;
  const mark = 'mark' in body ? body.mark : null;
  const isFar = mark !== null && isFarOutside(eventIn(head), mark, unitIn(head));
  const { minCm, maxCm } = eventOf(eventIn(head)).plausible;
  const notices = verdict?.standing === 'accepted' ? verdict.notices : [];
  return (
    <>
      {isFar && (
        <p class="notice warning" role="alert">
          {t('readBack.farOutside')}{' '}
          {unitIn(head) === 'cm' &&
            t('mark.usual', { from: markText(minCm, 'cm'), to: markText(maxCm, 'cm') })}
        </p>
      )}
      {notices.includes('OUT_OF_TURN') && <p class="notice held">{t('readBack.outOfTurn')}</p>}
      {notices.includes('FINER_THAN_MEASURED') && <p class="notice warning">{t('readBack.finer')}</p>}
      {verdict?.standing === 'held' && (
        <p class="notice held">
          {t('readBack.held')} <span lang="en">{verdict.hold.message}</span>
        </p>
      )}
      {verdict?.standing === 'refused' && (
        <p class="notice refused" role="alert" lang="en">
          {verdict.refusal.message} {verdict.refusal.remedy}
        </p>
      )}
    </>
  );
}

function Reasons({ open, desk }: { readonly open: OpenCompetition; readonly desk: Desk }) {
  const { head } = open.kept;
  const codes = ruleSet(head.rules, head.edition).fouls[eventIn(head)].map(({ value }) => value);
  const none = { value: 'none', text: t('readBack.noReason') } as const;
  return (
    <Choice<FoulCode | 'none'>
      legend={t('readBack.reason')}
      options={[none, ...codes.map((value) => ({ value, text: tCode('foul', value) }))]}
      value={desk.draft.value.foul ?? 'none'}
      onChoose={(value) =>
        (desk.draft.value = { ...desk.draft.value, foul: value === 'none' ? null : value })
      }
    />
  );
}
