import { effect } from '@preact/signals';
import { render } from 'preact';
import { chosenLanguage, isLanguage, language } from '../labels/languages.js';
import { ApiClient } from '../offline/api-client.js';
import { passInAddress, type Pass } from '../offline/pass.js';
import { keepPage } from '../offline/registration.js';
import { Desk, DeskContext } from './desk-context.js';
import { DeskStore } from './desk-store.js';
import { openDeskDatabase } from './keeping/database.js';
import { Keeper } from './keeping/keeper.js';
import { Reading } from './keeping/reading.js';
import { Sending } from './keeping/sending.js';
import { App } from './screens/App.jsx';
import { comeIn } from './session.js';
import './desk.css';

const CLOCK_MS = 10_000;
const AGAIN_MS = 3_000;

async function start(): Promise<void> {
  const keeper = new Keeper(await openDeskDatabase());
  const store = new DeskStore(keeper, await keeper.readAll());
  const client = new ApiClient(() => store.signIn.value?.token ?? null);
  const reading = new Reading(store, client);
  const sending = new Sending(store, client, (id) => reading.readOn(id));
  const desk = new Desk({ store, client, sending, reading });
  store.onEntered = () => sending.go();
  tellOtherPages(store);
  speakTheLanguage(store);
  const pass = passInAddress();
  if (pass) await comeInPatiently(store, pass);
  render(
    <DeskContext.Provider value={desk}>
      <App />
    </DeskContext.Provider>,
    document.getElementById('desk')!,
  );
  window.addEventListener('online', () => sending.go());
  document.addEventListener(
    'visibilitychange',
    () => document.visibilityState === 'visible' && reading.watch(),
  );
  setInterval(() => (desk.nowMs.value = Date.now()), CLOCK_MS);
  reading.watch();
  sending.go();
  await keepPage('/desk');
}

/** The address gives its pass away once, so a network that fails at that moment must not lose it. */
async function comeInPatiently(store: DeskStore, pass: Pass): Promise<void> {
  const before = store.signIn.value;
  const failure = await comeIn(store, pass);
  if (failure?.kind !== 'unreachable' && failure?.kind !== 'unavailable') return;
  store.link.value = 'offline';
  setTimeout(() => {
    // Unless somebody has signed in by hand meanwhile.
    if (store.signIn.value === before) void comeInPatiently(store, pass);
  }, AGAIN_MS);
}

/** Two pages on one device keep the same things. */
function tellOtherPages(store: DeskStore): void {
  const channel = new BroadcastChannel('sectorline-desk');
  store.onKept = () => channel.postMessage('kept');
  channel.onmessage = () => void store.readAgain();
}

function speakTheLanguage(store: DeskStore): void {
  effect(() => {
    const { language: chosen } = store.settings.value;
    chosenLanguage.value = isLanguage(chosen) ? chosen : null;
    document.documentElement.lang = language.value;
  });
}

start().catch((error: unknown) => {
  // Without its store the desk can promise nothing, so it does not pretend to work.
  const message = document.createElement('p');
  message.className = 'notice refused';
  message.textContent = `The desk cannot open what it keeps on this device: ${String(error)}. Write on paper.`;
  document.body.append(message);
});
