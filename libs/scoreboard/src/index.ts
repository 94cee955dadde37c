/** What the crowd sees: public formats, words, and how it is laid out as plain data. The one front door of the library. */
export * from './formats/competition.js';
export type * from './formats/shared.js';
export * from './formats/meet.js';
export * from './formats/club.js';
export * from './formats/club-table.js';
export { LANGUAGES, type InAllLanguages, type Language } from './words/in-all-languages.js';
export { languageOf, wordingOf, type WordKey, type Wording } from './words/wording.js';
export { flat, h, heard, seen, type Part, type Tree, type TreeElement } from './view/tree.js';
export { competitionView } from './view/competition-view.js';
export { linked, type Addresses, type Shown } from './view/shown.js';
export { clubResultsView, meetView } from './view/meet-view.js';
export { announcerView } from './view/announcer-view.js';
export { clubTableView } from './view/club-table-view.js';
export { cellText, needTexts, newsBetween, statusText, whereText, whyText } from './view/sentences.js';
