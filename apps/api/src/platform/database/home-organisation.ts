import { organisations, violationOf } from '#persistence';
import type { Database } from './database.js';

/** Always the same, so that instances that start at once make one organisation and not two. */
const HOME_ID = '00000000-0000-7000-8000-000000000001';

/** The organisation whose records this installation shows to the public; made on the first start. */
export async function homeOrganisation(database: Database): Promise<string> {
  const [first] = await database.read((at) => organisations.list(at));
  if (first) return first.id;
  try {
    await database.write((tx) => organisations.insert(tx, { id: HOME_ID, name: 'Home' }));
  } catch (error) {
    if (violationOf(error)?.kind !== 'unique') throw error;
  }
  return HOME_ID;
}
