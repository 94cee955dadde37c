import { sidedText, sideNeutral, type Handedness } from '#technique';

/*
 * What is stored names the side of the throwing arm and the other one; left and right are words of the screen. Where
 * the throwing arm is not known, a coach's own words stay as they were typed.
 */

export function stored(text: string, hand: Handedness | null): string {
  return hand === null ? text : sideNeutral(text, hand);
}

export function shown(text: string, hand: Handedness | null): string {
  return /\{(throw|block)\}/.test(text) ? sidedText(text, hand) : text;
}
