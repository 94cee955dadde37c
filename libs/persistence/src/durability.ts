import type { DataSource } from 'typeorm';

/** A setting with which an acknowledged entry could be lost, what it should be, and what to do. */
export interface DurabilityFault {
  readonly setting: string;
  readonly value: string;
  readonly wanted: string;
  readonly because: string;
  readonly remedy: string;
}

interface Demand {
  readonly setting: string;
  readonly holds: (value: string) => boolean;
  readonly because: string;
  readonly remedy: string;
}

const isOn = (value: string): boolean => value === 'on';

/** PostgreSQL's documentation, chapters "Write Ahead Log" and "Data Checksums". */
const DEMANDS: readonly Demand[] = [
  {
    setting: 'fsync',
    holds: isOn,
    because: 'without it a power cut can ruin the whole database',
    remedy: 'Set fsync = on in postgresql.conf and reload.',
  },
  {
    setting: 'full_page_writes',
    holds: isOn,
    because: 'without it a power cut in the middle of a write can leave half a page',
    remedy: 'Set full_page_writes = on in postgresql.conf and reload.',
  },
  {
    setting: 'synchronous_commit',
    holds: (value) => value !== 'off',
    because: 'without it entries are acknowledged before they are on disk',
    remedy: 'Set synchronous_commit = on, and look for ALTER ROLE or ALTER DATABASE that says otherwise.',
  },
  {
    setting: 'data_checksums',
    holds: isOn,
    because: 'without it a failing disk can change results unnoticed',
    remedy:
      'Stop the server and run pg_checksums --enable, or make the cluster with initdb --data-checksums.',
  },
];

/** What of the server's settings, as the application's own connections see them, endangers what was acknowledged. */
export async function checkDurability(database: DataSource): Promise<DurabilityFault[]> {
  const rows = await database.query<{ name: string; setting: string }[]>(
    `SELECT name, setting FROM pg_settings WHERE name = ANY($1)`,
    [DEMANDS.map(({ setting }) => setting)],
  );
  const values = new Map(rows.map(({ name, setting }) => [name, setting]));
  return DEMANDS.flatMap(({ setting, holds, because, remedy }) => {
    const value = values.get(setting) ?? 'unknown';
    return holds(value) ? [] : [{ setting, value, wanted: 'on', because, remedy }];
  });
}
