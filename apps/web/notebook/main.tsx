import { render } from 'preact';
import { passInAddress } from '../offline/pass.js';
import { keepPage } from '../offline/registration.js';
import { Session } from '../offline/session.js';
import { followAddress } from '../ui/route.js';
import { openNotebookDatabase } from './keeping/database.js';
import { NoteStore } from './keeping/note-store.js';
import { Notebook, NotebookContext } from './notebook.js';
import { App } from './screens/App.jsx';
import './notebook.css';

const CLOCK_MS = 10_000;
const LOOK_MS = 60_000;

async function start(): Promise<void> {
  const store = new NoteStore(await openNotebookDatabase());
  await store.read();
  const session = new Session('notebook', await store.sessionPlace());
  const notebook = new Notebook(session, store);
  const pass = passInAddress();
  followAddress();
  render(
    <NotebookContext.Provider value={notebook}>
      <App />
    </NotebookContext.Provider>,
    document.getElementById('notebook')!,
  );
  if (pass) await session.comeIn(pass);
  else if (session.isThere) await session.look();
  const look = () => {
    if (document.visibilityState === 'hidden' || session.grants.value === null) return;
    notebook.sending.go();
    void notebook.look();
  };
  look();
  setInterval(() => (notebook.nowMs.value = Date.now()), CLOCK_MS);
  setInterval(look, LOOK_MS);
  addEventListener('online', look);
  document.addEventListener('visibilitychange', look);
  await keepPage('/notebook');
}

start().catch((error: unknown) => {
  // Without its store the notebook can promise nothing, so it does not pretend to work.
  const message = document.createElement('p');
  message.className = 'notice refused';
  message.textContent = `The notebook cannot open what it keeps on this device: ${String(error)}. Write on paper.`;
  document.body.append(message);
});
