import type { WaitingEntry } from './database.js';

const FORMAT = 'sectorline-handover/1';

/** Entries that one device could not send, for another one that can. Their ids make it safe when both do. */
interface HandOver {
  readonly format: typeof FORMAT;
  readonly entries: readonly Pick<
    WaitingEntry,
    'entryId' | 'competitionId' | 'body' | 'madeAtMs' | 'basedOn'
  >[];
}

export function handOver(entries: readonly WaitingEntry[]): string {
  const file: HandOver = {
    format: FORMAT,
    entries: entries.map(({ entryId, competitionId, body, madeAtMs, basedOn }) => ({
      entryId,
      competitionId,
      body,
      madeAtMs,
      basedOn,
    })),
  };
  return JSON.stringify(file, null, 1);
}

/** Reads such a file; null: it is none, or a part of it is missing. */
export function readHandOver(text: string): readonly WaitingEntry[] | null {
  let file: Partial<HandOver> | null;
  try {
    file = JSON.parse(text) as Partial<HandOver> | null;
  } catch {
    return null;
  }
  const entries: unknown = file?.format === FORMAT ? file.entries : null;
  if (!Array.isArray(entries) || !(entries as unknown[]).every(isWhole)) return null;
  return (entries as HandOver['entries']).map((entry) => ({ ...entry, state: 'waiting', refusal: null }));
}

function isWhole(one: unknown): boolean {
  const entry = one as Partial<HandOver['entries'][number]> | null;
  return (
    typeof entry?.entryId === 'string' &&
    typeof entry.competitionId === 'string' &&
    typeof entry.madeAtMs === 'number' &&
    typeof entry.basedOn === 'number' &&
    typeof (entry.body as { kind?: unknown } | undefined)?.kind === 'string'
  );
}
