import { useSignal } from '@preact/signals';
import { n } from '../../labels/notebook/words.js';
import { t } from '../../labels/languages.js';
import { uuidV7 } from '../../offline/uuid-v7.js';
import { Button } from '../../ui/Button.jsx';
import { useNotebook, type Notebook } from '../notebook.js';
import type { AthleteNotes } from '../shapes.js';
import { ChecklistForm } from './ChecklistForm.jsx';
import { EMPTY_DRAFT, isUnreadable, noted, throwInput, type Draft, type Rest } from './draft.js';
import { MarkFields } from './MarkFields.jsx';
import { PointRow } from './PointRow.jsx';
import { checklistOf, practiceToday, thrownBy } from './practice-day.js';
import { ThrownForm } from './ThrownForm.jsx';
import { nameOf, pointOf, said } from './words.js';

const NO_CODES: readonly string[] = [];

/** One throw of one athlete. After it the form is empty again, for the next one. */
export function ThrowForm({ athlete }: { readonly athlete: AthleteNotes }) {
  const notebook = useNotebook();
  const draft = useSignal<Draft>(EMPTY_DRAFT);
  const isChoosing = useSignal(false);
  const last = useSignal<string | null>(null);
  const { athleteId } = athlete;
  const thrown = thrownBy(notebook, athlete);
  const checklist = checklistOf(athlete, thrown.event);
  const codes = checklist?.codes ?? NO_CODES;
  const count = practiceToday(notebook).rounds[athleteId] ?? 0;
  const isWeightMissing = thrown.implementGrams === null && !thrown.event.endsWith('JUMP');
  const isReady = !isWeightMissing && !isUnreadable(draft.value);
  const keep = async (rest: Rest) => {
    last.value = await keepThrow(notebook, athlete, draft.value, rest);
    draft.value = EMPTY_DRAFT;
  };
  return (
    <div class="throw">
      <h3>{n('practice.throw', { name: athlete.name, number: count + 1 })}</h3>
      <ThrownForm athlete={athlete} thrown={thrown} />
      {codes.length > 0 && (
        <p class="today opens">
          {n('checklist.today', { count: codes.length })}{' '}
          <Button kind="quiet" onPress={() => (isChoosing.value = true)}>
            {n('checklist.change')}
          </Button>
        </p>
      )}
      {codes.length === 0 && (
        <Button onPress={() => (isChoosing.value = true)}>{n('checklist.choose')}</Button>
      )}
      {codes.map((code) => (
        <PointRow
          key={code}
          name={nameOf(notebook, thrown.event, code)}
          looksLike={saidOf(notebook, thrown.event, code)}
          caution={pointOf(notebook, thrown.event, code)?.caution ?? null}
          seen={draft.value.seen[code]}
          onNote={(seen) => (draft.value = noted(draft.value, code, seen))}
        />
      ))}
      <MarkFields event={thrown.event} draft={draft} />
      <NextButtons
        hasRest={codes.length > 0}
        isReady={isReady}
        said={last.value ?? (isWeightMissing ? n('thrown.weightMissing') : '')}
        onNext={(rest) => void keep(rest)}
      />
      {isChoosing.value && (
        <ChecklistForm
          athlete={athlete}
          event={thrown.event}
          chosen={codes}
          onClose={() => (isChoosing.value = false)}
        />
      )}
    </div>
  );
}

function saidOf(notebook: Notebook, event: string, code: string): string | null {
  const point = pointOf(notebook, event, code);
  return point && said(point.looksLike);
}

interface NextButtonsProps {
  /** Points of which nothing may have been noted. */
  readonly hasRest: boolean;
  readonly isReady: boolean;
  readonly said: string;
  readonly onNext: (rest: Rest) => void;
}

/** Says with the same touch what the points are that nothing was noted of. */
function NextButtons({ hasRest, isReady, said: text, onNext }: NextButtonsProps) {
  return (
    <div class="next" role="group" aria-label={n('practice.next')}>
      <Button kind="main" isDisabled={!isReady} onPress={() => onNext('not-there')}>
        {hasRest ? n('practice.nextRest') : n('practice.next')}
      </Button>
      {hasRest && (
        <Button isDisabled={!isReady} onPress={() => onNext('unseen')}>
          {n('practice.nextUnseen')}
        </Button>
      )}
      <p role="status" class="kept">
        {text}
      </p>
    </div>
  );
}

/** Written to this device before it is said to be kept; the day of practice goes before its first throw. */
async function keepThrow(
  notebook: Notebook,
  athlete: AthleteNotes,
  draft: Draft,
  rest: Rest,
): Promise<string> {
  const { store, session } = notebook;
  const { athleteId, name } = athlete;
  const thrown = thrownBy(notebook, athlete);
  const day = practiceToday(notebook);
  const checklist = checklistOf(athlete, thrown.event);
  const nowMs = Date.now();
  const round = (day.rounds[athleteId] ?? 0) + 1;
  const ids = { throwId: uuidV7(nowMs), observationId: uuidV7(nowMs) };
  const of = { athleteId, thrown, checklist, codes: checklist?.codes ?? [], round, ids, nowMs };
  const at = { device: session.device, deviceAt: new Date(nowMs).toISOString() };
  const isFirst = Object.keys(day.rounds).length === 0;
  const about = n('practice.throw', { name, number: round });
  try {
    await store.write([
      ...(isFirst
        ? [
            {
              ...{ entryId: day.sessionId, madeAtMs: nowMs, about: day.day },
              mutation: 'practiceSessionCreate' as const,
              input: { id: day.sessionId, onDate: day.day },
            },
          ]
        : []),
      {
        ...{ entryId: ids.throwId, madeAtMs: nowMs, about, mutation: 'throwsLog' as const },
        input: { sessionId: day.sessionId, throws: [throwInput(draft, rest, of)], ...at },
      },
    ]);
    await store.keep({ practice: { ...day, rounds: { ...day.rounds, [athleteId]: round } } });
    return n('practice.kept', { number: round });
  } catch {
    return t('saved.failing');
  }
}
