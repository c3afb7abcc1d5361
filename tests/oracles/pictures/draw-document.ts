// Drawings made by chance: groups, transforms, copies, clips, effects, gradients, parted by colour and kind.
import { createDice, type Dice } from '../browser/dice.js';

interface Drafting {
  readonly dice: Dice;
  readonly definitions: string[];
  count: number;
}

const FILLS = ['#ffffff', '#c9a227', '#2a7f62', '#7a1f3d', '#00bcd4', 'none'] as const;

function define(draft: Drafting, make: (id: string) => string): string {
  draft.count += 1;
  const id = `d${draft.count}`;
  draft.definitions.push(make(id));
  return `url(#${id})`;
}

function drawGradient(draft: Drafting): string {
  const stops = [0, 1]
    .map((at) => `<stop offset="${at}" stop-color="${draft.dice.pick(FILLS.slice(0, 5))}"/>`)
    .join('');
  return define(draft, (id) => `<linearGradient id="${id}">${stops}</linearGradient>`);
}

function drawPaint(draft: Drafting): string {
  const fill = draft.dice.next() < 0.1 ? drawGradient(draft) : draft.dice.pick(FILLS);
  const stroke = draft.dice.next() < 0.4 ? draft.dice.pick(FILLS) : 'none';
  const opacity = draft.dice.next() < 0.1 ? ` fill-opacity="${draft.dice.between(0.2, 1)}"` : '';
  const dash = draft.dice.next() < 0.1 ? ' stroke-dasharray="3 2"' : '';
  return `fill="${fill}" stroke="${stroke}" stroke-width="${draft.dice.between(0.5, 4)}"${opacity}${dash}`;
}

function drawTransform(draft: Drafting): string {
  const kind = draft.dice.pick(['none', 'none', 'translate', 'rotate', 'scale', 'skew']);
  if (kind === 'translate')
    return ` transform="translate(${draft.dice.between(-20, 20)} ${draft.dice.between(-20, 20)})"`;
  if (kind === 'rotate') return ` transform="rotate(${draft.dice.between(-90, 90)} 60 40)"`;
  if (kind === 'scale') return ` transform="scale(${draft.dice.between(0.5, 1.4)} ${draft.dice.between(0.5, 1.4)})"`;
  return kind === 'skew' ? ` transform="skewX(${draft.dice.between(-30, 30)})"` : '';
}

function drawShape(draft: Drafting): string {
  const [x, y] = [draft.dice.between(0, 100), draft.dice.between(0, 60)];
  const tail = `${drawPaint(draft)}${drawTransform(draft)}/>`;
  switch (draft.dice.pick(['rect', 'circle', 'path', 'curve', 'arc', 'polygon'])) {
    case 'rect':
      return `<rect x="${x}" y="${y}" width="${draft.dice.between(5, 40)}" height="${draft.dice.between(5, 30)}" ${tail}`;
    case 'circle':
      return `<circle cx="${x}" cy="${y}" r="${draft.dice.between(3, 20)}" ${tail}`;
    case 'path':
      return `<path d="M${x} ${y}h${draft.dice.between(5, 40)}v${draft.dice.between(5, 30)}z" ${tail}`;
    case 'curve':
      return `<path d="M${x} ${y}c${draft.dice.between(0, 30)} ${draft.dice.between(-30, 30)} ${draft.dice.between(0, 30)} ${draft.dice.between(-30, 30)} 30 20" ${tail}`;
    case 'arc':
      return `<path d="M${x} ${y}a12 8 ${draft.dice.between(0, 90)} 1 1 ${draft.dice.between(2, 20)} 3" ${tail}`;
    default:
      return `<polygon points="${x} ${y} ${draft.dice.between(0, 100)} ${draft.dice.between(0, 60)} ${draft.dice.between(0, 100)} ${y}" ${tail}`;
  }
}

function drawEffect(draft: Drafting): string {
  const at = draft.dice.next();
  if (at < 0.15) {
    const clip = define(
      draft,
      (id) => `<clipPath id="${id}"><circle cx="60" cy="40" r="${draft.dice.between(20, 50)}"/></clipPath>`,
    );
    return ` clip-path="${clip}"`;
  }
  if (at < 0.2) return ` opacity="${draft.dice.between(0.3, 0.9)}"`;
  if (at < 0.23) {
    const mask = define(draft, (id) => `<mask id="${id}"><rect width="80" height="60" fill="#fff"/></mask>`);
    return ` mask="${mask}"`;
  }
  if (at < 0.26) {
    const filter = define(draft, (id) => `<filter id="${id}"><feOffset dx="4" dy="3"/></filter>`);
    return ` filter="${filter}"`;
  }
  return at < 0.29 ? ' style="mix-blend-mode:multiply"' : '';
}

function drawGroup(draft: Drafting, depth: number): string {
  const children = Array.from({ length: 1 + Math.floor(draft.dice.next() * 4) }, () => {
    const kind = draft.dice.next();
    if (depth > 0 && kind < 0.4) return drawGroup(draft, depth - 1);
    if (kind > 0.9) {
      const copy = define(draft, (id) => drawShape(draft).replace(' ', ` id="${id}" `)).slice(4, -1);
      return `<use href="${copy}" x="${draft.dice.between(-10, 10)}"/>`;
    }
    return drawShape(draft);
  });
  return `<g${drawTransform(draft)}${drawEffect(draft)}>${children.join('')}</g>`;
}

/** A drawing of 120 by 80 mm. */
export function drawDocument(seed: number): string {
  const draft: Drafting = { dice: createDice(seed), definitions: [], count: 0 };
  const groups = Array.from({ length: 1 + Math.floor(draft.dice.next() * 5) }, () => drawGroup(draft, 2)).join('\n');
  return `<svg xmlns="http://www.w3.org/2000/svg" width="120mm" height="80mm" viewBox="0 0 120 80"><defs>${draft.definitions.join('')}</defs>\n${groups}\n</svg>`;
}
