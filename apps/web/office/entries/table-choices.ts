import type { AthleteQuestion, ClubQuestion, LookedAt } from './documents.js';

/** What was chosen, by the line of an athlete and by the name of a club. `NEW`, `WRITTEN`, `line N` or an id. */
export type Choices = Readonly<Record<string, string>>;

export function athleteKey({ line }: AthleteQuestion): string {
  return `athlete ${line}`;
}

export function clubKey({ name }: ClubQuestion): string {
  return `club ${name}`;
}

export function isDecided({ athleteQuestions, clubQuestions }: LookedAt, choices: Choices): boolean {
  return [...athleteQuestions.map(athleteKey), ...clubQuestions.map(clubKey)].every((key) => key in choices);
}

/** As the API takes them. */
export function decisionsOf({ athleteQuestions, clubQuestions }: LookedAt, choices: Choices): object {
  return {
    athletes: athleteQuestions.map((question) => {
      const choice = choices[athleteKey(question)]!;
      const { line } = question;
      if (choice === 'NEW') return { line, choice };
      const [, sameLine] = /^line (\d+)$/.exec(choice) ?? [];
      return sameLine === undefined
        ? { line, choice: 'SAME', athleteId: choice }
        : { line, choice: 'SAME', sameLine: Number(sameLine) };
    }),
    clubs: clubQuestions.map((question) => {
      const choice = choices[clubKey(question)]!;
      const { name } = question;
      if (choice === 'NEW') return { name, choice };
      return choice === 'WRITTEN' ? { name, choice: 'AS_WRITTEN' } : { name, choice: 'SAME', clubId: choice };
    }),
  };
}

const AT_ONCE = 0x8000;

/** The bytes of a file as base64, so that the server finds out their encoding. */
export async function base64Of(file: Blob): Promise<string> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  let text = '';
  for (let from = 0; from < bytes.length; from += AT_ONCE) {
    text += String.fromCharCode(...bytes.subarray(from, from + AT_ONCE));
  }
  return btoa(text);
}
