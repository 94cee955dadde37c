import fc from 'fast-check';
import { isDecided, jumpOffGroups, playRound, startJumpOff } from './jump-off.js';
import type { JumpOffRound } from './vertical-card.js';
import { parseJumpOffTry } from './vertical-cell.js';

/** `AO BX`: A clears, B fails. */
function round(tries: string): JumpOffRound {
  const entries = tries.split(' ').flatMap((entry) => {
    const trial = parseJumpOffTry(entry.slice(1));
    return trial ? [{ bib: entry.slice(0, 1), trial }] : [];
  });
  return { height: 200, tries: entries };
}

function groups(level: string, ...rounds: string[]): string {
  const found = jumpOffGroups([...level], rounds.map(round));
  return found.map((group) => group.join('')).join(' ');
}

// WA TR26.9, from memory, in the words of the format: out behind the others, equal when out together.
describe('a jump-off', () => {
  it.each([
    ['all fail and all clear: nobody is out', 'ABC', ['AX BX CX', 'AO BO CO'], 'ABC'],
    ['who fails while another clears is out', 'ABC', ['AO BX CO'], 'AC B'],
    ['out together, level', 'ABCD', ['AO BX CX DX'], 'A BCD'],
    ['out earlier, behind', 'ABC', ['AO BO CX', 'AX BO'], 'B A C'],
    ['who retires is behind those who failed', 'ABCD', ['AO BX C- Dr'], 'A B CD'],
    ['who retires is behind those who fail and go on', 'ABC', ['AX BX Cr'], 'AB C'],
    ['the one who is left wins without jumping', 'AB', ['Ar'], 'B A'],
    ['the one who is left wins although failing', 'AB', ['AX B-'], 'A B'],
    ['all give up: they share the place', 'ABC', ['A- B- Cr'], 'ABC'],
    ['the last two give up: they share first', 'ABC', ['AO BO CX', 'Ar B-'], 'AB C'],
    ['no round held', 'AB', [], 'AB'],
    ['a round that nobody took', 'AB', [''], 'AB'],
  ])('%s', (_, level, rounds, expected) => {
    expect(groups(level, ...rounds)).toBe(expected);
  });

  it('is decided when one or nobody is left', () => {
    const after = (tries: string) => isDecided(playRound(startJumpOff(['A', 'B']), round(tries)));
    expect(['AO BO', 'AX BX', 'AO BX', 'Ar', 'A- Br'].map(after)).toEqual([false, false, true, true, true]);
    expect(isDecided(startJumpOff(['A']))).toBe(true);
  });

  it('keeps everybody exactly once, whatever is jumped', () => {
    const trial = fc.constantFrom('O', 'X', '-', 'r', '?');
    const tries = fc.tuple(trial, trial, trial, trial);
    fc.assert(
      fc.property(fc.array(tries, { maxLength: 6 }), (rounds) => {
        const written = rounds.map((all) => all.map((one, index) => `${'ABCD'[index]}${one}`).join(' '));
        const found = groups('ABCD', ...written);
        expect([...found.replaceAll(' ', '')].sort().join('')).toBe('ABCD');
      }),
      { numRuns: 20_000 },
    );
  });
});
