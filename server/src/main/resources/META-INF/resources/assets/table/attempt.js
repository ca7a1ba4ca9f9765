// One attempt: which contact comes next, and a tap as a mark in diamonds. Angles and offsets are not computed here: the checks
// do that from the marks.

const DIAMONDS_ALONG = 8;
const DIAMONDS_ACROSS = 4;
const STRAY_DIA = 0.9;
const ANOTHER_RAIL_DIA = 0.35;
const DOUBLE_TAP_MS = 350;
const SAME_PLACE_DIA = 0.3;

export const RAILS = ['head', 'near', 'foot', 'far'];
export const isShort = rail => rail === 'head' || rail === 'foot';
export const hundredths = value => Math.round(value * 100) / 100;

// Where centres of balls are, in diamonds: { head, foot } of x, { near, far } of y.
export function lines(table) {
  const along = table.ballMm / 2 / (table.lengthMm / DIAMONDS_ALONG);
  const across = table.ballMm / 2 / (table.widthMm / DIAMONDS_ACROSS);
  return { head: along, foot: DIAMONDS_ALONG - along, near: across, far: DIAMONDS_ACROSS - across };
}

// The contacts to be marked, in order, without the start.
export function planOf(shot) {
  if (shot.kind === 'speed') {
    return [{ point: 'rest', words: 'where the ball came to rest' }];
  }
  const plan = shot.rails.map(rail => ({ point: 'rail', rail, words: `where it touched the ${rail} rail` }));
  if (shot.targetRail) {
    plan.push({ point: 'rail', rail: shot.targetRail, landing: true, words: `where it landed on the ${shot.targetRail} rail` });
  }
  return plan;
}

// The next contact; undefined when all are marked.
export function next(shot, marks) {
  return planOf(shot)[marks.filter(mark => mark.point !== 'start').length];
}

export function held(rail, at, table) {
  const bound = lines(table);
  const x = Math.min(Math.max(at.x, bound.head), bound.foot);
  const y = Math.min(Math.max(at.y, bound.near), bound.far);
  const on = { x, y };
  if (rail) {
    on[isShort(rail) ? 'x' : 'y'] = bound[rail];
  }
  return { x: hundredths(on.x), y: hundredths(on.y) };
}

const off = (rail, at, table) => Math.abs((isShort(rail) ? at.x : at.y) - lines(table)[rail]);

// A tap at a place on the table, turned into the mark of the contact that is expected. A tap that plainly lies on another rail
// marks that rail, and says so; one that lies on no rail is not taken.
export function markOf(contact, at, table) {
  if (contact.point !== 'rail') {
    return { mark: { point: contact.point, ...held(null, at, table) } };
  }
  const nearest = RAILS.reduce((best, rail) => off(rail, at, table) < off(best, at, table) ? rail : best);
  const elsewhere = nearest !== contact.rail && off(nearest, at, table) <= ANOTHER_RAIL_DIA && off(contact.rail, at, table) > STRAY_DIA;
  if (!elsewhere && off(contact.rail, at, table) > STRAY_DIA) {
    return { problem: `That is not beside the ${contact.rail} rail: tap on or beside it. Where the ball went elsewhere, say so under “Other”.` };
  }
  const rail = elsewhere ? nearest : contact.rail;
  return { mark: { point: 'rail', rail, ...held(rail, at, table) }, elsewhere: elsewhere && rail };
}

// Whether a tap is the second one of a finger that bounced.
export function isBounce(last, mark, now) {
  return Boolean(last) && now - last.at < DOUBLE_TAP_MS
    && (last.rail === mark.rail || Math.hypot(last.x - mark.x, last.y - mark.y) < SAME_PLACE_DIA);
}

export function place(mark) {
  if (mark.point !== 'rail') {
    return `${mark.point} x ${mark.x.toFixed(2)}, y ${mark.y.toFixed(2)}`;
  }
  return `${mark.rail} rail ${(isShort(mark.rail) ? mark.y : mark.x).toFixed(2)}`;
}

export const bothOutcomes = shot => shot.kind === 'kick' || shot.kind === 'bank';
