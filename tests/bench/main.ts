import { mkdir, writeFile } from 'node:fs/promises';
import { measureAnalysis, measureSquad } from './analytics.js';
import { measureClubTable } from './club-table.js';
import { measureHistory } from './history.js';
import { asTable, type Measure } from './measure.js';
import { measureFanOut } from './fan-out.js';
import { measurePublicTable } from './public-table.js';
import { measureRecording } from './recording.js';
import { measureImport } from './import.js';
import { measureFold, measureRanking, measureRecount, measureRows } from './rules.js';
import { setStage, type Stage } from './stage.js';
import { measureTable } from './table.js';
import { measureVertical } from './vertical.js';

/** `npm run bench -- NAME…`: measures what is named, or everything. */
const INSIDE: Readonly<Record<string, () => Measure>> = {
  recount: measureRecount,
  fold: measureFold,
  ranking: measureRanking,
  document: measureRows,
  vertical: measureVertical,
  analysis: measureAnalysis,
};
const OVER_HTTP: Readonly<Record<string, (stage: Stage) => Promise<Measure | Measure[]>>> = {
  recording: measureRecording,
  table: measureTable,
  'club-table': measureClubTable,
  import: measureImport,
  'fan-out': measureFanOut,
  'public-table': measurePublicTable,
  history: measureHistory,
  analytics: measureSquad,
};
const NAMES = [...Object.keys(INSIDE), ...Object.keys(OVER_HTTP)];

// A crowd comes from one machine here.
process.env['LIVE_PER_ADDRESS'] ??= '50000';

async function measure(names: readonly string[]): Promise<Measure[]> {
  const measures = names.flatMap((name) => INSIDE[name]?.() ?? []);
  const overHttp = names.flatMap((name) => OVER_HTTP[name] ?? []);
  if (overHttp.length === 0) return measures;
  const stage = await setStage();
  try {
    for (const one of overHttp) measures.push(...[await one(stage)].flat());
  } finally {
    await stage.close();
  }
  return measures;
}

const named = process.argv.slice(2);
const unknown = named.filter((name) => !NAMES.includes(name));
if (unknown.length > 0) {
  process.stderr.write(`Nothing is called ${unknown.join(', ')}. There are: ${NAMES.join(', ')}.\n`);
  process.exit(2);
}
const measures = await measure(NAMES.filter((name) => named.length === 0 || named.includes(name)));
await mkdir('.sectorline', { recursive: true });
await writeFile('.sectorline/bench.json', `${JSON.stringify(measures, null, 2)}\n`);
process.stdout.write(`${asTable(measures)}\n`);
process.exitCode = measures.every(({ ok }) => ok) ? 0 : 1;
