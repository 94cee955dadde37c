import { useSignal } from '@preact/signals';
import { cardSignatureOf } from '#rules';
import { timeText } from '../../labels/format.js';
import { t, tCode } from '../../labels/languages.js';
import { Button } from '../../ui/Button.jsx';
import { Dialog } from '../../ui/Dialog.jsx';
import { TextField } from '../../ui/TextField.jsx';
import type { Body } from '../competition/request.js';
import { useOpen } from '../desk-context.js';
import { NoteForm } from './NoteForm.jsx';
import { Refused } from './Refused.jsx';

/** Notes, the chief judge’s signature under the card, and the referee’s that makes the result official. */
export function CardSection() {
  const { open } = useOpen();
  const isWriting = useSignal(false);
  return (
    <section>
      <h2>{t('card.title')}</h2>
      <Notes />
      <Button onPress={() => (isWriting.value = true)}>{t('note.write')}</Button>
      {isWriting.value && (
        <Dialog title={t('note.write')} onClose={() => (isWriting.value = false)}>
          <NoteForm onDone={() => (isWriting.value = false)} />
        </Dialog>
      )}
      <ChiefJudge />
      {open.kept.capacity !== 'official' && <Referee />}
      <Refused />
    </section>
  );
}

function Notes() {
  const { desk, open } = useOpen();
  const { journal, activity } = open.folded.state;
  const notes = journal.flatMap(({ entry }, at) =>
    entry.kind === 'note' && activity.inEffect[at] ? [entry] : [],
  );
  if (notes.length === 0) return null;
  return (
    <ul class="plain-list">
      {notes.map((note) => (
        <li key={note.id}>
          {timeText(note.seenAt)} · {tCode('note', note.about)}: {note.text}
          {note.competitor !== null && ` (${desk.personOf(note.competitor).bib})`}
        </li>
      ))}
    </ul>
  );
}

function ChiefJudge() {
  const { desk, open, board } = useOpen();
  const signature = cardSignatureOf(open.folded.state);
  const remark = useSignal('');
  const sign = async () => {
    const body: Body = { kind: 'card-signed', remark: remark.value.trim() || null };
    const verdict = await desk.enter(body, () => t('card.signed'));
    if (verdict?.standing === 'accepted') remark.value = '';
  };
  return (
    <>
      <p>
        {signature === null
          ? t('card.notSigned')
          : t(signature.isCurrent ? 'card.signed' : 'card.signedBefore')}
        {board.remaining > 0 && ` · ${t('card.remaining', { count: board.remaining })}`}
      </p>
      {!signature?.isCurrent && board.phase !== 'official' && (
        <>
          <p class="hint">{t('card.how')}</p>
          <TextField label={t('card.remark')} value={remark} />
          <Button onPress={sign}>{t('card.sign')}</Button>
        </>
      )}
    </>
  );
}

/** Makes the result official, once nothing is open. */
function Referee() {
  const { desk, open, board } = useOpen();
  const why = useSignal('');
  if (board.phase === 'official') return <p>{t('phase.official')}</p>;
  const { questions } = open.folded.state;
  const isIncomplete = board.remaining > 0;
  const incomplete = isIncomplete ? why.value.trim() : null;
  return (
    <>
      {questions.length > 0 && <p>{t('card.questions', { count: questions.length })}</p>}
      {isIncomplete && <TextField label={t('card.why')} value={why} />}
      <Button
        kind="main"
        isDisabled={questions.length > 0 || incomplete === ''}
        onPress={() => desk.enter({ kind: 'sign-off', incomplete }, () => t('card.official'))}
      >
        {t('card.official')}
      </Button>
    </>
  );
}
