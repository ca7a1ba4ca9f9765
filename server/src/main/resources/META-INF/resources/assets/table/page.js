// The page beside the table: which sessions lie on this device, and which screen is shown. The screen stands in the address
// after #, so that going back and reloading work.
import { find } from './field.js';
import * as finish from './finish.js';
import * as logging from './logging.js';
import { stamp } from './numbers.js';
import { remember, setUp } from './setup.js';
import { log, onChange, remove, sessions } from './shelf.js';

const VIEWS = ['home', 'logging', 'finish'];
let view = '';
let shownId = '';

function reveal(name) {
  view = name;
  VIEWS.forEach(one => {
    find(`#${one}`).hidden = one !== name;
  });
  document.body.dataset.view = name;
  scrollTo(0, 0);
}

function item(session) {
  const row = document.createElement('li');
  const state = session.sent ? 'contributed' : 'not handed over';
  const words = Object.assign(document.createElement('span'), {
    textContent: `${session.room}, ${session.table.id}, ${stamp(session.begunAt).slice(0, 16).replace('T', ' ')}: ${finish.counted(session.attempts, 'attempt')}, ${state}. ` });
  const link = (text, href) => Object.assign(document.createElement('a'), { textContent: text, href });
  const forget = Object.assign(document.createElement('button'), { type: 'button', className: 'plain', textContent: 'Delete' });
  forget.addEventListener('click', async () => {
    if (forget.dataset.sure) {
      await remove(session.id);
      await home();
    } else {
      forget.dataset.sure = 'asked';
      forget.textContent = session.sent || session.attempts === 0 ? 'Really delete it here?' : `Really delete? ${finish.counted(session.attempts, 'attempt')} would be lost`;
    }
  });
  row.append(words, ...(session.sent ? [] : [link('Go on', `#log=${session.id}`), ' ']), link(session.sent ? 'Look' : 'Hand over', `#finish=${session.id}`), ' ', forget);
  return row;
}

async function home() {
  const all = await sessions();
  find('#kept').replaceChildren(...all.map(item));
  find('#kept-here').hidden = all.length === 0;
}

async function route() {
  const [, name, id] = /^#(log|finish)=(.+)$/.exec(location.hash) ?? [];
  if (!name && !['', '#', '#sessions'].includes(location.hash)) {
    // a place on the page, such as the list of all pages
    return;
  }
  const found = name ? await log(id) : undefined;
  shownId = found ? id : '';
  if (!found) {
    await home();
    await remember();
    reveal('home');
    if (name) {
      find('#offline').textContent = 'That session is not on this device: it was deleted, or logged in another browser.';
    }
  } else if (name === 'log' && !found.session.sent) {
    reveal('logging');
    logging.open(found);
  } else {
    finish.clear();
    await finish.show(found);
    reveal('finish');
  }
}

async function changedElsewhere(id) {
  if (view === 'home') {
    await home();
  } else if (id === shownId) {
    const found = await log(id);
    if (!found || (view === 'logging' && found.session.sent)) {
      await route();
    } else if (view === 'logging') {
      await logging.refresh();
    } else {
      await finish.show(found);
    }
  }
}

function lineWords(ready) {
  find('#offline').classList.toggle('cut', !navigator.onLine);
  find('#offline').textContent = !navigator.onLine ? 'No connection: everything is kept on this device and can be handed over later.'
    : ready ? 'This page now opens without a connection too.' : 'This page cannot be opened without a connection here (that needs https). What you tap is kept all the same.';
}

async function keepForOffline() {
  let ready = false;
  addEventListener('online', () => lineWords(ready));
  addEventListener('offline', () => lineWords(ready));
  if ('serviceWorker' in navigator) {
    try {
      await navigator.serviceWorker.register('/table-worker.js', { scope: '/table' });
      await navigator.serviceWorker.ready;
      ready = true;
    } catch {
      // without a connection the one that is there goes on
      ready = Boolean(navigator.serviceWorker.controller);
    }
  }
  lineWords(ready);
  document.body.dataset.offline = ready;
}

function fault(error) {
  const words = `That could not be kept: ${error?.message || error}. Free some storage, or open the page in an ordinary window, then try again.`;
  if (view === 'logging') {
    logging.say(words, true);
  } else {
    find('#offline').textContent = words;
  }
}

addEventListener('unhandledrejection', event => fault(event.reason));

const definitions = await (await fetch('/table/definitions.json')).json();
setUp(definitions);
logging.setUpLogging(definitions);
finish.setUpFinish(definitions);
find('#at-table').hidden = false;
onChange(changedElsewhere);
addEventListener('hashchange', route);
await route();
await keepForOffline();
