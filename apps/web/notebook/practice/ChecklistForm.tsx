import { useSignal } from '@preact/signals';
import { n } from '../../labels/notebook/words.js';
import { uuidV7 } from '../../offline/uuid-v7.js';
import { Button } from '../../ui/Button.jsx';
import { Dialog } from '../../ui/Dialog.jsx';
import { useNotebook } from '../notebook.js';
import type { AthleteNotes } from '../shapes.js';
import { checklistOf } from './practice-day.js';
import { said } from './words.js';

const MOST = 6;
const STAGES = ['FIRST_WEEKS', 'BASICS', 'DEVELOPING', 'ADVANCED'];

interface ChecklistFormProps {
  readonly athlete: AthleteNotes;
  readonly event: string;
  readonly chosen: readonly string[];
  readonly onClose: () => void;
}

/** Which points are looked at today. Three are enough to see at full speed. */
export function ChecklistForm({ athlete, event, chosen, onClose }: ChecklistFormProps) {
  const { store } = useNotebook();
  const codes = useSignal<readonly string[]>(chosen);
  const isWhole = useSignal(false);
  const stage = athlete.stages.find((one) => one.event === event)?.stage ?? null;
  const faults = (store.kept.value.vocabularies[event]?.faults ?? []).filter(
    ({ isActive, isHidden }) => isActive && !isHidden,
  );
  const isTaught = (from: string) => stage === null || STAGES.indexOf(from) <= STAGES.indexOf(stage);
  const offered = faults.filter(
    ({ code, relevantFrom }) => isWhole.value || isTaught(relevantFrom) || codes.value.includes(code),
  );
  const toggle = (code: string) =>
    (codes.value = codes.value.includes(code)
      ? codes.value.filter((one) => one !== code)
      : [...codes.value, code].slice(-MOST));
  const keep = async () => {
    const { squad } = store.kept.value;
    const before = checklistOf(athlete, event);
    const entryId = uuidV7();
    const name = before?.name ?? n('checklist.name');
    await store.write([
      {
        ...{ entryId, madeAtMs: Date.now(), mutation: 'checklistSet' as const },
        about: `${athlete.name}: ${n('checklist.title')}`,
        input: { id: entryId, athleteId: athlete.athleteId, event, name, codes: codes.value },
      },
    ]);
    const list = { id: entryId, event, name, version: (before?.version ?? 0) + 1, codes: codes.value };
    if (squad)
      await store.keep({
        squad: {
          ...squad,
          athletes: squad.athletes.map((one) => withChecklist(one, athlete.athleteId, list)),
        },
      });
    onClose();
  };
  return (
    <Dialog title={n('checklist.title')} onClose={onClose}>
      <p class="hint">{n('checklist.few', { most: MOST })}</p>
      <ul class="list check-list">
        {offered.map(({ code, name, looksLike, relevantFrom }) => (
          <li key={code}>
            <label class="switch">
              <input type="checkbox" checked={codes.value.includes(code)} onChange={() => toggle(code)} />
              <span>
                {said(name)}
                <span class="hint">
                  {said(looksLike)}
                  {!isTaught(relevantFrom) && ` · ${n('checklist.notTaught')}`}
                </span>
              </span>
            </label>
          </li>
        ))}
      </ul>
      {offered.length < faults.length && (
        <Button kind="quiet" onPress={() => (isWhole.value = true)}>
          {n('checklist.all')}
        </Button>
      )}
      <Button kind="main" onPress={() => void keep()}>
        {n('checklist.keep', { count: codes.value.length })}
      </Button>
    </Dialog>
  );
}

function withChecklist(
  one: AthleteNotes,
  athleteId: string,
  list: AthleteNotes['checklists'][number],
): AthleteNotes {
  if (one.athleteId !== athleteId) return one;
  const others = one.checklists.filter(({ event, name }) => event !== list.event || name !== list.name);
  return { ...one, checklists: [...others, list] };
}
