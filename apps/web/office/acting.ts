import { o } from '../labels/office/words.js';
import { useOffice, type Payload } from './office.js';

/** Sends what was decided; true: it was done, or is kept as a question. */
export function useAct(): (mutation: string, input: object) => Promise<boolean> {
  const office = useOffice();
  return async (mutation, input) => {
    const words = { done: o('done'), away: o('notDone') };
    const sent = { deviceAt: new Date().toISOString(), ...input };
    return (await office.act<Payload>(mutation, sent, words)) !== null;
  };
}

/** The same for what is no entry of a journal, and so tells no time of the device. */
export function usePlainAct(): (mutation: string, input: object) => Promise<boolean> {
  const office = useOffice();
  return async (mutation, input) =>
    (await office.act<Payload>(mutation, input, { done: o('done'), away: o('notDone') })) !== null;
}
