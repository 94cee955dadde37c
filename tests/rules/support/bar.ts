import {
  applyVertical,
  openVertical,
  parseMark,
  ruleSet,
  type JumpCorrectionEntry,
  type JumpEntry,
  type JumpOffEntry,
  type Verdict,
  type VerticalBody,
  type VerticalCard,
  type VerticalEntry,
  type VerticalSetup,
  type VerticalState,
  type VerticalTrial,
} from '#rules';

/** A high jump final under the newest WA edition: competitors `a`, `b`, … with bibs A, B, … */
export function highJumpOf(
  heights: string,
  count: number,
  changes: Partial<VerticalSetup> = {},
): VerticalSetup {
  return {
    rules: 'WA',
    edition: ruleSet(changes.rules ?? 'WA').edition,
    event: 'high-jump',
    indoor: false,
    stage: 'final',
    qualifying: null,
    unit: 'cm',
    heights: heights.split(' ').map(units),
    combined: false,
    passGivesUp: 'height',
    tieForFirst: 'jump-off',
    competitors: Array.from({ length: count }, (_, at) => ({
      key: String.fromCharCode(97 + at),
      bib: String.fromCharCode(65 + at),
      name: null,
      club: null,
      flight: null,
      guest: false,
    })),
    ...changes,
  };
}

/** The setup of a competition that a card is of; a competitor's key is `k` and the bib. */
export function setupOfCard(card: VerticalCard): VerticalSetup {
  const { rules, edition, event, indoor, stage, qualifying, unit, heights } = card;
  const settled = { rules, edition, event, indoor, stage, qualifying, unit, heights };
  return {
    ...settled,
    combined: false,
    passGivesUp: 'height',
    tieForFirst: 'jump-off',
    competitors: card.competitors.map(({ bib, name, club, flight, guest }) => ({
      key: `k${bib}`,
      bib,
      name,
      club,
      flight,
      guest,
    })),
  };
}

export function units(text: string): number {
  const mark = parseMark(text);
  if (!mark) throw new Error(`${text} is no height.`);
  return mark.value;
}

const OUTCOMES: Readonly<Record<string, VerticalTrial>> = {
  O: 'cleared',
  X: 'failed',
  '-': 'passed',
  r: 'retired',
};

/** One trial: `O`, `X`, `-` or `r` at a height. */
export function jump(
  competitor: string,
  height: string,
  trial: number,
  letter: string,
  extra: Partial<JumpEntry> = {},
): JumpEntry {
  const outcome = OUTCOMES[letter]!;
  const judgement = { outcome, foul: null, incident: null, protested: false };
  return { kind: 'jump', competitor, height: units(height), trial, ...judgement, ...extra };
}

/** The same judgement as a correction of an earlier jump. */
export function correction(attempt: string, letter: string, reason = 'misread'): JumpCorrectionEntry {
  const { outcome, foul, incident, protested } = jump('', '1.80', 1, letter);
  return { kind: 'jump-correction', attempt, outcome, foul, incident, protested, reason };
}

/** Makes entries and applies them one after the other, remembering the last verdict. */
export class Bar {
  state: VerticalState;
  verdict: Verdict | undefined;
  private made = 0;

  constructor(
    setup: VerticalSetup,
    readonly actor = 'ann',
  ) {
    this.state = openVertical(setup);
  }

  /** Applies an entry and gives its id. */
  enter(body: VerticalBody, head: Partial<Pick<VerticalEntry, 'id' | 'by' | 'actor'>> = {}): string {
    const id = head.id ?? `e${++this.made}`;
    const entry: VerticalEntry = { id, by: head.by ?? 'official', actor: head.actor ?? this.actor, ...body };
    const applied = applyVertical(this.state, entry);
    this.state = applied.state;
    this.verdict = applied.verdict;
    return id;
  }

  jump(
    competitor: string,
    height: string,
    trial: number,
    letter: string,
    extra: Partial<JumpEntry> = {},
  ): string {
    return this.enter(jump(competitor, height, trial, letter, extra));
  }

  /** All trials at one height, in turns: cells by competitor in the order of the start list, `.` for none. */
  height(height: string, ...cells: readonly string[]): void {
    for (let trial = 1; trial <= 3; trial++) {
      cells.forEach((cell, at) => {
        const letter = cell === '.' ? undefined : cell[trial - 1];
        if (letter) this.jump(this.state.setup.competitors[at]!.key, height, trial, letter);
      });
    }
  }

  /** One round of the jump-off: `aO bX`. */
  jumpOff(round: number, height: string, tries: string): void {
    for (const one of tries.split(' ')) {
      const entry: JumpOffEntry = {
        ...jump(one.slice(0, -1), height, round, one.slice(-1)),
        kind: 'jump-off',
      };
      this.enter(entry);
    }
  }

  referee(body: VerticalBody): string {
    return this.enter(body, { by: 'referee', actor: 'rolf' });
  }
}
