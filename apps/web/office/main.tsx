import { render } from 'preact';
import { passInAddress } from '../offline/pass.js';
import { Office, OfficeContext } from './office.js';
import { followAddress } from '../ui/route.js';
import { App } from './screens/App.jsx';
import { Session } from '../offline/session.js';
import './office.css';

/** Often enough to see who is up; the server answers from memory. */
const LOOK_MS = 5_000;

async function start(): Promise<void> {
  const session = new Session('office');
  const office = new Office(session);
  const pass = passInAddress();
  followAddress();
  render(
    <OfficeContext.Provider value={office}>
      <App />
    </OfficeContext.Provider>,
    document.getElementById('office')!,
  );
  if (pass) await session.comeIn(pass);
  else if (session.isThere) await session.look();
  if (session.grants.value !== null) await office.findMeets();
  const look = () => {
    office.nowMs.value = Date.now();
    if (document.visibilityState === 'visible' && session.grants.value !== null) void office.look();
  };
  setInterval(look, LOOK_MS);
  document.addEventListener('visibilitychange', look);
  addEventListener('online', look);
}

void start();
