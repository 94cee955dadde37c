import { useSignal } from '@preact/signals';
import { e } from '../../labels/entries/words.js';
import { language } from '../../labels/languages.js';
import { Button } from '../../ui/Button.jsx';
import { Choice } from '../../ui/Choice.jsx';
import { TextField } from '../../ui/TextField.jsx';
import { useOffice } from '../office.js';
import { BIBS, type Bibs } from './documents.js';
import { FileButton } from './FileButton.jsx';

type Order = 'CLUB' | 'NAME' | 'COMPETITION';
const ORDERS: readonly Order[] = ['CLUB', 'NAME', 'COMPETITION'];

/** One bib for each at the whole meet: shown before it is given. */
export function BibsPart() {
  const office = useOffice();
  const order = useSignal<Order>('CLUB');
  const [from, step] = [useSignal('1'), useSignal('')];
  const isKeeping = useSignal(true);
  const shown = useSignal<Bibs | null>(null);
  const input = () => ({
    ...{ meetId: office.meetId.value, order: order.value, from: Number(from.value) || 1 },
    ...{ blockStep: step.value.trim() === '' ? null : Number(step.value), isKeeping: isKeeping.value },
  });
  const preview = async () => {
    const answer = await office.read<{ bibsAssign: Bibs }>(BIBS, { input: { ...input(), isPreview: true } });
    shown.value = answer?.bibsAssign ?? null;
  };
  const assign = async () => {
    const count = shown.value?.changedCount ?? 0;
    const words = { done: e('bibs.done', { count }), away: e('away') };
    if (await office.act<Bibs>(BIBS, input(), words)) shown.value = null;
  };
  const paper = (what: string, size: string) =>
    `/print/meets/${office.meetId.value}/${what}.pdf?paper=${size}&lang=${language.value}`;
  return (
    <>
      <Choice
        legend={e('bibs.order')}
        options={ORDERS.map((value) => ({ value, text: e(`bibs.${value}`) }))}
        value={order.value}
        onChoose={(value) => {
          order.value = value;
          shown.value = null;
        }}
      />
      <TextField label={e('bibs.from')} value={from} type="number" />
      <TextField label={e('bibs.step')} value={step} type="number" hint={e('bibs.stepHint')} />
      <label class="check">
        <input
          type="checkbox"
          checked={isKeeping.value}
          onChange={({ currentTarget }) => (isKeeping.value = currentTarget.checked)}
        />
        <span>{e('bibs.keep')}</span>
      </label>
      <Button onPress={() => void preview()}>{e('bibs.preview')}</Button>
      {shown.value && <Preview bibs={shown.value} />}
      {shown.value && shown.value.changedCount > 0 && (
        <Button kind="main" onPress={() => void assign()} isDisabled={office.isBusy.value}>
          {e('bibs.go', { count: shown.value.changedCount })}
        </Button>
      )}
      <p class="row">
        <FileButton label={e('bibs.list')} address={paper('bib-list', 'A4')} name="bib-list.pdf" />
        <FileButton
          label={e('bibs.cards', { size: 'A5' })}
          address={paper('bib-cards', 'A5')}
          name="bibs.pdf"
        />
        <FileButton
          label={e('bibs.cards', { size: 'A4' })}
          address={paper('bib-cards', 'A4')}
          name="bibs.pdf"
        />
      </p>
    </>
  );
}

function Preview({ bibs: { bibs, changedCount } }: { readonly bibs: Bibs }) {
  return (
    <div class="wide">
      <p role="status">{e('bibs.changed', { count: changedCount })}</p>
      <table>
        <caption>{e('bibs.title')}</caption>
        <thead>
          <tr>
            <th scope="col">{e('entry.bib')}</th>
            <th scope="col">{e('bibs.before')}</th>
            <th scope="col">{e('entry.name')}</th>
            <th scope="col">{e('entry.club')}</th>
          </tr>
        </thead>
        <tbody>
          {bibs.map(({ bib, name, club, before, isFixed }) => (
            <tr key={`${bib} ${name}`}>
              <td class="number">
                <strong>{bib}</strong>
              </td>
              <td>{isFixed ? e('bibs.fixed') : before.join(', ')}</td>
              <td>{name}</td>
              <td>{club}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
