// Everything logged lies in this browser's database, each change in one transaction: what was said to be kept is kept, after a
// reload, a closed tab, or with the page open twice. Another tab is told, and reads anew.

const NAME = 'tableweather-table';
const STORES = ['sessions', 'attempts', 'readings', 'drafts'];
const channel = new BroadcastChannel(NAME);

let opened;

function asked(request) {
  return new Promise((good, bad) => {
    request.onsuccess = () => good(request.result);
    request.onerror = () => bad(request.error);
  });
}

function database() {
  if (!opened) {
    const request = indexedDB.open(NAME, 1);
    request.onupgradeneeded = () => {
      request.result.createObjectStore('sessions', { keyPath: 'id' });
      request.result.createObjectStore('attempts', { keyPath: ['session', 'number'] });
      request.result.createObjectStore('readings', { keyPath: ['session', 'time'] });
      request.result.createObjectStore('drafts', { keyPath: 'session' });
    };
    opened = asked(request).then(found => {
      // a newer version of this page in another tab must not wait for this one
      found.onversionchange = () => found.close();
      return found;
    });
  }
  return opened;
}

const ofSession = id => IDBKeyRange.bound([id], [id, []]);

async function read(stores, id) {
  const [session, attempts, readings, draft] = await Promise.all([
    asked(stores.sessions.get(id)), asked(stores.attempts.getAll(ofSession(id))),
    asked(stores.readings.getAll(ofSession(id))), asked(stores.drafts.get(id))]);
  return session && { session, attempts, readings, draft: draft ?? { session: id, marks: [] } };
}

async function transaction(mode, work) {
  const change = (await database()).transaction(STORES, mode, { durability: 'strict' });
  const done = new Promise((good, bad) => {
    change.oncomplete = good;
    change.onabort = () => bad(change.error ?? new Error('given up'));
  });
  const stores = Object.fromEntries(STORES.map(name => [name, change.objectStore(name)]));
  try {
    const result = await work(stores);
    await done;
    return result;
  } catch (fault) {
    try {
      change.abort();
    } catch {
      // it is over already
    }
    done.catch(() => {});
    throw fault;
  }
}

// All sessions, the latest first, with how many attempts each has.
export function sessions() {
  return transaction('readonly', async stores => {
    const all = await asked(stores.sessions.getAll());
    const counts = await Promise.all(all.map(one => asked(stores.attempts.count(ofSession(one.id)))));
    return all.map((session, i) => ({ ...session, attempts: counts[i] })).sort((a, b) => b.begunAt - a.begunAt);
  });
}

// { session, attempts, readings, draft }; undefined when it is not on this device.
export function log(id) {
  return transaction('readonly', stores => read(stores, id));
}

export async function begin(session) {
  await transaction('readwrite', async stores => asked(stores.sessions.add(session)));
  channel.postMessage(session.id);
}

// Changes one session: work gets the log as it stands and the stores, and makes its requests at once.
export async function change(id, work) {
  const result = await transaction('readwrite', async stores => {
    const found = await read(stores, id);
    if (!found) {
      throw new Error('This session is no longer on this device.');
    }
    return work(found, stores);
  });
  channel.postMessage(id);
  return result;
}

export async function remove(id) {
  await transaction('readwrite', async stores => {
    stores.sessions.delete(id);
    stores.drafts.delete(id);
    stores.attempts.delete(ofSession(id));
    stores.readings.delete(ofSession(id));
  });
  channel.postMessage(id);
}

export function onChange(listener) {
  channel.addEventListener('message', event => listener(event.data));
}
