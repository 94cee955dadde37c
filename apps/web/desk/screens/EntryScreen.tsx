import { eventOf } from '#rules';
import { t } from '../../labels/languages.js';
import { eventIn, unitIn } from '../competition/head.js';
import { hasWind } from '../competition/board.js';
import { useOpen } from '../desk-context.js';
import { BarPanel } from '../entry/BarPanel.jsx';
import { CallCard, OtherTurn } from '../entry/CallCard.jsx';
import { Countdown } from '../entry/Countdown.jsx';
import { EntryPanel } from '../entry/EntryPanel.jsx';
import { ReadBack } from '../entry/ReadBack.jsx';
import { RecordNotice } from '../entry/RecordNotice.jsx';
import { SaidLine } from '../entry/SaidLine.jsx';
import { FirstChecklist, StopButton, Stopped } from '../entry/Stopped.jsx';
import { thrownBy } from '../entry/ThrownImplement.jsx';
import { timeFor } from '../entry/time-for.js';
import { attemptBody, jumpBody } from '../entry/trial-body.js';
import { WindPanel } from '../entry/WindPanel.jsx';

/** The circle, the runway, the bar: who is up and what happened. */
export function EntryScreen() {
  const { desk, open } = useOpen();
  const { folded } = open;
  const draft = desk.draft.value;
  const called = desk.turns.value.find(({ competitionId }) => competitionId === open.kept.id);
  const turn = draft.turn ?? called?.turn ?? null;
  const isAtGauge = desk.isWindsOnly.value || desk.store.settings.value.mode === 'wind';
  if (folded.kind === 'distance' && hasWind(open) && isAtGauge) {
    return (
      <section class="entry-screen">
        <SaidLine />
        <WindPanel state={folded.state} />
      </section>
    );
  }
  const body =
    turn === null || !draft.isReadBack
      ? null
      : folded.kind === 'vertical'
        ? jumpBody(draft, turn)
        : attemptBody(draft, turn, {
            unit: unitIn(open.kept.head),
            isWindy: hasWind(open),
            thrown: thrownBy(open, turn.key, draft),
          });
  const time = turn && timeFor(open, turn);
  return (
    <section class="entry-screen">
      <CallCard turn={turn} />
      <div class="before-trial">
        {time && turn && folded.state.safety.stops.length === 0 && (
          <Countdown
            key={`${turn.key} ${turn.round} ${turn.height}`}
            seconds={time.seconds}
            because={time.because}
          />
        )}
        <OtherTurn turn={turn} />
        <StopButton />
      </div>
      <Stopped />
      <FirstChecklist />
      <SaidLine />
      {desk.store.claims.value.length > 0 ? (
        <RecordNotice />
      ) : turn && body ? (
        <ReadBack turn={turn} body={body} />
      ) : folded.kind === 'vertical' ? (
        <BarPanel state={folded.state} turn={turn} />
      ) : (
        turn && <EntryPanel key={`${turn.key} ${turn.round}`} turn={turn} />
      )}
      <p class="safety">
        {t(eventOf(eventIn(open.kept.head)).kind === 'throw' ? 'safety.throw' : 'safety.jump')}{' '}
        {t('safety.decides')}
      </p>
    </section>
  );
}
