import { useSignal } from '@preact/signals';
import { Fragment } from 'preact';
import { localDecimals } from '../../labels/format.js';
import { t, tCode } from '../../labels/languages.js';
import { o } from '../../labels/office/words.js';
import { useOffice } from '../office.js';
import { trialsOf, type Competition, type Row, type TableRow, type Trial } from './competition-now.js';
import { CorrectTrial } from './CorrectTrial.jsx';

interface Props {
  readonly competition: Competition;
}

/** The standing with every trial; and, while a trial is under protest, as it would be if all of them succeeded. */
export function Standing({ competition }: Props) {
  const office = useOffice();
  const chosen = useSignal<{ readonly row: TableRow; readonly trial: Trial } | null>(null);
  const { rows, rowsIfProtestsSucceed: others } = competition.table;
  return (
    <section class="panel">
      <h3>{t('standing.title')}</h3>
      {office.mayDecide && rows.some((row) => trialsOf(row).length > 0) && (
        <p class="hint">{o('standing.how')}</p>
      )}
      <div class={others ? 'two-tables' : ''}>
        <section class="wide-table" aria-label={t('standing.title')} tabIndex={0}>
          <table class="with-trials">
            {others && <caption>{o('standing.asRuled')}</caption>}
            <thead>
              <tr>
                <Head />
              </tr>
            </thead>
            <tbody>
              {rows.map((row) => (
                <Fragment key={row.competitor}>
                  <tr>
                    <Cells row={row} />
                  </tr>
                  <tr>
                    <td />
                    <td colSpan={2}>
                      <div class="trials">
                        {trialsOf(row).map((trial) => (
                          <TrialCell
                            key={trial.entry}
                            trial={trial}
                            who={`${row.bib} ${row.name}`}
                            onChoose={office.mayDecide ? () => (chosen.value = { row, trial }) : null}
                          />
                        ))}
                      </div>
                    </td>
                  </tr>
                </Fragment>
              ))}
            </tbody>
          </table>
        </section>
        {others && <IfUpheld rows={rows} others={others} />}
      </div>
      {chosen.value && (
        <CorrectTrial
          competition={competition}
          who={`${chosen.value.row.bib} ${chosen.value.row.name}`}
          trial={chosen.value.trial}
          onClose={() => (chosen.value = null)}
        />
      )}
    </section>
  );
}

interface IfUpheldProps {
  readonly rows: readonly Row[];
  readonly others: readonly Row[];
}

function IfUpheld({ rows, others }: IfUpheldProps) {
  return (
    <section class="wide-table" aria-label={o('standing.ifUpheld')} tabIndex={0}>
      <table>
        <caption>{o('standing.ifUpheld')}</caption>
        <thead>
          <tr>
            <Head />
          </tr>
        </thead>
        <tbody>
          {others.map((row) => (
            <tr key={row.competitor} class={isMoved(row, rows) ? 'moved' : ''}>
              <Cells row={row} />
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function isMoved(row: Row, rows: readonly Row[]): boolean {
  const now = rows.find(({ competitor }) => competitor === row.competitor);
  return now?.place !== row.place || now.mark !== row.mark;
}

function Head() {
  return (
    <>
      <th scope="col">{o('standing.place')}</th>
      <th scope="col">{o('standing.who')}</th>
      <th scope="col">{t('mark')}</th>
    </>
  );
}

function Cells({ row }: { readonly row: Row }) {
  return (
    <>
      <td>{row.place ?? '–'}</td>
      <th scope="row">
        <span class="bib">{row.bib}</span> {row.name}
      </th>
      <td class="mark">
        {row.mark === null
          ? row.status === null
            ? '–'
            : tCode('status', row.status)
          : localDecimals(row.mark)}
      </td>
    </>
  );
}

interface TrialCellProps {
  readonly trial: Trial;
  readonly who: string;
  readonly onChoose: (() => void) | null;
}

function TrialCell({ trial: { where, cell, isProtested }, who, onChoose }: TrialCellProps) {
  const text = localDecimals(cell);
  const said = isProtested ? `${text}, ${o('about.protest')}` : text;
  if (!onChoose) return <span class="trial">{text}</span>;
  return (
    <button type="button" class="trial" aria-label={`${who}, ${where}: ${said}`} onClick={onChoose}>
      <span class="trial-where">{where}</span> {text}
      {isProtested && ' !'}
    </button>
  );
}
