// What the hygrometer shows, with the time; typed again whenever it changes, and confirmed now and then.
import { change } from './shelf.js';
import { find, valuesOf } from './field.js';
import { clock, number } from './numbers.js';

const ASK_AGAIN_MS = 20 * 60_000;
// a reading stands for what was shot up to 5 min after it when no other follows
export const STANDS_FOR_MS = 5 * 60_000;

const degrees = session => session.unit === 'F' ? '°F' : '°C';
export const shown = (reading, session) => `${reading.temp} ${degrees(session)}, ${reading.rhPct} %`;

const open = () => find('#climate-button').getAttribute('aria-expanded') === 'true';

export function expand(wanted) {
  find('#climate-button').setAttribute('aria-expanded', wanted);
  find('#climate').hidden = !wanted;
  if (wanted) {
    find('#temp').focus();
  }
}

export function showClimate({ session, readings }) {
  const last = readings.at(-1);
  find('#climate-button').textContent = last ? shown(last, session) : 'Climate: type it';
  find('#temp-label').textContent = `Temperature, ${degrees(session)}`;
  find('#unread').hidden = !last;
  find('#readings').textContent = readings.length === 0 ? '' : `Written down: ${readings.map(one => `${clock(one.time)} ${shown(one, session)}`).join('; ')}.`;
  const notice = find('#climate-words');
  const old = last ? Date.now() - last.time : 0;
  notice.hidden = Boolean(last) && old < ASK_AGAIN_MS;
  find('#still-so').hidden = !last;
  notice.querySelector('span').textContent = last
    ? `The last reading is ${Math.floor(old / 60_000)} min old. Does the hygrometer still show ${shown(last, session)}? If not, type it anew.`
    : 'Type what the hygrometer shows, now and whenever it changes: attempts without a climate tell nothing of it.';
}

// Readings of one session have times of their own: two within a millisecond do not replace each other.
function add(id, reading) {
  return change(id, ({ readings }, stores) => stores.readings.put({
    ...reading, session: id, time: Math.max(Date.now(), (readings.at(-1)?.time ?? 0) + 1000) }));
}

export function setUpClimate(current, refresh, definitions) {
  const bounds = name => definitions.climate.find(column => column.name === name);
  find('#climate-button').addEventListener('click', () => expand(!open()));
  find('#climate').addEventListener('submit', async event => {
    event.preventDefault();
    const { session } = current();
    const temp = bounds(session.unit === 'F' ? 'temp_f' : 'temp_c');
    const rh = bounds('rh_pct');
    const check = (words, column) => text => text === '' ? { problem: `${words} is missing: type what is shown.` }
      : number(text, words, column.minimum, column.maximum);
    const values = valuesOf([
      [find('#temp'), check(`Temperature, ${degrees(session)}`, temp)], [find('#rh'), check('Humidity, %', rh)]]);
    if (values) {
      await add(session.id, { temp: values.temp, rhPct: values.rh });
      find('#climate').reset();
      expand(false);
      await refresh();
      if (matchMedia('(hover: hover)').matches) {
        find('#table').focus({ preventScroll: true });
      }
    }
  });
  find('#still-so').addEventListener('click', async () => {
    const { session, readings } = current();
    const { temp, rhPct } = readings.at(-1);
    await add(session.id, { temp, rhPct });
    await refresh();
  });
  find('#unread').addEventListener('click', async () => {
    await change(current().session.id, ({ session, readings }, stores) => {
      if (readings.length > 0) {
        stores.readings.delete([session.id, readings.at(-1).time]);
      }
    });
    await refresh();
  });
}
