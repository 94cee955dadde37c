import { placeText } from '../../labels/format.js';
import { t } from '../../labels/languages.js';
import type { Cell, Row } from '../competition/board-shape.js';
import { useOpen } from '../desk-context.js';
import { Questions } from './Questions.jsx';

/** Everybody in the order of the result, with every trial, why the place is what it is, and what is needed now. */
export function StandingScreen() {
  const { board } = useOpen();
  return (
    <section class="standing-screen" aria-label={t('standing.title')}>
      <h2>
        {t('standing.title')} <span class="phase">{t(`phase.${board.phase}`)}</span>
      </h2>
      <Questions />
      <ol class="standing">
        {board.rows.map((row) => (
          <StandingRow key={row.key} row={row} />
        ))}
      </ol>
    </section>
  );
}

function StandingRow({ row }: { readonly row: Row }) {
  const { desk } = useOpen();
  const { bib, name, club } = desk.personOf(row.key);
  return (
    <li class={row.isUp ? 'row is-up' : 'row'} data-bib={bib}>
      <p class="row-head">
        <span class="place">
          {row.place === null ? '–' : placeText(row.place)}
          {row.isEqual ? ' =' : ''}
        </span>
        <span class="bib">{bib}</span>
        <span class="row-name">
          <strong>{name}</strong> <span>{club}</span>
        </span>
        {row.isUp && <span class="up-word">{t('call.up')}</span>}
        <strong class="best">{row.best}</strong>
      </p>
      <ul class="cells">
        {row.cells.map((cell, at) => (
          <CellButton key={cell.id ?? `${cell.column} ${at}`} cell={cell} />
        ))}
      </ul>
      <p class="why">{row.why}</p>
      {row.needs.length > 0 && (
        <p class="needs">
          <span>{t('needed')}:</span> {row.needs.join(' · ')}
        </p>
      )}
    </li>
  );
}

function CellButton({ cell }: { readonly cell: Cell }) {
  const { desk } = useOpen();
  const { id } = cell;
  const content = (
    <>
      <span class="cell-column">{cell.column}</span>
      <span class="cell-text">
        {cell.text || ' '}
        {cell.hold && ' ?'}
      </span>
      {cell.note && <span class="cell-note">{cell.note}</span>}
      {cell.reason && <span class="cell-note cell-reason">{cell.reason}</span>}
      {cell.hold && <span class="cell-note">{t('standing.held')}</span>}
    </>
  );
  return (
    <li>
      {id === null ? (
        <span class="cell">{content}</span>
      ) : (
        <button
          type="button"
          class={cell.hold ? 'cell held' : 'cell'}
          onClick={() => (desk.trial.value = id)}
        >
          {content}
        </button>
      )}
    </li>
  );
}
