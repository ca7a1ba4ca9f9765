// Beginning a session: the least that a valid contribution needs, remembered from the last one.
import { begin, sessions } from './shelf.js';
import { find, needed, valuesOf } from './field.js';
import { number } from './numbers.js';

const REMEMBERED = ['name', 'licence', 'room', 'table-id', 'size', 'length-mm', 'width-mm', 'ball-mm', 'shot', 'instrument', 'unit', 'country', 'accuracy-rh', 'accuracy-c'];

const name = (words, example) => text => {
  const given = needed(words, example)(text);
  return given.value && /[/\p{Cc}]/u.test(given.value) ? { problem: `${words}: leave out the character “/”, which names cannot have.` } : given;
};

function required(words, minimum, maximum) {
  return text => text === '' ? { problem: `${words} is missing: measure it in mm.` } : number(text, words, minimum, maximum);
}

function time(text) {
  const millis = text === '' ? undefined : new Date(text).getTime();
  return millis > Date.now() ? { problem: 'Held since: this lies in the future. Check date and time.' } : { value: millis };
}

const country = text => text === '' || /^[a-z]{2}$/i.test(text) ? { value: text.toUpperCase() } : { problem: `Country: “${text}” is not two letters, such as NO.` };

function typed() {
  const other = find('#size').value === 'other';
  const size = other ? [
    [find('#length-mm'), required('Playing length', 500, 4000)],
    [find('#width-mm'), required('Playing width', 250, 2000)],
    [find('#ball-mm'), required('Ball', 20, 90)]] : [];
  return valuesOf([
    [find('#name'), needed('Your name', 'the one you go by')],
    [find('#room'), name('Room', 'Cellar club')],
    [find('#table-id'), name('Table', 'table 1')],
    ...size,
    [find('#instrument'), name('Hygrometer', 'h1')],
    [find('#settled-from'), time],
    [find('#accuracy-rh'), text => number(text, 'Accuracy, ± % humidity', 0, 30)],
    [find('#accuracy-c'), text => number(text, 'Accuracy, ± °C', 0, 10)],
    [find('#warm-up'), text => number(text, 'Warm-up attempts', 0, 1000, true)],
    [find('#country'), country]]);
}

function tableOf(values, definitions) {
  const published = definitions.tables.find(table => table.id === find('#size').value);
  return published ? { ...published, id: values['table-id'] }
    : { id: values['table-id'], lengthMm: values['length-mm'], widthMm: values['width-mm'], ballMm: values['ball-mm'], cornerMm: 0, sideMm: 0 };
}

function newSession(values, definitions) {
  const now = Date.now();
  const order = find('#order').value;
  return {
    id: `${now.toString(36)}-${[...crypto.getRandomValues(new Uint8Array(4))].map(byte => byte.toString(16).padStart(2, '0')).join('')}`,
    begunAt: now, name: values.name, licence: find('#licence').value, room: values.room, country: values.country,
    table: tableOf(values, definitions), instrument: values.instrument,
    accuracyRhPct: values['accuracy-rh'], accuracyC: values['accuracy-c'], unit: find('#unit').value, shot: find('#shot').value,
    settledFrom: values['settled-from'], warmUpTrials: values['warm-up'], orderRandomised: order === '' ? undefined : order === 'yes',
    form: Object.fromEntries(REMEMBERED.map(id => [id, find(`#${id}`).value])),
  };
}

const showSize = () => {
  find('#other-size').hidden = find('#size').value !== 'other';
};

export async function remember() {
  const [latest] = await sessions();
  for (const [id, value] of Object.entries(latest?.form ?? {})) {
    find(`#${id}`).value = value;
  }
  showSize();
}

export function setUp(definitions) {
  find('#size').addEventListener('change', showSize);
  find('#begin').addEventListener('submit', async event => {
    event.preventDefault();
    const values = typed();
    if (values) {
      const session = newSession(values, definitions);
      await begin(session);
      // asks the browser not to clear this page's database when the disk runs full
      navigator.storage?.persist?.();
      location.hash = `log=${session.id}`;
    }
  });
}
