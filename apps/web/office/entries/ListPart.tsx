import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { e } from '../../labels/entries/words.js';
import { uuidV7 } from '../../offline/uuid-v7.js';
import { Button } from '../../ui/Button.jsx';
import { TextField } from '../../ui/TextField.jsx';
import { useOffice } from '../office.js';
import { CompetitionField } from './CompetitionField.jsx';
import { DRAW, LIST, ORDER_SET, type ListLine, type StartList } from './documents.js';
import { FileButton } from './FileButton.jsx';
import { movedLine, withFlight } from './moved-line.js';
import { OrderList } from './OrderList.jsx';

/** The start list of a competition: by lot, by seed marks, or by hand. */
export function ListPart() {
  const office = useOffice();
  const competitionId = useSignal('');
  const list = useSignal<StartList | null>(null);
  const lines = useSignal<readonly ListLine[]>([]);
  const round = office.round.value;
  useEffect(() => {
    if (competitionId.value === '') return;
    void office.read<{ competition: StartList | null }>(LIST, { id: competitionId.value }).then((answer) => {
      list.value = answer?.competition ?? null;
      lines.value = list.value?.callList ?? [];
    });
  }, [competitionId.value, round]);
  const save = () => {
    const input = {
      ...headOf(competitionId.value, list.value!),
      lines: lines.value.map(({ competitor: { id, flight } }) => ({ competitorId: id, flight })),
    };
    void office.act(ORDER_SET, input, { done: e('list.saved'), away: e('away') });
  };
  const isChanged = lines.value !== list.value?.callList && lines.value.length > 0;
  return (
    <>
      <CompetitionField value={competitionId} />
      {list.value && (
        <>
          <DrawForm competitionId={competitionId.value} list={list.value} />
          {lines.value.length === 0 && <p>{e('list.nobody')}</p>}
          <OrderList
            lines={lines.value}
            onMove={(from, to) => (lines.value = movedLine(lines.value, from, to))}
            onFlight={(at, flight) => (lines.value = withFlight(lines.value, at, flight))}
          />
          {isChanged && (
            <p class="row">
              <Button kind="main" onPress={save} isDisabled={office.isBusy.value}>
                {e('list.save')}
              </Button>
              <Button kind="quiet" onPress={() => (lines.value = list.value!.callList ?? [])}>
                {e('list.undo')}
              </Button>
            </p>
          )}
        </>
      )}
      <FileButton
        label={e('list.exportAll')}
        address={`/tables/meets/${office.meetId.value}/entries.csv`}
        name="entries.csv"
      />
    </>
  );
}

function headOf(competitionId: string, { version }: StartList) {
  return { competitionId, expectedVersion: version };
}

/** By lot or by seed marks; and the list as it is, for a spreadsheet. */
function DrawForm({ competitionId, list }: { readonly competitionId: string; readonly list: StartList }) {
  const office = useOffice();
  const [flights, reason] = [useSignal(''), useSignal('')];
  const draw = (method: 'LOT' | 'SEED_MARKS') => {
    const input = {
      ...{ ...headOf(competitionId, list), id: uuidV7(), method, seed: uuidV7().slice(-12) },
      flights: flights.value.trim() === '' ? null : Number(flights.value),
      reason: reason.value.trim() || null,
    };
    void office.act(DRAW, input, { done: e('list.drawn'), away: e('away') });
  };
  return (
    <>
      <TextField label={e('list.flights')} value={flights} type="number" hint={e('list.flightsHint')} />
      {list.draws.length > 0 && <TextField label={e('list.why')} value={reason} />}
      <p class="row">
        <Button onPress={() => draw('LOT')}>{e('list.byLot')}</Button>
        <Button onPress={() => draw('SEED_MARKS')}>{e('list.byMarks')}</Button>
        <FileButton
          label={e('list.export')}
          address={`/tables/competitions/${competitionId}/start-list.csv`}
          name="start-list.csv"
        />
      </p>
    </>
  );
}
