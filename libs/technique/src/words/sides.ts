/** The arm that throws. For jumpers nothing depends on it. */
export type Handedness = 'right' | 'left';

interface SideWords {
  readonly throw: string;
  readonly block: string;
}

const SIDES: Readonly<Record<Handedness, SideWords>> = {
  right: { throw: 'right', block: 'left' },
  left: { throw: 'left', block: 'right' },
};

/** Where the hand is not known the arms say which side is meant. */
const BY_ARM: readonly (readonly [RegExp, string])[] = [
  [/\{throw\} arm\b/gi, 'throwing arm'],
  [/\{block\} arm\b/gi, 'free arm'],
  [/\{throw\} side\b/gi, 'throwing-arm side'],
  [/\{block\} side\b/gi, 'free-arm side'],
  [/\{throw\}/gi, 'throwing-arm-side'],
  [/\{block\}/gi, 'free-arm-side'],
];

/**
 * Stored words with sides put in: left and right where the hand is known, throwing-arm and free-arm side where it is
 * not. The first letter becomes a capital, as it would at the start of a line.
 */
export function sidedText(text: string, handedness: Handedness | null): string {
  const sided =
    handedness === null
      ? BY_ARM.reduce((current, [side, words]) => current.replace(side, words), text)
      : text.replace(/\{(throw|block)\}/g, (_, side: keyof SideWords) => SIDES[handedness][side]);
  return sided.charAt(0).toUpperCase() + sided.slice(1);
}

/**
 * What a coach typed about one thrower, made side-neutral: "left foot late" of a right-hander becomes
 * `{block} foot late`. Only before words for parts of the body, since "right" also means correct.
 */
export function sideNeutral(text: string, handedness: Handedness): string {
  const part = /\b(left|right)(?=[ -](side|foot|leg|knee|hip|heel|toe|arm|hand|elbow|shoulder))/gi;
  return text.replace(part, (side) => (side.toLowerCase() === handedness ? '{throw}' : '{block}'));
}
