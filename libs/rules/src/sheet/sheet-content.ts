import type { Card } from '../card.js';
import type { CombinedCard } from '../combined/combined-card.js';
import type { PlanOverrides } from '../plan.js';
import type { Scoring } from '../scoring/scoring.js';
import type { VerticalCard } from '../vertical/vertical-card.js';

export const COMPETITION_FORMAT = 'sectorline-sheet/1';
export const COMBINED_FORMAT = 'sectorline-combined/1';
export const MEET_FORMAT = 'sectorline-meet/1';

/** What a sheet holds, once it has been found valid. */
export type SheetContent = CompetitionContent | CombinedContent | MeetContent;

/** `sectorline-sheet/1`: what decides the competition, and what else the sheet says. */
export type CompetitionContent = DistanceContent | VerticalContent;

export interface DistanceContent {
  readonly kind: 'distance';
  readonly card: Card;
  readonly information: SheetInformation;
}

export interface VerticalContent {
  readonly kind: 'vertical';
  readonly card: VerticalCard;
  readonly information: SheetInformation;
}

/** `sectorline-combined/1` */
export interface CombinedContent {
  readonly kind: 'combined';
  readonly card: CombinedCard;
}

/** `sectorline-meet/1` */
export interface MeetContent {
  readonly kind: 'meet';
  readonly scoring: Scoring;
  readonly sheets: readonly CompetitionContent[];
}

/** What a sheet says beside what decides the competition. */
export interface SheetInformation {
  /** The edition, if the sheet names it; `null`: the newest at the time of reading. */
  readonly edition: string | null;
  /** The parts of the plan that the sheet names itself. */
  readonly plan: PlanOverrides;
  readonly category: Category;
  readonly implementGrams: number | null;
  readonly scoring: Scoring | null;
  /** In the order of the card's competitors. */
  readonly competitors: readonly CompetitorInformation[];
}

export interface Category {
  readonly sex?: Sex;
  readonly age?: string;
}

export const SEXES = ['W', 'M', 'X'] as const;
export type Sex = (typeof SEXES)[number];

export interface CompetitorInformation {
  readonly implementGrams: number | null;
  /** What the card says was the result; `null`: nothing. */
  readonly written: Written | null;
}

/** An absent key says nothing; `null` says that there is no place, or no mark. */
export interface Written {
  readonly place?: number | null;
  readonly mark?: string | null;
}
