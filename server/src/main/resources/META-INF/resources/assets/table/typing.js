// What is typed rather than tapped: another shot, a contact by numbers, measured values, a note.
import { change } from './shelf.js';
import { held, isShort, lines } from './attempt.js';
import { find, tell, valuesOf } from './field.js';
import { number } from './numbers.js';

const columnsOf = (shot, definitions) => definitions.kinds[shot.kind];

function valueField(column) {
  const field = Object.assign(document.createElement('p'), { className: 'field' });
  const label = Object.assign(document.createElement('label'), { htmlFor: column.name, textContent: column.words });
  const input = Object.assign(document.createElement('input'), { id: column.name, inputMode: 'decimal', autocomplete: 'off' });
  const words = Object.assign(document.createElement('span'), { id: `${column.name}-words`, className: 'quiet',
    textContent: `${column.minimum} to ${column.maximum}; may stay empty.` });
  input.setAttribute('aria-describedby', words.id);
  field.append(label, input, words);
  return field;
}

export function showTyping({ session, draft }, shot, definitions) {
  const place = find('#typed-values');
  if (place.dataset.kind !== shot.kind) {
    place.dataset.kind = shot.kind;
    place.replaceChildren(...columnsOf(shot, definitions).map(valueField));
  }
  for (const input of place.querySelectorAll('input')) {
    const kept = draft.values?.[input.id] ?? '';
    if (input !== document.activeElement) {
      input.value = kept;
    }
  }
  const note = find('#note');
  if (note !== document.activeElement) {
    note.value = draft.note ?? '';
  }
  find('#shot-now').value = session.shot;
  find('#how-to').textContent = shot.howToLog;
  if (shot.rails.length === 0 && !shot.targetRail && shot.kind !== 'speed') {
    find('#other').open = true;
  }
}

// The typed values of this attempt as numbers, or the first problem.
export function typedOf({ draft }, shot, definitions) {
  const values = {};
  for (const column of columnsOf(shot, definitions)) {
    const { value, problem } = number(draft.values?.[column.name] ?? '', column.words, column.minimum, column.maximum, column.whole);
    tell(document.getElementById(column.name), problem);
    if (problem) {
      find('#other').open = true;
      return { problem };
    }
    if (value !== undefined) {
      values[column.name] = value;
    }
  }
  return { values };
}

// What is typed belongs to one attempt: none of it stays for the next.
export function clearTyping() {
  if (find('#other').contains(document.activeElement)) {
    document.activeElement.blur();
  }
}

const isRail = where => where !== 'ball' && where !== 'rest';

function showWhere() {
  const where = find('#where').value;
  find('#along-label').textContent = isRail(where) ? `Place along the ${where} rail, diamonds` : 'Along the table, diamonds';
  find('#across-field').hidden = isRail(where);
}

async function markByNumbers(event, current, { mark, refresh }) {
  event.preventDefault();
  const { table } = current().session;
  const where = find('#where').value;
  const bound = lines(table);
  const short = isRail(where) && isShort(where);
  const given = (words, low, high) => text => text === '' ? { problem: `${words} is missing: type it in diamonds.` } : number(text, words, low, high);
  const checks = [[find('#along'), short ? given('Place', bound.near, bound.far) : given('Place', bound.head, bound.foot)]];
  if (!isRail(where)) {
    checks.push([find('#across'), given('Across', bound.near, bound.far)]);
  }
  const values = valuesOf(checks);
  if (values) {
    const at = short ? { x: 0, y: values.along } : { x: values.along, y: values.across ?? 0 };
    await mark(isRail(where) ? { point: 'rail', rail: where, ...held(where, at, table) } : { point: where, ...held(null, at, table) }, 'typed');
    find('#along').value = find('#across').value = '';
    await refresh();
  }
}

export function setUpTyping(current, actions) {
  const keep = fields => change(current().session.id, ({ draft }, stores) => stores.drafts.put({ ...draft, ...fields(draft) }))
    .then(() => actions.refresh());
  find('#typed-values').addEventListener('input', event => keep(draft => {
    const values = { ...draft.values, [event.target.id]: event.target.value };
    return { values: Object.fromEntries(Object.entries(values).filter(([, text]) => text !== '')) };
  }));
  find('#note').addEventListener('input', event => keep(() => ({ note: event.target.value })));
  find('#where').addEventListener('change', showWhere);
  find('#typed-mark').addEventListener('submit', event => markByNumbers(event, current, actions));
  find('#shot-now').addEventListener('change', async event => {
    if (current().draft.marks.length > 0) {
      event.target.value = current().session.shot;
      actions.say('This attempt has marks already. Keep it or undo its taps, then change the shot.', true);
      return;
    }
    await change(current().session.id, ({ session }, stores) => stores.sessions.put({ ...session, shot: event.target.value }));
    await actions.refresh();
  });
  showWhere();
}
