import { EntriesModule } from './entries/entries.module.js';
import { MeetsModule } from './meets/meets.module.js';

/** Every capability of the API; each module brings its own resolvers. */
export const CAPABILITIES = [MeetsModule, EntriesModule];
