import {
  readSheet,
  readSource,
  type CombinedResultDocument,
  type CompetitionContent,
  type MeetContent,
  type MeetResultDocument,
  type ResultDocument,
  type SheetContent,
} from '#rules';
import type { Counted } from '../documents.js';
import type { Input } from '../read-input.js';
import type { CombinedSheet, Meet, Sheet } from '../sheet.js';
import { combinedTable } from './combined.js';
import { competitionTable } from './competition.js';
import { combinedHeading, sheetHeading } from './heading.js';
import { reasonLines } from './reasons.js';
import { clubTable, cutLines, differenceLines, orderLines, problemLines } from './sections.js';
import { printable, widthOf } from './text.js';

function section(title: string, lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : ['', title, ...lines.map((line) => `  ${line}`)];
}

function competitionReport(sheet: Sheet, content: CompetitionContent, document: ResultDocument): string[] {
  const { rules = '', edition = '', results = [], cuts = [], order = {}, clubs = [], differences } = document;
  const table = competitionTable(sheet, results, Object.keys(order).length);
  return [
    printable(sheetHeading(sheet, `${rules} ${edition}`)),
    ...(table.length === 0 ? ['', 'Nobody is on the sheet.'] : ['', ...table]),
    ...[...reasonLines(content)].flatMap(([rule, lines]) => section(`Why, by ${rule}`, lines)),
    ...section('Through the cuts, best first', cutLines(cuts)),
    ...section('Order of competition', orderLines(order)),
    ...section('Clubs', clubTable(clubs)),
    ...section('The card differs', differenceLines(differences ?? [])),
    ...(differences?.length === 0 ? ['', 'All that is written on the card agrees with the count.'] : []),
  ];
}

function combinedReport(sheet: CombinedSheet, { results = [] }: CombinedResultDocument): string[] {
  return [printable(combinedHeading(sheet)), '', ...combinedTable(sheet, results)];
}

function meetReport(meet: Meet, content: MeetContent, document: MeetResultDocument): string[] {
  const { results = [], clubs = [] } = document;
  const competitions = meet.sheets.flatMap((sheet, index) => {
    const [counted, result] = [content.sheets[index], results[index]];
    return counted && result ? [...competitionReport(sheet, counted, result), '', ''] : [];
  });
  return [...competitions, 'All sheets together', ...section('Clubs', clubTable(clubs))];
}

/** What the file holds, beside its plain JSON: both are there, because it has been counted. */
function contentOf(bytes: Uint8Array): SheetContent | null {
  const source = readSource(bytes);
  const sheet = source.ok ? readSheet(source.value) : null;
  return sheet?.ok ? sheet.content : null;
}

function countedReport(bytes: Uint8Array, document: Counted): string[] {
  const json: unknown = JSON.parse(new TextDecoder().decode(bytes));
  const content = contentOf(bytes);
  switch (content?.kind) {
    case 'combined':
      return combinedReport(json as CombinedSheet, document as CombinedResultDocument);
    case 'meet':
      return meetReport(json as Meet, content, document as MeetResultDocument);
    case 'distance':
    case 'vertical':
      return competitionReport(json as Sheet, content, document as ResultDocument);
    case undefined:
      throw new Error('A sheet that was counted could not be read again.');
  }
}

/** The answer for people: what was counted from a file, or why it was not. */
export function reportOf(input: Input, document: Counted): string {
  const problems = problemLines(document.problems);
  const count = document.problems.length;
  const lines =
    'bytes' in input && count === 0
      ? countedReport(input.bytes, document)
      : [`Not counted: ${count} ${count === 1 ? 'problem' : 'problems'}`, '', ...problems];
  return `${lines.join('\n')}\n`;
}

/** Tells the reports of several files apart. */
export function titleOf(name: string): string {
  const title = name === '-' ? 'Standard input' : printable(name);
  return `${title}\n${'═'.repeat(widthOf(title))}\n`;
}
