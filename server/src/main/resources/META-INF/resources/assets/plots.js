// Replaces each drawing by the same plot with hover, zoom and a choice of room. Data come from the analysis itself, so that
// what is drawn here is what a program reads. Without this script the drawings stand.

const colour = name => getComputedStyle(document.documentElement).getPropertyValue(name).trim();
const inks = () => [1, 2, 3, 4, 5, 6].map(i => colour(`--ink-${i}`));
const SYMBOLS = ['circle', 'rect', 'triangle', 'diamond'];

const figures = number => Number.isFinite(number) ? String(Number(number.toPrecision(5))).replace('-', '−') : '–';

// Series that each hold one point, at 1, 2, 3 ..., are the rows of a list: drawn by name, the first at the top.
function isList(plot) {
  const points = plot.series.filter(series => series.mark === 'points');
  return points.length > 1 && points.every((series, i) => series.x.length === 1 && series.x[0] === i + 1);
}

// What a reader calls rooms: their own ids, or their contributors' where all share one id, or the whole keys. Other names stay.
function shortNames(names) {
  const last = name => name.slice(name.lastIndexOf('/') + 1);
  const first = name => name.slice(0, name.lastIndexOf('/'));
  const apart = part => new Set(names.map(part)).size === names.length;
  if (!names.every(name => name.includes('/'))) {
    return name => name;
  }
  return apart(last) ? last : new Set(names.map(last)).size === 1 && apart(first) ? first : name => name;
}

// The area between two lines: the lower one unseen, the distance to the upper one stacked on it. Of two number axes the
// library stacks the first dimension, so the ordinate comes first here.
function band(series, ink, opacity, name) {
  const base = { type: 'line', z: 1, stack: `band of ${series.name}`, stackStrategy: 'all', symbol: 'none', silent: true,
    lineStyle: { opacity: 0 }, animation: false, tooltip: { show: false }, encode: { x: 1, y: 0 } };
  return [
    { ...base, name: `${name} from`, data: series.x.map((x, i) => [series.lower[i], x]) },
    { ...base, name, areaStyle: { color: ink, opacity }, data: series.x.map((x, i) => [series.upper[i] - series.lower[i], x]) },
  ];
}

// Bars from lower to upper as one line with gaps, so that the axes make room for them.
function bars(name, ink, ends) {
  const data = ends.filter(([from, to]) => [...from, ...to].every(Number.isFinite)).flatMap(([from, to]) => [from, to, ['-', '-']]);
  return data.length === 0 ? [] : [{ type: 'line', name, symbol: 'none', silent: true, connectNulls: false, animation: false,
    lineStyle: { color: ink, width: 1.5, opacity: 0.7 }, tooltip: { show: false }, data }];
}

function hover(plot) {
  return item => {
    const [x, y] = item.value;
    const box = document.createElement('div');
    for (const line of [item.seriesName, `${plot.xLabel}: ${figures(x)}`, `${plot.yLabel}: ${figures(y)}`]) {
      box.append(Object.assign(document.createElement('div'), { textContent: line }));
    }
    return box;
  };
}

function points(series, ink, symbol, plot) {
  return {
    type: 'scatter', name: series.name, symbol, symbolSize: 9, animation: false,
    itemStyle: { color: ink, opacity: 0.85, borderColor: colour('--paper'), borderWidth: 1 },
    emphasis: { scale: 1.6 },
    data: series.x.map((x, i) => [x, series.y[i]]),
    tooltip: { formatter: hover(plot) },
  };
}

function curveSeries(plot) {
  const ink = inks();
  const lines = plot.series.filter(series => series.mark === 'line');
  const of = name => Math.max(0, lines.findIndex(line => name.startsWith(line.name)));
  const drawn = [];
  let bands = 0;
  let marks = 0;
  for (const series of plot.series) {
    if (series.mark === 'band') {
      drawn.push(...band(series, ink[of(series.name) % ink.length], bands++ === 0 ? 0.14 : 0.24, series.name));
    } else if (series.mark === 'line') {
      drawn.push({ type: 'line', name: series.name, symbol: 'none', animation: false,
        lineStyle: { color: ink[lines.indexOf(series) % ink.length], width: 2.5 },
        itemStyle: { color: ink[lines.indexOf(series) % ink.length] },
        data: series.x.map((x, i) => [x, series.y[i]]) });
    } else {
      // marks share one ink: a room is told by its name and its place, not by a colour
      const mark = colour('--mark');
      drawn.push(...bars(series.name, mark, series.x.map((x, i) => [[x, series.lower[i]], [x, series.upper[i]]])));
      drawn.push(points(series, mark, SYMBOLS[marks++ % SYMBOLS.length], plot));
    }
  }
  return drawn;
}

const axis = (label, more) => ({
  type: 'value', name: label, nameLocation: 'middle', scale: true, nameTextStyle: { color: colour('--ink') },
  axisLabel: { color: colour('--quiet') }, axisLine: { lineStyle: { color: colour('--quiet') } },
  splitLine: { lineStyle: { color: colour('--rule'), opacity: 0.6 } }, ...more,
});

function option(plot, narrow) {
  const common = {
    animation: false, backgroundColor: 'transparent', textStyle: { fontFamily: 'system-ui, sans-serif' },
    tooltip: { trigger: 'item', confine: true, backgroundColor: colour('--ground'), borderColor: colour('--rule'),
      textStyle: { color: colour('--ink') } },
  };
  if (isList(plot)) {
    const rows = plot.series.filter(series => series.mark === 'points');
    const short = shortNames(rows.map(row => row.name));
    return { ...common,
      grid: { left: narrow ? 110 : 200, right: 20, top: 20, bottom: 50 },
      xAxis: axis(plot.yLabel, { nameGap: 30 }),
      yAxis: { type: 'category', inverse: true, data: rows.map(row => short(row.name)),
        axisLabel: { color: colour('--ink'), width: narrow ? 95 : 185, overflow: 'truncate' } },
      series: rows.flatMap((row, i) => [...bars(row.name, colour('--mark'), [[[row.lower[0], i], [row.upper[0], i]]]), {
        type: 'scatter', name: row.name, symbolSize: 10, animation: false, itemStyle: { color: colour('--mark') },
        data: [[row.y[0], i]],
        tooltip: { formatter: () => `${echarts.format.encodeHTML(row.name)}: ${figures(row.y[0])}`
          + (Number.isFinite(row.lower[0]) ? ` (${figures(row.lower[0])} to ${figures(row.upper[0])})` : '') },
      }]) };
  }
  // several lines are told apart by name; one needs none beside the title of its axis
  const lines = plot.series.filter(series => series.mark === 'line').map(series => series.name);
  const several = lines.length > 1;
  return { ...common,
    legend: { show: several, data: lines, top: 4, left: narrow ? 52 : 70, selectedMode: false, textStyle: { color: colour('--ink') } },
    grid: { left: narrow ? 52 : 70, right: narrow ? 12 : 24, top: several ? 48 : 20, bottom: 84 },
    xAxis: axis(plot.xLabel, { nameGap: 28 }),
    yAxis: axis(plot.yLabel, { nameGap: narrow ? 36 : 48 }),
    dataZoom: [{ type: 'inside', filterMode: 'none', zoomOnMouseWheel: 'ctrl' },
      { type: 'slider', filterMode: 'none', height: 18, bottom: 8, brushSelect: false, showDataShadow: false,
        textStyle: { color: colour('--quiet') } }],
    series: curveSeries(plot) };
}

function rooms(plot) {
  return isList(plot) ? [] : plot.series.filter(series => series.mark === 'points').map(series => series.name);
}

// Shows one room, or whatever the figure says its marks are, in full and the others pale.
function chooser(figure, chart, plot) {
  const names = rooms(plot);
  if (names.length < 2) {
    return;
  }
  const what = figure.dataset.marks ?? 'room';
  const label = Object.assign(document.createElement('label'), { className: 'room-choice', textContent: `Show one ${what}: ` });
  const select = document.createElement('select');
  select.append(new Option(`all ${what}s`, ''));
  const short = shortNames(names);
  names.forEach(name => select.append(new Option(short(name), name)));
  select.addEventListener('change', () => {
    chart.setOption({ series: chart.getOption().series.map(series => !names.includes(series.name) ? {} : {
      itemStyle: { opacity: !select.value || series.name === select.value ? 0.9 : 0.12 },
      lineStyle: { opacity: !select.value || series.name === select.value ? 0.7 : 0.08 },
    }) });
  });
  label.append(select);
  figure.prepend(label);
}

function draw(figure, plot, description) {
  const place = document.createElement('div');
  place.className = 'paper live';
  place.setAttribute('role', 'img');
  place.setAttribute('aria-label', description);
  figure.querySelector('.drawn').replaceWith(place);
  const narrow = () => place.clientWidth < 560;
  if (isList(plot)) {
    place.style.height = `${Math.max(220, 90 + 26 * plot.series.length)}px`;
  }
  const chart = echarts.init(place, null, { renderer: 'svg' });
  chart.setOption(option(plot, narrow()));
  chooser(figure, chart, plot);
  // for tests and the curious: the drawing behind the figure, and when it stood
  figure.chart = chart;
  performance.mark(`plot ${plot.id}`);
  // a mark of a room leads to its page, where its sessions are
  chart.on('click', item => {
    if (figure.dataset.marks === 'room' && item.componentSubType === 'scatter' && item.seriesName.includes('/')) {
      location.assign(`/rooms/${item.seriesName.split('/').map(encodeURIComponent).join('/')}`);
    }
  });
  const redraw = () => {
    chart.resize();
    chart.setOption(option(plot, narrow()), { notMerge: true });
  };
  new ResizeObserver(redraw).observe(place);
  matchMedia('(prefers-color-scheme: dark)').addEventListener('change', redraw);
}

const asked = new Map();
function analysis(address) {
  if (!asked.has(address)) {
    asked.set(address, fetch(address, { headers: { Accept: 'application/json' } }).then(answer => {
      if (!answer.ok) {
        throw new Error(`${address} answered ${answer.status}`);
      }
      return answer.json();
    }));
  }
  return asked.get(address);
}

async function enliven(figure) {
  const answer = await analysis(figure.dataset.analysis);
  const found = answer.plots.find(one => one.id === figure.dataset.plot);
  if (found) {
    const plot = { ...found, series: found.series.map(one => ({ ...one, mark: one.mark.toLowerCase() })) };
    draw(figure, plot, figure.querySelector('svg desc')?.textContent ?? plot.title);
  }
}

for (const figure of document.querySelectorAll('figure.plot[data-analysis]')) {
  // the drawing stays when the data cannot be had
  enliven(figure).catch(() => figure.classList.add('still'));
}
