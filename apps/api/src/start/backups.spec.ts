import { backupName, backupTime, dueIn, tooMany } from './backups.js';

const HOUR = 60 * 60 * 1_000;
const NOON = new Date('2026-05-16T12:00:00Z');
const names = ['2026-05-16T09:00:00Z', '2026-05-16T11:30:00Z', '2026-05-15T23:59:59Z'].map((at) =>
  backupName(new Date(at)),
);

describe('backups while the server runs', () => {
  it('have their moment in the name, and no other file is taken for one', () => {
    expect(names[1]).toBe('sectorline-2026-05-16T11-30-00Z.backup');
    expect(backupTime(names[1]!)).toEqual(new Date('2026-05-16T11:30:00Z'));
    for (const other of [
      'sectorline.backup',
      'a.txt',
      `${names[0]!}.part`,
      'sectorline-2026-99-16T11-30-00Z.backup',
    ])
      expect(backupTime(other)).toBeNull();
  });

  it.each<[string, readonly string[], number]>([
    ['an hour after the last one', names, HOUR / 2],
    ['soon when there is none, and not in the first minutes', [], HOUR / 6],
    ['soon when the last one is long ago', names.slice(2), HOUR / 6],
    ['soon when there are only files of others', ['a.txt'], HOUR / 6],
  ])('are due %s', (_when, there, wait) => {
    expect(dueIn(NOON, there, 1)).toBe(wait);
  });

  it('are kept up to a number, the newest, beside whatever else lies there', () => {
    const there = ['zebra.txt', ...names, `${names[0]!}.part`];
    expect(tooMany(there, 2)).toEqual([names[2]]);
    expect(tooMany(there, 5)).toEqual([]);
    expect(tooMany(there, 1)).toEqual([names[2], names[0]]);
  });
});
