// Runs inside the browser: what it makes of an SVG file, shape by shape.
const SVG = 'http://www.w3.org/2000/svg';
const GEOMETRIES = ['path', 'rect', 'circle', 'ellipse', 'line', 'polyline', 'polygon'];
const SHAPES = new Set([...GEOMETRIES, 'text', 'image', 'foreignObject']);
const CONTAINERS = new Set(['svg', 'g', 'a', 'switch', 'use']);
const ANIMATIONS = ['animate', 'set', 'animateTransform', 'animateMotion', 'animateColor', 'discard'];

/** Of each shape; stroke lengths are handled apart. */
const STYLES = [
  ...['fill', 'stroke', 'fill-opacity', 'stroke-opacity', 'fill-rule', 'stroke-linecap', 'stroke-linejoin'],
  ...['stroke-miterlimit', 'opacity', 'display', 'visibility'],
];

const bitsOf = (base64) => Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
const isSvg = (node) => node.namespaceURI === SVG;

/** Waits for an element to load; false when it fails. */
function loaded(element) {
  return new Promise((resolve) => {
    element.addEventListener('load', () => resolve(true), { once: true });
    element.addEventListener('error', () => resolve(false), { once: true });
  });
}

/** The file as a document of its own in a frame of 300 x 150 where no script runs. */
async function openFile(url) {
  const frame = document.createElement('iframe');
  frame.setAttribute('sandbox', 'allow-same-origin');
  frame.setAttribute('style', 'width:300px;height:150px;border:0');
  frame.src = url;
  document.body.append(frame);
  await loaded(frame);
  return frame;
}

/** Size of the file as a picture, whole px. */
async function sizeOfPicture(url) {
  const image = new Image();
  image.src = url;
  return (await loaded(image)) ? [image.naturalWidth, image.naturalHeight] : [0, 0];
}

/** Conditions as a reader of English has them. */
function holds(element) {
  if (element.hasAttribute('requiredExtensions')) return false;
  const tongues = element.getAttribute('systemLanguage');
  return tongues === null || tongues.split(',').some((tag) => /^\s*en(?:-|\s*$)/i.test(tag));
}

/** Whether a nested svg shows nothing: a side of zero, or a viewBox with one. */
function isWithoutSize(element) {
  const box = (element.getAttribute('viewBox') ?? '')
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  const isFlat = box.length === 4 && box.every(Number.isFinite) && (box[2] === 0 || box[3] === 0);
  return isFlat || element.width.baseVal.value === 0 || element.height.baseVal.value === 0;
}

function childrenOf(element) {
  const drawn = [...element.children].filter(isSvg).filter(holds);
  if (element.localName !== 'switch') return drawn;
  return drawn.filter((child) => SHAPES.has(child.localName) || CONTAINERS.has(child.localName)).slice(0, 1);
}

/** Shapes and uses below an element in paint order; `gone` says that display: none stands on or around them. */
function listDrawn(asked, element, gone, list) {
  const isGone = gone || asked.view.getComputedStyle(element).display === 'none';
  if (SHAPES.has(element.localName) || element.localName === 'use') {
    list.push({ element, row: asked.rows.get(element), gone: isGone });
    return;
  }
  if (!CONTAINERS.has(element.localName)) return;
  if (element.localName === 'svg' && element !== asked.root && isWithoutSize(element)) return;
  for (const child of childrenOf(element)) listDrawn(asked, child, isGone, list);
}

/** A length or list of lengths of the stroke in px, percentages worked out by the browser on a circle beside the shape. */
function settleLengths(asked, element, text) {
  if (!text.includes('%')) return text;
  const probe = asked.document.createElementNS(SVG, 'circle');
  // A switch lays out one child only.
  const around = element.parentNode.closest('svg, g, a');
  around.append(probe);
  const settled = text.replace(/[-+.\de]+%/g, (percent) => {
    probe.setAttribute('r', percent.replace('-', ''));
    return `${percent.startsWith('-') ? '-' : ''}${probe.r.baseVal.value}px`;
  });
  probe.remove();
  return settled;
}

function askStyle(asked, element) {
  const style = asked.view.getComputedStyle(element);
  const width = element.computedStyleMap().get('stroke-width');
  return [
    ...STYLES.map((name) => style.getPropertyValue(name)),
    width instanceof asked.view.CSSUnitValue && width.unit === 'px' ? `${width.value}px` : style.strokeWidth,
    style.strokeDasharray,
    style.strokeDashoffset,
  ];
}

const round = (value, digits) => Number(value.toPrecision(digits)) + 0;

/**
 * Whether a transform on or around an element refers to a box that the browser only nearly knows: of a container with
 * transformed content (it joins upright boxes, where SVG 2, 8.10, wants the smallest), with arcs, with a moveto that draws nothing,
 * or with strokes of curves. What is hidden is measured with all shown, so that boxes around it are those of a drawing that is not.
 */
function leansOnLooseBox(asked, { element, gone }) {
  for (let at = element; at !== asked.root && at !== null; at = at.parentElement) {
    if (!asked.loose.has(at)) asked.loose.set(at, isLoose(asked, at));
    if (asked.loose.get(at)) return true;
    if (gone && hasOwnBox(asked, at) && at.firstElementChild !== null) return true;
  }
  return false;
}

function hasOwnBox(asked, element) {
  return asked.view.getComputedStyle(element).transformBox !== 'view-box';
}

function isLoose(asked, element) {
  if (!hasOwnBox(asked, element)) return false;
  const { transformBox } = asked.view.getComputedStyle(element);
  const hasStroke = transformBox === 'stroke-box' || transformBox === 'border-box';
  const inexact = hasStroke ? /[acqst]|m[^a-z]*(?:[mz]|$)/i : /a|m[^a-z]*(?:[mz]|$)/i;
  const isBent = (node) => node.localName === 'path' && inexact.test(node.getAttribute('d'));
  return (
    isBent(element) ||
    [...element.querySelectorAll('*')].some((inner) => {
      const style = asked.view.getComputedStyle(inner);
      const isTurned = [style.transform, style.rotate, style.scale].some((text) => text !== 'none');
      return isTurned || isBent(inner) || inner.hasAttribute('transform') || inner.localName === 'use';
    })
  );
}

/** Box in user units, and matrix to the user units of the root; null where the browser has none. */
function askPlace(asked, element) {
  let box = null;
  let matrix = null;
  try {
    const { x, y, width, height } = element.getBBox();
    box = [x, y, width, height].map((value) => round(value, 8));
    const { a, b, c, d, e, f } = asked.inverse.multiply(element.getScreenCTM());
    matrix = [a, b, c, d, e, f].map((value) => round(value, 9));
  } catch {
    // What is not laid out has neither.
  }
  return { box, matrix };
}

/** Nothing is hidden any more, so that what was can be measured. */
function showAll(asked) {
  for (const element of asked.document.querySelectorAll('*')) {
    if (!isSvg(element) || element === asked.root) continue;
    if (
      asked.view.getComputedStyle(element).display === 'none' &&
      (SHAPES.has(element.localName) || CONTAINERS.has(element.localName))
    ) {
      element.style.setProperty('display', 'inline', 'important');
    }
  }
}

/** A list that gives equal things one number. */
function createPool() {
  const places = new Map();
  const items = [];
  return {
    items,
    place(item) {
      const key = JSON.stringify(item);
      if (!places.has(key)) {
        places.set(key, items.length);
        items.push(item);
      }
      return places.get(key);
    },
  };
}

/** Measures shapes and puts their answers beside them. */
function askShapes(asked, shapes) {
  for (const shape of shapes) {
    if (shape.style === undefined) shape.style = askStyle(asked, shape.element);
    shape.isLoose = leansOnLooseBox(asked, shape);
  }
  for (const shape of shapes) if (!shape.gone) place(asked, shape);
}

/** Box, matrix and stroke lengths of a shape that is laid out. */
function place(asked, shape) {
  Object.assign(shape, askPlace(asked, shape.element));
  const { style, element } = shape;
  shape.style = style.map((text, at) => (at < STYLES.length ? text : settleLengths(asked, element, text)));
}

function askUses(asked, list, left) {
  const isPlain = rulesAllowCopies(asked);
  return list.flatMap((drawn) => {
    if (drawn.element.localName !== 'use') return [drawn];
    const found = isPlain ? askUse(asked, drawn) : { left: 'use under rules that look at neighbours' };
    if (found.left !== undefined) left.push([found.left, drawn.row]);
    return found.shapes ?? [];
  });
}

function packShapes(shapes) {
  const matrices = createPool();
  const styles = createPool();
  const packed = shapes.map((shape) => {
    const flags = (shape.copied === true ? 1 : 0) + (shape.gone ? 2 : 0) + (shape.isLoose ? 4 : 0);
    const matrix = shape.matrix ?? null;
    return [
      shape.row,
      flags,
      matrix === null ? -1 : matrices.place(matrix),
      styles.place(shape.style),
      ...(shape.box ?? []),
    ];
  });
  return { matrices: matrices.items, styles: styles.items, shapes: packed };
}

function askDocument(frame) {
  const asked = {
    document: frame.contentDocument,
    view: frame.contentWindow,
    rows: new Map(),
    ids: new Map(),
    copies: 0,
    loose: new Map(),
  };
  const root = asked.document?.documentElement;
  if (!root || !isSvg(root) || root.localName !== 'svg') return { refused: 'file refused' };
  if (asked.document.querySelector('parsererror') !== null) return { refused: 'file refused' };
  asked.root = root;
  [root, ...root.querySelectorAll('*')].forEach((node, at) => {
    asked.rows.set(node, at);
    if (node.id !== '' && !asked.ids.has(node.id)) asked.ids.set(node.id, node);
  });
  for (const node of root.querySelectorAll(ANIMATIONS.join())) if (isSvg(node)) node.remove();
  const toScreen = root.getScreenCTM();
  const { a, b, c, d, e, f } = toScreen;
  const rect = root.getBoundingClientRect();
  const board = { root: [a, b, c, d, e, f], rect: [rect.width, rect.height] };
  try {
    asked.inverse = toScreen.inverse();
  } catch {
    return { refused: 'root without size' };
  }
  const list = [];
  listDrawn(asked, root, false, list);
  askShapes(
    asked,
    list.filter(({ element }) => element.localName !== 'use'),
  );
  const left = [];
  const shapes = askUses(asked, list, left);
  asked.loose.clear();
  askShapes(
    asked,
    shapes.filter(({ copied }) => copied),
  );
  showAll(asked);
  for (const shape of shapes) if (shape.gone) place(asked, shape);
  return { ...board, left, ...packShapes(shapes) };
}

async function askFile(base64) {
  const url = URL.createObjectURL(new Blob([bitsOf(base64)], { type: 'image/svg+xml' }));
  const [frame, natural] = await Promise.all([openFile(url), sizeOfPicture(url)]);
  const answer = { natural, ...askDocument(frame) };
  frame.remove();
  URL.revokeObjectURL(url);
  return answer;
}

/** Answers about files, in their order. */
function askFiles(files) {
  return Promise.all(files.map(askFile));
}

globalThis.askFiles = askFiles;
