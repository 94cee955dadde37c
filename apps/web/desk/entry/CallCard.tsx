import { useSignal } from '@preact/signals';
import { markText } from '../../labels/format.js';
import { t } from '../../labels/languages.js';
import { Button } from '../../ui/Button.jsx';
import { Dialog } from '../../ui/Dialog.jsx';
import type { Turn } from '../competition/board-shape.js';
import { unitIn } from '../competition/head.js';
import { boardOf } from '../competition/board.js';
import { peopleOf } from '../competition/people.js';
import { useOpen } from '../desk-context.js';
import type { OpenCompetition } from '../desk-store.js';
import { Beside } from './Beside.jsx';
import { emptyDraft } from './draft.js';
import { turnOfSomebody } from './turns.js';

/** Who is up, large; who is next; and what has to be seen to before the trial. */
export function CallCard({ turn }: { readonly turn: Turn | null }) {
  const { desk, open } = useOpen();
  const [up, next, then] = desk.turns.value.map((one) => one.turn);
  const person = turn && desk.personOf(turn.key);
  const isOther = turn !== null && up !== undefined && (turn.key !== up.key || turn.round !== up.round);
  return (
    <section class="call" aria-label={t('call.up')}>
      {person && turn ? (
        <div class="up">
          <p class="up-round">
            {turnText(turn, open)}
            {turn.flight !== null && ` · ${t('call.flight', { flight: turn.flight })}`}
            {turn.isUnderProtest && ` · ${t('call.underProtest')}`}
          </p>
          <p class="up-who">
            <span class="bib">{person.bib}</span>
            <span class="up-name">
              <strong>{person.name}</strong>
              <span>{person.club}</span>
            </span>
          </p>
          <Beside person={person} />
          {isOther && <p class="notice held">{t('readBack.outOfTurn')}</p>}
        </div>
      ) : (
        <p class="up nobody">{t('call.nobody')}</p>
      )}
      <dl class="coming">
        <Coming word={t('call.next')} turn={isOther ? up : next} />
        <Coming word={t('call.then')} turn={isOther ? next : then} />
      </dl>
    </section>
  );
}

function turnText({ round, height, isJumpOff }: Turn, open: OpenCompetition): string {
  const { head } = open.kept;
  if (height === null) return t('call.round', { round, rounds: head.plan?.rounds ?? '' });
  if (isJumpOff) return t('jumpOff.round', { round });
  return t('bar.trial', { trial: round, height: markText(height, unitIn(head)) });
}

function Coming({ word, turn }: { readonly word: string; readonly turn: Turn | undefined }) {
  const { desk } = useOpen();
  if (!turn) return null;
  const { bib, name, isLeftHanded } = desk.personOf(turn.key);
  const isAway = desk.store.group.value.some(({ folded }) => folded.state.away.has(turn.key));
  return (
    <div>
      <dt>{word}</dt>
      <dd>
        <span class="bib">{bib}</span> {name}
        {isLeftHanded && ` · ${t('hand.short')}`}
        {isAway && ` · ${t('away')}`}
      </dd>
    </div>
  );
}

/** For when somebody else acts than is up. */
export function OtherTurn({ turn }: { readonly turn: Turn | null }) {
  const { desk } = useOpen();
  const isChoosing = useSignal(false);
  const up = desk.turns.value[0]?.turn;
  const isOther = turn !== null && up !== undefined && (turn.key !== up.key || turn.round !== up.round);
  return (
    <>
      <Button kind="quiet" onPress={() => (isChoosing.value = true)}>
        {t('call.other')}
      </Button>
      {isOther && (
        <Button kind="quiet" onPress={() => (desk.draft.value = emptyDraft())}>
          {t('call.backToUp')}
        </Button>
      )}
      {isChoosing.value && <WhoActs onClose={() => (isChoosing.value = false)} />}
    </>
  );
}

/** Somebody took a trial who was not up, or a trial of an earlier round is entered late. */
function WhoActs({ onClose }: { readonly onClose: () => void }) {
  const { desk } = useOpen();
  const choose = async (open: OpenCompetition, turn: Turn) => {
    desk.draft.value = { ...emptyDraft(), turn };
    await desk.store.keepSettings({ open: open.kept.id });
    onClose();
  };
  return (
    <Dialog title={t('call.whoActs')} onClose={onClose}>
      {desk.store.group.value.map((open) => (
        <section key={open.kept.id}>
          <h3>{open.kept.head.title}</h3>
          <ul class="list">
            {turnsIn(open).map((turn) => {
              const { bib, name } = desk.personOf(turn.key);
              return (
                <li key={turn.key}>
                  <Button onPress={() => choose(open, turn)}>
                    <strong>
                      {bib} {name}
                    </strong>
                    <span>{turnText(turn, open)}</span>
                  </Button>
                </li>
              );
            })}
          </ul>
        </section>
      ))}
    </Dialog>
  );
}

function turnsIn(open: OpenCompetition): readonly Turn[] {
  const board = boardOf(open);
  return peopleOf(open.kept.head).flatMap(({ key }) => turnOfSomebody(open, board, key) ?? []);
}
