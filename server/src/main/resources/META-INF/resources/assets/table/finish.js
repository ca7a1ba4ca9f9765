// Handing a session over: as a folder to keep, or contributed through the same door as /contribute.
import { handOver, say } from '../hand-over.js';
import { STANDS_FOR_MS } from './climate.js';
import { find } from './field.js';
import { archiveOf, nameOf } from './folder.js';
import { clock } from './numbers.js';
import { change, log } from './shelf.js';

const TOKEN = 'tableweather-token';

let definitions;
let id;

export const counted = (count, what) => `${count} ${what}${count === 1 ? '' : 's'}`;

function words({ session, attempts, readings }) {
  const made = attempts.filter(one => one.made === 'yes').length;
  const judged = attempts.filter(one => one.made).length;
  return `${session.room}, ${session.table.id}: ${counted(attempts.length, 'attempt')}${judged > 0 ? `, ${made} made` : ''}, ${counted(readings.length, 'reading')}`
    + ` of the climate.${session.sent ? ` Contributed at ${new Date(session.sent).toLocaleString()}; it can be changed here no more.` : ''}`;
}

function climate({ attempts, readings }) {
  const last = attempts.at(-1);
  if (!last) {
    return '';
  }
  if (readings.length === 0) {
    return 'No climate was written down: the attempts tell nothing of it. Go back and type what the hygrometer shows.';
  }
  return last.startedAt - readings.at(-1).time > STANDS_FOR_MS
    ? `The last reading, at ${clock(readings.at(-1).time)}, is older than the last attempt, at ${clock(last.startedAt)}. Go back and type what it shows now.` : '';
}

export async function show(found) {
  id = found.session.id;
  find('#finish-words').textContent = words(found);
  find('#finish-climate').textContent = climate(found);
  find('#finish-climate').hidden = climate(found) === '';
  for (const radio of document.querySelectorAll('#every input')) {
    radio.checked = found.session.everyAttemptLogged === (radio.value === 'yes');
  }
  find('#every').disabled = Boolean(found.session.sent);
  find('#contribute-here').hidden = Boolean(found.session.sent);
  find('#back-to-log').hidden = Boolean(found.session.sent);
  find('#back-to-log').href = `#log=${id}`;
  const kept = localStorage.getItem(TOKEN);
  find('#token').value = kept ?? '';
  find('#keep-token').checked = kept !== null;
  find('#finish-status').textContent = '';
}

export function clear() {
  find('#outcome').hidden = true;
  delete find('#outcome').dataset.outcome;
}

// What must be settled first, in words; empty for nothing.
function open({ session, attempts, draft }) {
  if (attempts.length === 0) {
    return 'Nothing is logged yet. Go back to the table and log the first attempt.';
  }
  if (draft.marks.length > 0) {
    return 'One attempt is not finished. Go back to the table, and keep it or undo its taps.';
  }
  return session.everyAttemptLogged === undefined ? 'Say first whether every attempt of this session is in this log.' : '';
}

async function ready() {
  const found = await log(id);
  const problem = open(found);
  if (problem) {
    say(find('#outcome'), 'problem', 'Not yet', problem);
    return null;
  }
  return { found, archive: await archiveOf(found, definitions), name: `${nameOf(found)}.zip` };
}

async function download() {
  const made = await ready();
  if (made) {
    const link = Object.assign(document.createElement('a'), { href: URL.createObjectURL(made.archive), download: made.name });
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
    find('#finish-status').textContent = `${made.name} went to the downloads of this device.`;
  }
}

async function send(action) {
  const made = await ready();
  if (!made) {
    return;
  }
  const token = find('#token').value.trim();
  if (action === 'contribute' && token === '') {
    say(find('#outcome'), 'problem', 'The token is missing', 'Type the token that the operator of this server gave you. Without one, download the'
      + ' folder: it can be contributed later.');
    return;
  }
  find('#finish-status').textContent = action === 'check' ? 'Checking …' : 'Contributing …';
  const outcome = await handOver(find('#outcome'), made.archive, made.name, action, token);
  find('#finish-status').textContent = outcome === 'problem' ? 'Everything stays on this device: try again when you like.' : '';
  if (outcome === 'contributed') {
    await change(id, ({ session }, stores) => stores.sessions.put({ ...session, sent: Date.now() }));
    await show(await log(id));
  }
}

function keepToken() {
  if (find('#keep-token').checked && find('#token').value.trim() !== '') {
    localStorage.setItem(TOKEN, find('#token').value.trim());
  } else {
    localStorage.removeItem(TOKEN);
  }
}

export function setUpFinish(known) {
  definitions = known;
  find('#every').addEventListener('change', event => change(id, ({ session }, stores) =>
    stores.sessions.put({ ...session, everyAttemptLogged: event.target.value === 'yes' })));
  find('#download').addEventListener('click', download);
  find('#findings').addEventListener('click', () => send('check'));
  find('#keep-token').addEventListener('change', keepToken);
  find('#token').addEventListener('change', keepToken);
  find('#contribute-here').addEventListener('submit', event => {
    event.preventDefault();
    keepToken();
    send('contribute');
  });
}
