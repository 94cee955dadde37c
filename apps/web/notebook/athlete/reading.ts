import { useSignal, type Signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { useNotebook, type Notebook } from '../notebook.js';
import {
  ANALYSIS,
  HISTORY,
  type Analysis,
  type Filter,
  type HistoryPage,
  type HistoryThrow,
} from './findings.js';

/** What there is to be shown of an athlete; null: not read yet, or not for the viewer. */
export interface Reading {
  readonly analysis: Signal<Analysis | null>;
  readonly history: Signal<readonly HistoryThrow[] | null>;
}

/** A plot of a telephone says nothing with more. */
const MOST_PAGES = 5;
/** While a thorough answer is being made. */
const AGAIN_MS = 3_000;

export function useFindings(athleteId: string, filter: Filter): Reading {
  const notebook = useNotebook();
  const analysis = useSignal<Analysis | null>(null);
  const history = useSignal<readonly HistoryThrow[] | null>(null);
  const asked = JSON.stringify([athleteId, filter, notebook.round.value]);
  useEffect(() => {
    let isOver = false;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const look = async () => {
      const answer = await notebook.read<{ notebookAthlete: { analysis: Analysis | null } | null }>(
        ANALYSIS,
        {
          id: athleteId,
          ...filter,
        },
      );
      if (isOver) return;
      analysis.value = answer?.notebookAthlete?.analysis ?? null;
      if (analysis.value?.isFirstAnswer) timer = setTimeout(() => void look(), AGAIN_MS);
    };
    void look();
    void historyOf(notebook, athleteId, filter).then((rows) => !isOver && (history.value = rows));
    return () => {
      isOver = true;
      clearTimeout(timer);
    };
  }, [asked]);
  return { analysis, history };
}

/** The oldest first. */
async function historyOf(notebook: Notebook, id: string, filter: Filter): Promise<readonly HistoryThrow[]> {
  const rows: HistoryThrow[] = [];
  let after: string | null = null;
  for (let page = 0; page < MOST_PAGES; page++) {
    const answer: { notebookAthlete: { history: HistoryPage } | null } | null = await notebook.read(HISTORY, {
      ...{ id, after },
      ...filter,
    });
    const found: HistoryPage | undefined = answer?.notebookAthlete?.history;
    rows.push(...(found?.edges ?? []).map(({ node }) => node));
    after = found?.pageInfo.endCursor ?? null;
    if (!found?.pageInfo.hasNextPage) break;
  }
  return rows.reverse();
}
