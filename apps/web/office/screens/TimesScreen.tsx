import { useSignal } from '@preact/signals';
import { timeText } from '../../labels/format.js';
import { a } from '../../labels/account/words.js';
import { o } from '../../labels/office/words.js';
import { Button } from '../../ui/Button.jsx';
import { Select } from '../../ui/Select.jsx';
import { TextField } from '../../ui/TextField.jsx';
import { usePlainAct } from '../acting.js';
import type { MeetNow } from '../meet-now.js';
import { useOffice } from '../office.js';

const DELAY = `mutation OfficeDelay($input: TimetableDelayInput!) { timetableDelay(input: $input) { movedCompetitions userErrors { message rule remedy } } }`;

/** When and where; and that something starts later, with whatever follows on the same ground. */
export function TimesScreen() {
  const office = useOffice();
  const meet = office.meet.value;
  if (!meet) return <p>{a('reading')}</p>;
  const { timetable } = meet;
  if (!timetable) {
    return (
      <section>
        <h2>{o('section.times')}</h2>
        <p>{o('times.none')}</p>
      </section>
    );
  }
  const titleOf = (id: string) => meet.competitions.find((one) => one.id === id)?.title ?? '';
  const slots = [...timetable.slots].sort((a, b) => Date.parse(a.startsAt) - Date.parse(b.startsAt));
  return (
    <section>
      <h2>{o('section.times')}</h2>
      {timetable.reason && <p class="notice warning">{o('times.told', { reason: timetable.reason })}</p>}
      <section class="wide-table" aria-label={o('section.times')} tabIndex={0}>
        <table>
          <thead>
            <tr>
              <th scope="col">{o('times.report')}</th>
              <th scope="col">{o('times.start')}</th>
              <th scope="col">{o('times.what')}</th>
              <th scope="col">{o('times.where')}</th>
            </tr>
          </thead>
          <tbody>
            {slots.map((slot) => (
              <tr key={slot.competitions.map(({ id }) => id).join()}>
                <td>{timeText(Date.parse(slot.reportAt))}</td>
                <td>{timeText(Date.parse(slot.startsAt))}</td>
                <th scope="row">{slot.competitions.map(({ id }) => titleOf(id)).join(', ')}</th>
                <td>{slot.facility.name}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      {office.mayDirect && <Delay meet={meet} revision={timetable.revision} />}
    </section>
  );
}

function Delay({ meet, revision }: { readonly meet: MeetNow; readonly revision: number }) {
  const act = usePlainAct();
  const [which, minutes, why] = [useSignal(''), useSignal(''), useSignal('')];
  const count = Number(minutes.value);
  const isReady = which.value !== '' && Number.isInteger(count) && count > 0 && why.value.trim() !== '';
  const delay = async () => {
    const input = {
      competitionId: which.value,
      expectedRevision: revision,
      minutes: count,
      reason: why.value.trim(),
    };
    if (await act(DELAY, input)) for (const field of [which, minutes, why]) field.value = '';
  };
  return (
    <section class="panel">
      <h3>{o('times.delay')}</h3>
      <p class="hint">{o('times.delayHow')}</p>
      <Select
        label={o('times.what')}
        value={which}
        options={meet.competitions.map(({ id, title }) => ({ value: id, text: title }))}
      />
      <TextField label={o('times.minutes')} value={minutes} type="number" />
      <TextField label={o('times.why')} value={why} />
      <Button isDisabled={!isReady} onPress={delay}>
        {o('times.tell')}
      </Button>
    </section>
  );
}
