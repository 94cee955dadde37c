import type { Findings } from './findings.js';
import type { JsonList, JsonValue } from './json.js';
import {
  describe,
  FLAG,
  LIST,
  OBJECT,
  oneOf,
  orNull,
  TEXT,
  TEXT_NOT_EMPTY,
  WHOLE,
  type Kind,
} from './kinds.js';
import { ObjectReader, readValue } from './object-reader.js';
import { itemOf, type Place } from './place.js';
import type { CompetitorInformation, Written } from './sheet-content.js';

const COMPETITOR_KEYS = [
  'bib',
  'name',
  'club',
  'flight',
  'status',
  'guest',
  'implementGrams',
  'series',
  'written',
];
const WRITTEN_KEYS = ['place', 'mark'];
const STATUSES = ['DNS', 'DQ'] as const;
const CELL: Kind<string | null> = { ...orNull(TEXT), expected: 'a cell (a string) or null' };

/** One competitor of a sheet. `undefined`: a problem has been reported. `T`: what a cell of the series holds. */
export interface CompetitorDraft<T> {
  readonly bib: string | undefined;
  readonly name: string | null;
  readonly club: string | null;
  readonly flight: string | null;
  readonly status: 'DNS' | 'DQ' | null | undefined;
  readonly guest: boolean | undefined;
  readonly series: readonly CellDraft<T>[] | undefined;
  readonly information: CompetitorInformation;
}

export interface CellDraft<T> {
  readonly place: Place;
  /** `null`: no trial was taken; `undefined`: there is a trial, but it cannot be read. */
  readonly content: T | null | undefined;
}

/** Reads a cell that is a string; `undefined`: a problem has been reported. */
export type CellReader<T> = (text: string, place: Place) => T | undefined;

/** Reads the competitors of a sheet, in its order; `undefined` stands for one of whom nothing can be read. */
export function readCompetitors<T>(
  sheet: ObjectReader,
  readCell: CellReader<T>,
): (CompetitorDraft<T> | undefined)[] | undefined {
  const list = sheet.required('competitors', LIST);
  const bibs = new BibRegister(sheet.findings);
  return list?.map((item, index) => {
    const place = itemOf(sheet.placeOf('competitors'), index);
    const reader = ObjectReader.open(item, place, COMPETITOR_KEYS, sheet.findings);
    return reader && readCompetitor(reader, bibs, readCell);
  });
}

/** The bibs that can be read. */
export function bibsOf<T>(drafts: readonly (CompetitorDraft<T> | undefined)[]): ReadonlySet<string> {
  return new Set(drafts.flatMap((draft) => draft?.bib ?? []));
}

/** All competitors, if something of each can be read. */
export function membersOf<T>(
  drafts: readonly (CompetitorDraft<T> | undefined)[],
): readonly CompetitorDraft<T>[] | undefined {
  return drafts.every((draft) => draft !== undefined) ? drafts : undefined;
}

/** The trials of a series, without empty cells at the end; one that cannot be read is left empty. */
export function trialsOf<T>({ series = [] }: CompetitorDraft<T>): (T | null)[] {
  const trials = series.map(({ content }) => content ?? null);
  return trials.slice(0, trials.findLastIndex((trial) => trial !== null) + 1);
}

/** Sees to it that no bib stands twice. */
export class BibRegister {
  private readonly known = new Set<string>();

  constructor(private readonly findings: Findings) {}

  read(reader: ObjectReader): string | undefined {
    const bib = reader.required('bib', TEXT_NOT_EMPTY);
    if (bib === undefined) return undefined;
    if (this.known.has(bib)) {
      const message = `Bib ${describe(bib)} is taken; give this competitor another one.`;
      this.findings.report(reader.placeOf('bib'), 'DUPLICATE', message);
    }
    this.known.add(bib);
    return bib;
  }
}

function readCompetitor<T>(
  reader: ObjectReader,
  bibs: BibRegister,
  readCell: CellReader<T>,
): CompetitorDraft<T> {
  return {
    bib: bibs.read(reader),
    name: reader.optional('name', TEXT, null) ?? null,
    club: readClub(reader),
    flight: reader.optional('flight', TEXT, null) ?? null,
    status: reader.optional('status', oneOf(STATUSES), null),
    guest: reader.optional('guest', FLAG, false),
    series: readSeries(reader, readCell),
    information: {
      implementGrams: reader.optional('implementGrams', WHOLE, null) ?? null,
      written: readWritten(reader),
    },
  };
}

/** An empty club is none. */
export function readClub(reader: ObjectReader): string | null {
  return reader.optional('club', TEXT, null) || null;
}

function readSeries<T>(reader: ObjectReader, readCell: CellReader<T>): CellDraft<T>[] | undefined {
  const list: JsonList | undefined = reader.optional('series', LIST, []);
  const series = reader.placeOf('series');
  return list?.map((item, index) => {
    const place = itemOf(series, index);
    return { place, content: readContent(item, place, readCell, reader.findings) };
  });
}

function readContent<T>(
  item: JsonValue,
  place: Place,
  readCell: CellReader<T>,
  findings: Findings,
): T | null | undefined {
  const text = readValue(item, place, CELL, findings);
  return typeof text === 'string' ? readCell(text, place) : text;
}

function readWritten(reader: ObjectReader): Written | null {
  const object = reader.optional('written', OBJECT, undefined);
  const written =
    object && ObjectReader.open(object, reader.placeOf('written'), WRITTEN_KEYS, reader.findings);
  if (!written) return null;
  const place = written.optional('place', orNull(WHOLE), undefined);
  const mark = written.optional('mark', orNull(TEXT), undefined);
  return { ...(place !== undefined && { place }), ...(mark !== undefined && { mark }) };
}
