import { useSignal } from '@preact/signals';
import { e } from '../../labels/entries/words.js';
import { Button } from '../../ui/Button.jsx';
import type { ListLine } from './documents.js';

interface OrderListProps {
  readonly lines: readonly ListLine[];
  readonly onMove: (from: number, to: number) => void;
  readonly onFlight: (at: number, flight: string | null) => void;
}

/** The order of competition: moved by its buttons, with a pointer, or with Alt and an arrow; and the flight of each. */
export function OrderList({ lines, onMove, onFlight }: OrderListProps) {
  const dragged = useSignal<number | null>(null);
  const said = useSignal('');
  const move = (from: number, to: number) => {
    if (to < 0 || to >= lines.length) return;
    onMove(from, to);
    said.value = e('list.moved', { name: lines[from]!.name ?? lines[from]!.competitor.bib, place: to + 1 });
  };
  return (
    <>
      <ol class="order">
        {lines.map(({ competitor: { id, bib, club, flight }, name, seedMark }, at) => (
          <li
            key={id}
            draggable
            onDragStart={() => (dragged.value = at)}
            onDragOver={(event) => event.preventDefault()}
            onDrop={(event) => {
              event.preventDefault();
              if (dragged.value !== null) move(dragged.value, at);
              dragged.value = null;
            }}
            onKeyDown={(event) => {
              const step = event.key === 'ArrowUp' ? -1 : event.key === 'ArrowDown' ? 1 : 0;
              if (!event.altKey || step === 0) return;
              event.preventDefault();
              move(at, at + step);
            }}
          >
            <span class="number">{at + 1}</span>
            <span class="bib">{bib}</span>
            <span class="order-name">
              {name} {club && <span class="hint">{club}</span>}
            </span>
            <span class="hint">{seedMark}</span>
            <input
              class="flight"
              type="text"
              maxLength={8}
              aria-label={e('list.flightOf', { name: name ?? bib })}
              value={flight ?? ''}
              onChange={({ currentTarget }) => onFlight(at, currentTarget.value.trim() || null)}
            />
            <Button kind="quiet" label={e('list.up', { name: name ?? bib })} onPress={() => move(at, at - 1)}>
              ↑
            </Button>
            <Button
              kind="quiet"
              label={e('list.down', { name: name ?? bib })}
              onPress={() => move(at, at + 1)}
            >
              ↓
            </Button>
          </li>
        ))}
      </ol>
      <p class="unseen" role="status">
        {said.value}
      </p>
    </>
  );
}
