import { useSignal } from '@preact/signals';
import { t } from '../../labels/languages.js';
import { Button } from '../../ui/Button.jsx';
import { Choice } from '../../ui/Choice.jsx';
import { Dialog } from '../../ui/Dialog.jsx';
import { TextField } from '../../ui/TextField.jsx';
import type { Body } from '../competition/request.js';
import { useOpen } from '../desk-context.js';
import { bodyText } from '../entry/body-text.js';
import { unitIn } from '../competition/head.js';
import { AwayForm } from './AwayForm.jsx';
import { Refused } from './Refused.jsx';

interface WayProps {
  readonly competitor: string;
  readonly onEnter: (body: Body) => Promise<void>;
}

type Way = 'start' | 'away' | 'bib' | 'flight';

/** What can be done about one competitor beside the trials. */
export function CompetitorDialog({
  competitor,
  onClose,
}: {
  readonly competitor: string;
  readonly onClose: () => void;
}) {
  const { desk, open } = useOpen();
  const way = useSignal<Way | null>(null);
  const { bib, name, club } = desk.personOf(competitor);
  const flights = new Set(desk.people.value.map(({ flight }) => flight));
  const enter = async (body: Body) => {
    const verdict = await desk.enter(body, (standing) =>
      t(standing === 'held' ? 'done.held' : 'done.recorded', {
        ...{ who: bib, what: bodyText(body, unitIn(open.kept.head)) },
      }),
    );
    if (verdict && verdict.standing !== 'refused') onClose();
  };
  const ways: Way[] = ['start', 'away', 'bib', ...(flights.size > 1 ? ['flight' as const] : [])];
  return (
    <Dialog title={`${bib} ${name}`} onClose={onClose}>
      {club !== null && <p class="hint">{club}</p>}
      <Choice<Way>
        legend={t('change')}
        value={way.value}
        options={ways.map((value) => ({ value, text: t(`list.${value}`) }))}
        onChoose={(value) => (way.value = value)}
      />
      {way.value === 'start' && <StartForm competitor={competitor} onEnter={enter} />}
      {way.value === 'away' && <AwayForm competitor={competitor} onEnter={enter} />}
      {way.value === 'bib' && <BibForm competitor={competitor} onEnter={enter} />}
      {way.value === 'flight' && <FlightForm competitor={competitor} onEnter={enter} />}
      <Refused />
    </Dialog>
  );
}

function StartForm({ competitor, onEnter }: WayProps) {
  const { open } = useOpen();
  const isOut = open.folded.state.competitors.some(
    ({ key, status }) => key === competitor && status === 'DNS',
  );
  return (
    <Button
      kind={isOut ? 'main' : 'danger'}
      onPress={() => onEnter({ kind: 'start', competitor, status: isOut ? 'started' : 'DNS' })}
    >
      {t(isOut ? 'more.starts' : 'more.dns')}
    </Button>
  );
}

/** Another number; where somebody wears it already, the two are swapped. */
function BibForm({ competitor, onEnter }: WayProps) {
  const { desk } = useOpen();
  const text = useSignal('');
  const bib = text.value.trim();
  const own = desk.personOf(competitor);
  const other = desk.people.value.find((person) => person.bib === bib && person.key !== competitor);
  const bibs = [{ competitor, bib }, ...(other ? [{ competitor: other.key, bib: own.bib }] : [])];
  return (
    <>
      <TextField label={t('list.bib')} value={text} />
      <Button
        kind="main"
        isDisabled={bib === '' || bib === own.bib}
        onPress={() => onEnter({ kind: 'bibs', bibs, reason: t('list.bibWhy') })}
      >
        {other ? t('list.swap', { who: `${other.bib} ${other.name}` }) : t('list.setBib', { bib })}
      </Button>
    </>
  );
}

function FlightForm({ competitor, onEnter }: WayProps) {
  const { desk } = useOpen();
  const own = desk.personOf(competitor).flight;
  const flights = [...new Set(desk.people.value.flatMap(({ flight }) => flight ?? []))];
  const chosen = useSignal<string | null>(null);
  return (
    <>
      <Choice<string>
        legend={t('list.flight')}
        value={chosen.value}
        options={flights.filter((flight) => flight !== own).map((value) => ({ value, text: value }))}
        onChoose={(value) => (chosen.value = value)}
      />
      <Button
        kind="main"
        isDisabled={chosen.value === null}
        onPress={() =>
          chosen.value !== null &&
          onEnter({ kind: 'flight', competitor, flight: chosen.value, reason: t('list.flightWhy') })
        }
      >
        {t('list.flight')} {chosen.value}
      </Button>
    </>
  );
}
