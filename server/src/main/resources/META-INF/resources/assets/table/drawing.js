// The table to scale, as the schema's frame has it: x along the long rail from the head rail, y across from the near rail.
// Upright on a narrow screen, the head rail below; lying on a wide one, the head rail at the left. No path is suggested: who
// marks must not be led.
import { RAILS, isShort, lines } from './attempt.js';

const SVG = 'http://www.w3.org/2000/svg';
const DIAMOND = 100;
const RAIL = 46;

function element(name, attributes, text) {
  const made = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) {
    made.setAttribute(key, value);
  }
  if (text !== undefined) {
    made.textContent = text;
  }
  return made;
}

// Diamonds to the drawing and back. A diamond across may be another length than one along.
function frame(table, upright) {
  const across = DIAMOND * (table.widthMm / 4) / (table.lengthMm / 8);
  const length = 8 * DIAMOND;
  const width = 4 * across;
  return {
    width: (upright ? width : length) + 2 * RAIL,
    height: (upright ? length : width) + 2 * RAIL,
    to: ({ x, y }) => upright ? [RAIL + width - y * across, RAIL + length - x * DIAMOND] : [RAIL + x * DIAMOND, RAIL + width - y * across],
    from: (left, top) => upright ? { x: (RAIL + length - top) / DIAMOND, y: (RAIL + width - left) / across }
      : { x: (left - RAIL) / DIAMOND, y: (RAIL + width - top) / across },
  };
}

function bed(svg, to, table) {
  const box = (from, until, className) => {
    const [[a, b], [c, d]] = [to(from), to(until)];
    svg.append(element('rect', { x: Math.min(a, c), y: Math.min(b, d), width: Math.abs(a - c), height: Math.abs(b - d), class: className }));
  };
  box({ x: 0, y: 0 }, { x: 8, y: 4 }, 'bed');
  const bound = lines(table);
  box({ x: bound.head, y: bound.near }, { x: bound.foot, y: bound.far }, 'centres');
  if (table.cornerMm > 0) {
    const unit = DIAMOND / (table.lengthMm / 8);
    for (const [x, y] of [[0, 0], [8, 0], [0, 4], [8, 4], [4, 0], [4, 4]]) {
      const [cx, cy] = to({ x, y });
      svg.append(element('circle', { cx, cy, r: (x === 4 ? table.sideMm : table.cornerMm) / 2 * unit, class: 'pocket' }));
    }
  }
}

function sights(svg, to, table) {
  const bound = { head: { x: 0 }, foot: { x: 8 }, near: { y: 0 }, far: { y: 4 } };
  const outwards = { head: { x: -0.23, y: 0 }, foot: { x: 0.23, y: 0 }, near: { x: 0, y: -0.23 }, far: { x: 0, y: 0.23 } };
  for (const rail of RAILS) {
    for (let i = 1; i < (isShort(rail) ? 4 : 8); i++) {
      if (isShort(rail) || i !== 4 || !(table.sideMm > 0)) {
        const on = isShort(rail) ? { ...bound[rail], y: i } : { ...bound[rail], x: i };
        const [x, y] = to({ x: on.x + outwards[rail].x, y: on.y + outwards[rail].y });
        svg.append(element('text', { x, y: y + 10, class: 'sight' }, i));
      }
    }
  }
}

function railName(svg, rail, to, upright) {
  const at = { head: { x: -0.24, y: 2.5 }, foot: { x: 8.24, y: 2.5 }, near: { x: 0.5, y: -0.24 }, far: { x: 0.5, y: 4.24 } }[rail];
  const [x, y] = to(at);
  const turned = isShort(rail) !== upright;
  svg.append(element('text', { x, y: y + 8, class: 'rail-name', ...(turned ? { transform: `rotate(-90 ${x} ${y})` } : {}) }, rail));
}

function wanted(svg, contact, to, table) {
  if (contact?.point !== 'rail') {
    return;
  }
  const bound = lines(table);
  const ends = isShort(contact.rail)
    ? [{ x: bound[contact.rail], y: 0.12 }, { x: bound[contact.rail], y: 3.88 }] : [{ x: 0.12, y: bound[contact.rail] }, { x: 7.88, y: bound[contact.rail] }];
  const [[x1, y1], [x2, y2]] = ends.map(to);
  svg.append(element('line', { x1, y1, x2, y2, class: 'wanted' }));
}

function marked(svg, marks, to, radius) {
  const points = marks.map(to);
  svg.append(element('polyline', { points: points.map(point => point.join(',')).join(' '), class: 'path' }));
  marks.forEach((mark, i) => {
    const [cx, cy] = points[i];
    const last = i === marks.length - 1 && mark.point !== 'start';
    svg.append(element('circle', { cx, cy, r: Math.max(radius, 14), class: mark.point === 'start' ? 'start' : last ? 'mark last' : 'mark' }));
    svg.append(element('text', { x: cx, y: cy + 7, class: 'mark-number' }, mark.point === 'start' ? 'S' : i));
  });
}

function cursor(svg, at, to) {
  if (at) {
    const [x, y] = to(at);
    svg.append(element('path', { d: `M${x - 26} ${y}H${x + 26}M${x} ${y - 26}V${y + 26}`, class: 'cursor' }));
  }
}

// Draws into an svg element: table, { marks, contact, target, cursor }. Gives from(event): where a pointer is, in diamonds.
export function draw(svg, table, { marks, contact, target, cursor: at }, upright) {
  const { width, height, to, from } = frame(table, upright);
  svg.setAttribute('viewBox', `0 0 ${width} ${height}`);
  svg.replaceChildren(element('rect', { x: 0, y: 0, width, height, rx: 16, class: 'wood' }));
  bed(svg, to, table);
  sights(svg, to, table);
  RAILS.forEach(rail => railName(svg, rail, to, upright));
  wanted(svg, contact, to, table);
  if (target) {
    const [cx, cy] = to(target);
    svg.append(element('circle', { cx, cy, r: 20, class: 'halo' }), element('circle', { cx, cy, r: 20, class: 'target' }));
  }
  marked(svg, marks, to, DIAMOND * table.ballMm / 2 / (table.lengthMm / 8));
  cursor(svg, at, to);
  return event => {
    const point = new DOMPoint(event.clientX, event.clientY).matrixTransform(svg.getScreenCTM().inverse());
    return from(point.x, point.y);
  };
}
