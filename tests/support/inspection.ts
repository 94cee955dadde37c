import { randomUUID } from 'node:crypto';
import type { ApiClient } from './client.js';
import type { Circle } from './at-the-circle.js';

const INSPECTION = `id sequence kind cause attemptId outcome grams dimensions { what mm }
  findings { what unit measured min max verdict sentence rule isConfirmed }
  isKeptBack note replacesId reason authority device`;

const IMPLEMENT = `id event grams label owner { kind name } status lastInspection { id outcome } log { ${INSPECTION} }`;

const USER_ERRORS = 'isReplay userErrors { code path message rule remedy }';

const LOOKED = `inspection { ${INSPECTION} } implement { id status } questioned notices ${USER_ERRORS}`;

const SELECTIONS: Readonly<Record<string, string>> = {
  implementRegister: `implement { ${IMPLEMENT} } ${USER_ERRORS}`,
  implementInspect: LOOKED,
  implementRecheck: LOOKED,
  competitorCheckIn: `line { competitor { bib } name didNotStart current { isPresent isLate note authority device }
    history { id sequence isPresent isLate } implements { label status } } notices ${USER_ERRORS}`,
};

/** The tent of a meet at which implements are looked at and competitors report, over HTTP. */
export class Tent {
  constructor(
    private readonly api: ApiClient,
    private readonly circle: Circle,
  ) {}

  /** One mutation, as the official of the competition unless a token says otherwise; the whole payload. */
  async call(mutation: string, input: object, token: string | null = this.circle.official): Promise<any> {
    const answer = await this.send(mutation, input, token);
    if (answer.errors) throw new Error(JSON.stringify(answer.errors));
    return answer.data[mutation];
  }

  async send(mutation: string, input: object, token: string | null = this.circle.official): Promise<any> {
    const type = `${mutation[0]?.toUpperCase()}${mutation.slice(1)}Input`;
    const document = `mutation ($input: ${type}!) { ${mutation}(input: $input) { ${SELECTIONS[mutation]} } }`;
    const meetId = mutation === 'competitorCheckIn' ? {} : { meetId: this.circle.meet.id };
    return this.api.send(document, { input: { id: randomUUID(), ...meetId, ...input } }, token);
  }

  /** A discus of 1 kg unless said otherwise; gives its id. */
  async register(input: object = {}): Promise<string> {
    const discus = { event: 'DISCUS', grams: 1000, label: 'LT 1' };
    const { implement, userErrors } = await this.call('implementRegister', { ...discus, ...input });
    if (!implement) throw new Error(JSON.stringify(userErrors));
    return implement.id;
  }

  /** A discus of 1 kg that has passed; gives its id. */
  async passed(input: object = {}): Promise<string> {
    const implementId = await this.register(input);
    await this.inspect(implementId, 1004);
    return implementId;
  }

  inspect(implementId: string, grams: number | null, input: object = {}): Promise<any> {
    return this.call('implementInspect', { implementId, grams, ...input });
  }

  recheck(implementId: string, grams: number | null, input: object = {}): Promise<any> {
    return this.call('implementRecheck', { implementId, grams, cause: 'REFEREE', ...input });
  }

  async implement(id: string, meetId = this.circle.meet.id, token = this.circle.official): Promise<any> {
    const document = `query ($id: UUID!, $meetId: ID!) { implement(id: $id, meetId: $meetId) { ${IMPLEMENT} } }`;
    return (await this.api.data(document, { id, meetId }, token)).implement;
  }
}
