/** What the crowd sees: the public formats. The one front door of the library. */
export * from './formats/competition.js';
export type * from './formats/shared.js';
export * from './formats/meet.js';
export * from './formats/club.js';
export * from './formats/club-table.js';
