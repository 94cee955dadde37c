import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { useOffice } from './office.js';

/** What the server says, read again after everything that was done here and every few seconds; null: not yet. */
export function useReading<T>(query: string, variables: Readonly<Record<string, unknown>>): T | null {
  const office = useOffice();
  const key = JSON.stringify(variables);
  const read = useSignal<{ readonly key: string; readonly data: T } | null>(null);
  const round = office.round.value;
  const look = office.nowMs.value;
  useEffect(() => {
    let isGone = false;
    void office.read<T>(query, variables).then((data) => {
      if (data && !isGone) read.value = { key, data };
    });
    return () => {
      isGone = true;
    };
  }, [query, key, round, look]);
  return read.value?.key === key ? read.value.data : null;
}
