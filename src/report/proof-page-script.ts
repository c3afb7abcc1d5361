// Measures between two points on the proof page; the page can be read without it.

/** Sets points by mouse and keyboard. */
const SET_POINTS = `const set = (point) => {
  if (points.length === 2) points.length = 0;
  points.push(point);
  at = point;
  show();
};
const where = (event) => {
  const box = sheet.getBoundingClientRect();
  return [(event.clientX - box.left) / perMm(), (event.clientY - box.top) / perMm()];
};
sheet.addEventListener('click', (event) => {
  byKeys = false;
  set(where(event));
});
sheet.addEventListener('pointermove', (event) => {
  if (points.length !== 1) return;
  byKeys = false;
  at = where(event);
  show();
});
const steps = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };
board.addEventListener('keydown', (event) => {
  const step = steps[event.key];
  if (step !== undefined) {
    const by = event.shiftKey ? 10 : event.altKey ? 0.1 : 1;
    const clamp = (value, most) => Math.min(most, Math.max(0, value));
    at = [clamp(at[0] + step[0] * by, widthMm), clamp(at[1] + step[1] * by, heightMm)];
    byKeys = true;
    event.preventDefault();
    if (points.length === 2) points.length = 0;
    show();
  } else if (event.key === 'Enter') {
    byKeys = true;
    set(at);
  } else if (event.key === 'Escape') {
    points.length = 0;
    byKeys = false;
    show();
  }
});
for (const input of document.querySelectorAll('input[name=size]')) input.addEventListener('change', show);
show();
`;

/**
 * The script of the proof page, as text.
 *
 * Two points are set with the mouse, or with the arrow keys and Enter; their distance is said in mm of the sheet.
 *
 * @param widthMm - Of the sheet.
 */
export function writeProofScript(widthMm: number): string {
  return `(() => {
const board = document.querySelector('.board');
const sheet = document.querySelector('.sheet');
const says = document.querySelector('.measure');
const lines = sheet.querySelector('svg');
const widthMm = ${widthMm};
const heightMm = Number(lines.dataset.height);
const points = [];
let at = [widthMm / 2, heightMm / 2];
let byKeys = false;
const mm = (value) => (Math.round(value * 100) / 100 + 0).toFixed(2);
const perMm = () => sheet.getBoundingClientRect().width / widthMm;
const cross = ([x, y], r) => 'M' + (x - r) + ' ' + y + 'h' + 2 * r + 'M' + x + ' ' + (y - r) + 'v' + 2 * r;
const show = () => {
  const r = 9 / perMm();
  const ends = points.length === 1 ? [points[0], at] : points;
  let d = points.map((point) => cross(point, r)).join('');
  if (byKeys && points.length !== 2) d += cross(at, 1.6 * r);
  if (ends.length === 2) d += 'M' + ends[0].join(' ') + 'L' + ends[1].join(' ');
  for (const path of lines.querySelectorAll('path')) path.setAttribute('d', d);
  if (ends.length < 2) {
    says.textContent = byKeys ? 'At ' + mm(at[0]) + ' mm from the left, ' + mm(at[1]) + ' mm from the top. Enter sets the first point.' : start;
    return;
  }
  const [[x0, y0], [x1, y1]] = ends;
  const rest = points.length === 1 ? ' The next point fixes it.' : ' Set a point to start again.';
  says.textContent = mm(Math.hypot(x1 - x0, y1 - y0)) + ' mm apart: ' + mm(Math.abs(x1 - x0)) + ' mm across, ' + mm(Math.abs(y1 - y0)) + ' mm down.' + rest;
};
const start = 'To measure, set two points on the sheet: click, or focus the sheet and use the arrow keys (with Shift 10 mm, with Alt 0.1 mm) and Enter.';
${SET_POINTS}})();`;
}
