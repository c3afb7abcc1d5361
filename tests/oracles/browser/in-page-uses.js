// Runs inside the browser: writes uses out, since their content has no nodes to be asked.
const MOST_COPIES = 5000;

/** Whether rules match a copy as they match what was copied: no rule looks at neighbours or at the elements that a copy is put into. */
function rulesAllowCopies(asked) {
  const texts = [...asked.document.styleSheets].flatMap((sheet) => {
    try {
      return [...sheet.cssRules].map((rule) => rule.selectorText ?? rule.cssText);
    } catch {
      return ['a b'];
    }
  });
  return texts.every((text) => {
    return text
      .split(',')
      .every(
        (one) =>
          /^\s*(?:\*|[a-z]+)?(?:[.#][\w-]+)*\s*$/i.test(one) && !/^\s*(?:g|use|svg|symbol|\*)(?![\w-])/.test(one),
      );
  });
}

function copyAttributes(from, to, except) {
  for (const { name, namespaceURI, value } of [...from.attributes]) {
    if (!except.includes(name)) to.setAttributeNS(namespaceURI, name, value);
  }
}

/** A copy of what a use draws, each element knowing its row. */
function copyTarget(asked, target, use) {
  const copy =
    target.localName === 'symbol'
      ? asked.document.createElementNS(SVG, 'svg')
      : target.cloneNode(target.localName !== 'symbol');
  if (target.localName === 'symbol') {
    copyAttributes(target, copy, ['width', 'height']);
    for (const child of target.childNodes) copy.append(child.cloneNode(true));
  }
  const originals = [target, ...target.querySelectorAll('*')];
  [copy, ...copy.querySelectorAll('*')].forEach((node, at) => {
    asked.rows.set(node, asked.rows.get(originals[at]));
  });
  if (target.localName === 'symbol' || target.localName === 'svg') {
    for (const side of ['width', 'height']) if (use.hasAttribute(side)) copy.setAttribute(side, use.getAttribute(side));
  }
  return copy;
}

const HREFS = ['href', 'xlink:href'];

/**
 * Puts a group in the place of a use, as SVG 2 says in section 5.6; the browser's own box of the use vouches for it. From outside
 * inwards, since lengths of what is not in the document cannot be read.
 */
function writeOut(asked, use, chain) {
  const target = asked.ids.get(use.href.baseVal.trim().slice(1));
  const group = asked.document.createElementNS(SVG, 'g');
  const place = asked.document.createElementNS(SVG, 'g');
  copyAttributes(use, group, ['x', 'y', 'width', 'height', ...HREFS]);
  place.setAttribute('transform', `translate(${use.x.baseVal.value} ${use.y.baseVal.value})`);
  group.append(place);
  use.replaceWith(group);
  asked.copies += 1;
  if (chain.length > 30 || asked.copies > MOST_COPIES) throw new Error('too many copies');
  if (!use.href.baseVal.trim().startsWith('#') || target === undefined || chain.includes(target)) return group;
  place.append(copyTarget(asked, target, use));
  for (const inner of [...place.querySelectorAll('use')].filter(isSvg)) writeOut(asked, inner, [...chain, target]);
  return group;
}

const CLOSE = 1e-4;

function boxesAgree(one, other) {
  const size = Math.max(1, ...[one, other].flatMap((box) => [box.x, box.y, box.width, box.height].map(Math.abs)));
  return ['x', 'y', 'width', 'height'].every((side) => Math.abs(one[side] - other[side]) <= CLOSE * size);
}

/** The shapes that a use draws, or the reason why they cannot be asked for. */
function askUse(asked, drawn) {
  const { element: use, gone } = drawn;
  const before = gone ? null : use.getBBox();
  // Shares of lengths are nothing where nothing is laid out.
  if (gone && ['x', 'y'].some((side) => use.getAttribute(side)?.includes('%'))) return { left: 'hidden use' };
  const hasContent = use.querySelector('*') !== null;
  if (hasContent) return { left: 'use unlike its copy' };
  let group;
  try {
    group = writeOut(asked, use, []);
  } catch {
    return { left: 'use with too many copies' };
  }
  asked.rows.set(group, drawn.row);
  const list = [];
  listDrawn(asked, group, gone, list);
  if (before !== null && !boxesAgree(before, group.getBBox()))
    return { left: 'use unlike its copy', count: list.length };
  return { shapes: list.map((shape) => ({ ...shape, copied: true })) };
}

Object.assign(globalThis, { rulesAllowCopies, askUse });
