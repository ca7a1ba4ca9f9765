// The screen beside the table: tap, made or missed, undo. What is shown is always what lies in the database.
import { change, log } from './shelf.js';
import { bothOutcomes, held, hundredths, isBounce, isShort, markOf, next, place, planOf } from './attempt.js';
import { setUpClimate, showClimate } from './climate.js';
import { draw } from './drawing.js';
import { find } from './field.js';
import { clock, number } from './numbers.js';
import { clearTyping, setUpTyping, showTyping, typedOf } from './typing.js';

const DOUBLE_PRESS_MS = 700;
const FINE_DIA = 0.05;
const COARSE_DIA = 0.5;

const wide = matchMedia('(min-width: 44rem)');
let definitions;
let current;
let preview = null;
let from;

const svg = find('#table');
export const shotOf = id => definitions.shots.find(shot => shot.id === id);
const shot = () => shotOf(current.session.shot);
const contact = () => next(shot(), current.draft.marks);
const marksOf = draft => draft.marks.filter(mark => mark.point !== 'start');

export function say(words, bad = false) {
  find('#prompt').textContent = words;
  find('#prompt').classList.toggle('bad', bad);
}

function question() {
  const plan = planOf(shot());
  const done = marksOf(current.draft).length;
  const wanted = contact();
  if (wanted) {
    return `Tap ${wanted.words} (${done + 1} of ${plan.length}).`;
  }
  if (plan.length === 0) {
    return 'Type what you measured under “Other”, then keep the attempt.';
  }
  return bothOutcomes(shot()) ? 'All marked. Made or missed?' : 'All marked. Keep the attempt?';
}

function paint() {
  const target = shot().targetRail && shot().target ? held(shot().targetRail, { x: shot().target.xDia, y: shot().target.yDia }, current.session.table) : null;
  from = draw(svg, current.session.table, { marks: current.draft.marks, contact: contact(), target, cursor: preview }, !wide.matches);
}

function undoWords() {
  if (marksOf(current.draft).length > 0) {
    return 'Undo tap';
  }
  if (current.draft.note || Object.keys(current.draft.values ?? {}).length > 0) {
    return 'Clear typed';
  }
  return current.attempts.length > 0 ? `Reopen ${current.attempts.at(-1).number}` : 'Undo';
}

function table() {
  find('#so-far tbody').replaceChildren(...current.attempts.slice().reverse().map(one => {
    const row = document.createElement('tr');
    const outcome = one.made === 'yes' ? 'made' : one.made === 'no' ? 'missed' : 'kept';
    const marks = one.marks.filter(mark => mark.point !== 'start').map(place).join(', ');
    [one.number, clock(one.startedAt), one.shot, one.note ? `${outcome}, ${one.note}` : outcome, marks || '–'].forEach((text, i) => {
      const cell = document.createElement(i === 0 ? 'th' : 'td');
      if (i === 0) {
        cell.scope = 'row';
      }
      cell.textContent = text;
      row.append(cell);
    });
    return row;
  }));
}

export function show(words) {
  const { session, attempts, draft } = current;
  find('#tally').textContent = `Attempt ${(attempts.at(-1)?.number ?? 0) + 1}`;
  find('#to-finish').href = `#finish=${session.id}`;
  const pair = bothOutcomes(shot());
  find('#made').hidden = find('#missed').hidden = !pair;
  find('#keep').hidden = pair;
  find('#undo').textContent = undoWords();
  find('#undo').disabled = undoWords() === 'Undo';
  const last = marksOf(draft).at(-1);
  find('#adjust').hidden = last?.point !== 'rail';
  find('#last-mark').textContent = last ? place(last) : '';
  svg.toggleAttribute('hidden', planOf(shot()).length === 0);
  find('#table-help').hidden = planOf(shot()).length === 0;
  svg.setAttribute('aria-label', `Table. ${question()}`);
  showClimate(current);
  showTyping(current, shot(), definitions);
  table();
  paint();
  say(words ?? question());
}

export async function refresh(words) {
  const found = await log(current.session.id);
  if (found) {
    current = found;
    show(words);
  }
}

// Adds a mark to the attempt as it stands in the database, with the start before the first.
export async function mark(made, how) {
  const now = Date.now();
  const bounced = await change(current.session.id, ({ draft, session }, stores) => {
    const last = draft.marks.at(-1);
    if (how === 'tap' && isBounce(last?.point === 'start' ? undefined : last, made, now)) {
      return true;
    }
    const start = shotOf(session.shot).start;
    if (draft.marks.length === 0 && start) {
      draft.marks.push({ point: 'start', ...held(null, { x: start.xDia, y: start.yDia }, session.table), at: now });
    }
    draft.startedAt ??= now;
    draft.marks.push({ ...made, at: now });
    stores.drafts.put(draft);
    return false;
  });
  return bounced;
}

async function tap(at) {
  const wanted = contact();
  if (!wanted) {
    say(`${question()} Or undo the last tap.`);
    return;
  }
  const { mark: made, problem, elsewhere } = markOf(wanted, at, current.session.table);
  if (problem) {
    say(problem, true);
    return;
  }
  await mark(made, 'tap');
  await refresh();
  if (elsewhere) {
    say(`Marked on the ${elsewhere} rail, not the ${wanted.rail} rail. ${question()}`);
  }
}

async function keep(made) {
  const now = Date.now();
  clearTyping();
  const { values, problem } = typedOf(await log(current.session.id), shot(), definitions);
  if (problem) {
    say(problem, true);
    return;
  }
  const done = await change(current.session.id, ({ session, attempts, draft }, stores) => {
    const last = attempts.at(-1);
    if (last && now - last.savedAt < DOUBLE_PRESS_MS) {
      return 'twice';
    }
    if (!made && draft.marks.length === 0 && !draft.note && Object.keys(values).length === 0) {
      return 'empty';
    }
    const number = (last?.number ?? 0) + 1;
    stores.attempts.put({ session: session.id, number, startedAt: draft.startedAt ?? now, savedAt: now, shot: session.shot,
      kind: shotOf(session.shot).kind, marks: draft.marks, made, values, note: draft.note || undefined });
    stores.drafts.delete(session.id);
    return number;
  });
  if (done === 'empty') {
    say('Nothing is marked yet. If the attempt went wrong, write what in the note under “Other”, then keep it.', true);
  } else if (done !== 'twice') {
    await refresh();
    say(`Kept attempt ${done}${made === 'yes' ? ', made' : made === 'no' ? ', missed' : ''}. ${question()}`);
  }
}

async function undo() {
  clearTyping();
  const words = await change(current.session.id, ({ session, attempts, draft }, stores) => {
    if (marksOf(draft).length > 0) {
      draft.marks.pop();
      stores.drafts.put(marksOf(draft).length > 0 ? draft : { ...draft, marks: [], startedAt: undefined });
      return undefined;
    }
    if (draft.note || Object.keys(draft.values ?? {}).length > 0 || attempts.length === 0) {
      stores.drafts.delete(session.id);
      return undefined;
    }
    const { number, shot: shotId, startedAt, marks, values, note } = attempts.at(-1);
    stores.attempts.delete([session.id, number]);
    stores.drafts.put({ session: session.id, startedAt, marks, note,
      values: Object.fromEntries(Object.entries(values ?? {}).map(([name, value]) => [name, String(value)])) });
    stores.sessions.put({ ...session, shot: shotId });
    return `Attempt ${number} is open again.`;
  });
  await refresh();
  if (words) {
    say(`${words} ${question()}`);
  }
}

async function nudge(by) {
  await change(current.session.id, ({ draft, session }, stores) => {
    const last = draft.marks.at(-1);
    if (last?.point === 'rail') {
      const axis = isShort(last.rail) ? 'y' : 'x';
      Object.assign(last, held(last.rail, { ...last, [axis]: hundredths(last[axis] + by) }, session.table));
      stores.drafts.put(draft);
    }
  });
  await refresh();
}

function hover(event) {
  const at = from(event);
  const wanted = contact();
  const seen = wanted ? markOf(wanted, at, current.session.table).mark : undefined;
  preview = seen ?? null;
  paint();
  if (seen) {
    find('#adjust').hidden = false;
    find('#last-mark').textContent = place(seen);
  }
}

function keys(event) {
  const wanted = contact();
  const step = event.shiftKey ? COARSE_DIA : FINE_DIA;
  const ways = wide.matches ? { ArrowRight: [step, 0], ArrowLeft: [-step, 0], ArrowUp: [0, step], ArrowDown: [0, -step] }
    : { ArrowUp: [step, 0], ArrowDown: [-step, 0], ArrowLeft: [0, step], ArrowRight: [0, -step] };
  const way = ways[event.key];
  if (way && wanted) {
    event.preventDefault();
    const at = preview ?? { x: 4, y: 2 };
    preview = held(wanted.rail ?? null, { x: at.x + way[0], y: at.y + way[1] }, current.session.table);
    paint();
    say(place({ ...preview, point: wanted.point, rail: wanted.rail }));
  } else if ((event.key === 'Enter' || event.key === ' ') && wanted) {
    event.preventDefault();
    const at = preview ?? held(wanted.rail ?? null, { x: 4, y: 2 }, current.session.table);
    preview = null;
    tap(at);
  }
}

function setUpPointer() {
  let down = null;
  svg.addEventListener('pointerdown', event => {
    if (event.isPrimary && event.button === 0) {
      down = event.pointerId;
      svg.setPointerCapture(down);
      hover(event);
    }
  });
  svg.addEventListener('pointermove', event => event.pointerId === down && hover(event));
  svg.addEventListener('pointerup', event => {
    if (event.pointerId === down) {
      down = null;
      preview = null;
      tap(from(event));
    }
  });
  svg.addEventListener('pointercancel', () => {
    down = null;
    preview = null;
    show();
  });
}

export function setUpLogging(known) {
  definitions = known;
  setUpPointer();
  svg.addEventListener('keydown', keys);
  find('#undo').addEventListener('click', undo);
  find('#made').addEventListener('click', () => keep('yes'));
  find('#missed').addEventListener('click', () => keep('no'));
  find('#keep').addEventListener('click', () => keep(undefined));
  find('#less').addEventListener('click', () => nudge(-FINE_DIA));
  find('#more').addEventListener('click', () => nudge(FINE_DIA));
  wide.addEventListener('change', () => current && paint());
  setUpClimate(() => current, refresh, definitions);
  setUpTyping(() => current, { mark, refresh, say });
  setInterval(() => current && !find('#logging').hidden && showClimate(current), 30_000);
}

export function open(found) {
  current = found;
  preview = null;
  show();
}
