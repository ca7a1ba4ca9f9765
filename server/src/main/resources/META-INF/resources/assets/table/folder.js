// A session as the files of a contribution folder, format 1.0.
import { zipOf } from '../zip.js';
import { stamp } from './numbers.js';

const cell = value => {
  const text = value === undefined || value === null ? '' : String(value);
  return /[",\n\r]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
};
const csv = (names, rows) => [names, ...rows].map(row => row.map(cell).join(',')).join('\n') + '\n';

const mean = values => Math.round(10 * values.reduce((sum, value) => sum + value, 0) / values.length) / 10;
const celsius = (reading, session) => session.unit === 'F' ? (reading.temp - 32) / 1.8 : reading.temp;

function only(values) {
  const all = new Set(values);
  return all.size === 1 ? [...all][0] : undefined;
}

function contribution({ session, attempts, readings }, definitions) {
  const deliveries = attempts.map(one => definitions.shots.find(shot => shot.id === one.shot)?.delivery);
  const table = session.table;
  const begun = attempts.length > 0 ? attempts[0].startedAt : session.begunAt;
  return {
    schemaVersion: '1.0',
    title: `${session.room}, ${stamp(begun).slice(0, 16).replace('T', ' ')}`,
    licence: session.licence,
    contributor: { name: session.name },
    rooms: [{ id: session.room, name: session.room, country: session.country || undefined }],
    tables: [{ id: table.id, room: session.room, playingLengthMm: table.lengthMm, playingWidthMm: table.widthMm }],
    ballSets: [{ id: 'balls', diameterMm: table.ballMm }],
    instruments: [{ id: session.instrument, quantities: ['temperature', 'humidity'],
      accuracyRhPct: session.accuracyRhPct, accuracyC: session.accuracyC }],
    sessions: [{
      id: 's1', table: table.id, ballSet: 'balls', instrument: session.instrument, visit: stamp(begun).slice(0, 10),
      startedAt: stamp(begun), settledFrom: session.settledFrom ? stamp(session.settledFrom) : undefined,
      delivery: only(deliveries), everyAttemptLogged: session.everyAttemptLogged, warmUpTrials: session.warmUpTrials,
      orderRandomised: session.orderRandomised,
      // stands for attempts that no reading is near enough to
      tempC: readings.length > 0 ? mean(readings.map(one => celsius(one, session))) : undefined,
      rhPct: readings.length > 0 ? mean(readings.map(one => one.rhPct)) : undefined,
    }],
  };
}

function trials({ attempts }) {
  const typed = [...new Set(attempts.flatMap(one => Object.keys(one.values ?? {})))];
  return csv(['session', 'trial', 'started_at', 'kind', 'shot', ...typed, 'made', 'note'], attempts.map(one => [
    's1', one.number, stamp(one.startedAt), one.kind, one.shot, ...typed.map(name => one.values?.[name]), one.made, one.note]));
}

function climate({ session, readings }) {
  return csv(['instrument', 'time', session.unit === 'F' ? 'temp_f' : 'temp_c', 'rh_pct'],
    readings.map(one => [session.instrument, stamp(one.time), one.temp, one.rhPct]));
}

function contacts({ attempts }) {
  // a start alone is no path
  const rows = attempts.filter(one => one.marks.length > 1).flatMap(one => one.marks.map((mark, i) => [
    's1', one.number, i + 1, mark.point, mark.rail, mark.x, mark.y]));
  return csv(['session', 'trial', 'seq', 'point', 'rail', 'x_dia', 'y_dia'], rows);
}

export function filesOf(log, definitions) {
  return [
    { name: 'contribution.json', content: `${JSON.stringify(contribution(log, definitions), null, 2)}\n` },
    { name: 'trials.csv', content: trials(log) },
    ...(log.readings.length > 0 ? [{ name: 'climate.csv', content: climate(log) }] : []),
    ...(log.attempts.some(one => one.marks.length > 1) ? [{ name: 'contacts.csv', content: contacts(log) }] : []),
  ];
}

export const archiveOf = (log, definitions) => zipOf(filesOf(log, definitions));

export function nameOf({ session }) {
  return `${session.room}-${stamp(session.begunAt).slice(0, 16)}`.replace(/[^\p{L}\p{N}-]+/gu, '-').toLowerCase();
}
