import fc from 'fast-check';
import {
  normaliseSheet,
  readSheetSource,
  recount,
  sameJson,
  writeSheet,
  type PlainJson,
  type SheetContent,
} from '#rules';
import { drawn, type Draw } from '../reference/draw.js';
import { generateSheet } from '../reference/generate-sheet.js';

type Loose = Record<string, unknown>;

function read(source: string): SheetContent {
  const reading = readSheetSource(source);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.content;
}

function written(source: string): PlainJson {
  return JSON.parse(JSON.stringify(writeSheet(read(source)))) as PlainJson;
}

/** Says what goes without saying, and adds what is information only. */
function embellish(draw: Draw, object: Loose): void {
  for (const sheet of (object['sheets'] ?? []) as Loose[]) embellish(draw, sheet);
  const some = (values: Loose): void => {
    for (const [key, value] of Object.entries(values)) if (draw.chance(30)) object[key] ??= value;
  };
  if (object['format'] === 'sectorline-combined/1') some({ timing: 'electronic' });
  if (object['format'] !== 'sectorline-sheet/1') return;
  const isVertical = 'heights' in object;
  const competitors = object['competitors'] as Loose[];
  some({
    category: draw.pick([{}, { sex: 'X' }, { age: 'U18' }, { sex: 'W', age: '' }]),
    implementGrams: 4000,
    indoor: false,
    stage: 'final',
    ...(!isVertical && {
      plan: draw.pick([{}, { reorder: 'reverse' }]),
      admitted: [],
    }),
  });
  if (isVertical && object['stage'] !== 'qualification') some({ jumpOff: [] });
  for (const competitor of competitors) embellishCompetitor(draw, competitor);
}

function embellishCompetitor(draw: Draw, competitor: Loose): void {
  const series = (competitor['series'] ?? []) as unknown[];
  if (series.length < 1 && draw.chance(50)) competitor['series'] = draw.pick([[], [null]]);
  const extra: Loose = { club: '', name: 'A. Person', flight: 'B', guest: false, implementGrams: 800 };
  for (const [key, value] of Object.entries(extra)) if (draw.chance(20)) competitor[key] ??= value;
  if (draw.chance(5)) competitor['written'] ??= draw.pick([{}, { place: null }, { mark: '1.' }]);
}

const embellished = drawn((draw) => {
  const sheet = generateSheet(draw) as unknown as Loose;
  embellish(draw, sheet);
  return JSON.stringify(sheet);
});

describe('a sheet that is read and written again', () => {
  it('is the same sheet', () => {
    fc.assert(
      fc.property(embellished, (source) => {
        const normal = normaliseSheet(JSON.parse(source) as PlainJson);
        expect(normaliseSheet(written(source))).toEqual(normal);
        expect(sameJson(normaliseSheet(written(source)), normal)).toBe(true);
      }),
      { numRuns: 3000 },
    );
  });

  it('holds the same', () => {
    fc.assert(
      fc.property(embellished, (source) => {
        expect(read(JSON.stringify(written(source)))).toEqual(read(source));
      }),
      { numRuns: 1000 },
    );
  });
});

describe('the normal form', () => {
  it('counts to the same result as the sheet, and is its own normal form', () => {
    fc.assert(
      fc.property(embellished, (source) => {
        const normal = normaliseSheet(JSON.parse(source) as PlainJson);
        expect(normaliseSheet(normal)).toEqual(normal);
        expect(recount(JSON.stringify(normal))).toEqual(recount(source));
      }),
      { numRuns: 1000 },
    );
  });
});
