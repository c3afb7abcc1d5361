// Drawings made by chance: groups, transforms, copies, clips, effects, gradients, parted by colour and kind.
import { seedChance } from './chance.js';

interface Drafting {
  readonly chance: () => number;
  readonly definitions: string[];
  count: number;
}

const FILLS = ['#ffffff', '#c9a227', '#2a7f62', '#7a1f3d', '#00bcd4', 'none'] as const;

function pick<Item>(draft: Drafting, list: readonly Item[]): Item {
  return list[Math.floor(draft.chance() * list.length)]!;
}

function number(draft: Drafting, from: number, to: number): string {
  return (from + draft.chance() * (to - from)).toFixed(2);
}

function define(draft: Drafting, make: (id: string) => string): string {
  draft.count += 1;
  const id = `d${draft.count}`;
  draft.definitions.push(make(id));
  return `url(#${id})`;
}

function drawGradient(draft: Drafting): string {
  const stops = [0, 1].map((at) => `<stop offset="${at}" stop-color="${pick(draft, FILLS.slice(0, 5))}"/>`).join('');
  return define(draft, (id) => `<linearGradient id="${id}">${stops}</linearGradient>`);
}

function drawPaint(draft: Drafting): string {
  const fill = draft.chance() < 0.1 ? drawGradient(draft) : pick(draft, FILLS);
  const stroke = draft.chance() < 0.4 ? pick(draft, FILLS) : 'none';
  const opacity = draft.chance() < 0.1 ? ` fill-opacity="${number(draft, 0.2, 1)}"` : '';
  const dash = draft.chance() < 0.1 ? ' stroke-dasharray="3 2"' : '';
  return `fill="${fill}" stroke="${stroke}" stroke-width="${number(draft, 0.5, 4)}"${opacity}${dash}`;
}

function drawTransform(draft: Drafting): string {
  const kind = pick(draft, ['none', 'none', 'translate', 'rotate', 'scale', 'skew']);
  if (kind === 'translate') return ` transform="translate(${number(draft, -20, 20)} ${number(draft, -20, 20)})"`;
  if (kind === 'rotate') return ` transform="rotate(${number(draft, -90, 90)} 60 40)"`;
  if (kind === 'scale') return ` transform="scale(${number(draft, 0.5, 1.4)} ${number(draft, 0.5, 1.4)})"`;
  return kind === 'skew' ? ` transform="skewX(${number(draft, -30, 30)})"` : '';
}

function drawShape(draft: Drafting): string {
  const [x, y] = [number(draft, 0, 100), number(draft, 0, 60)];
  const tail = `${drawPaint(draft)}${drawTransform(draft)}/>`;
  switch (pick(draft, ['rect', 'circle', 'path', 'curve', 'arc', 'polygon'])) {
    case 'rect':
      return `<rect x="${x}" y="${y}" width="${number(draft, 5, 40)}" height="${number(draft, 5, 30)}" ${tail}`;
    case 'circle':
      return `<circle cx="${x}" cy="${y}" r="${number(draft, 3, 20)}" ${tail}`;
    case 'path':
      return `<path d="M${x} ${y}h${number(draft, 5, 40)}v${number(draft, 5, 30)}z" ${tail}`;
    case 'curve':
      return `<path d="M${x} ${y}c${number(draft, 0, 30)} ${number(draft, -30, 30)} ${number(draft, 0, 30)} ${number(draft, -30, 30)} 30 20" ${tail}`;
    case 'arc':
      return `<path d="M${x} ${y}a12 8 ${number(draft, 0, 90)} 1 1 ${number(draft, 2, 20)} 3" ${tail}`;
    default:
      return `<polygon points="${x} ${y} ${number(draft, 0, 100)} ${number(draft, 0, 60)} ${number(draft, 0, 100)} ${y}" ${tail}`;
  }
}

function drawEffect(draft: Drafting): string {
  const at = draft.chance();
  if (at < 0.15) {
    const clip = define(
      draft,
      (id) => `<clipPath id="${id}"><circle cx="60" cy="40" r="${number(draft, 20, 50)}"/></clipPath>`,
    );
    return ` clip-path="${clip}"`;
  }
  if (at < 0.2) return ` opacity="${number(draft, 0.3, 0.9)}"`;
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
  const children = Array.from({ length: 1 + Math.floor(draft.chance() * 4) }, () => {
    const kind = draft.chance();
    if (depth > 0 && kind < 0.4) return drawGroup(draft, depth - 1);
    if (kind > 0.9) {
      const copy = define(draft, (id) => drawShape(draft).replace(' ', ` id="${id}" `)).slice(4, -1);
      return `<use href="${copy}" x="${number(draft, -10, 10)}"/>`;
    }
    return drawShape(draft);
  });
  return `<g${drawTransform(draft)}${drawEffect(draft)}>${children.join('')}</g>`;
}

/** A drawing of 120 by 80 mm. */
export function drawDocument(seed: number): string {
  const draft: Drafting = { chance: seedChance(seed), definitions: [], count: 0 };
  const groups = Array.from({ length: 1 + Math.floor(draft.chance() * 5) }, () => drawGroup(draft, 2)).join('\n');
  return `<svg xmlns="http://www.w3.org/2000/svg" width="120mm" height="80mm" viewBox="0 0 120 80"><defs>${draft.definitions.join('')}</defs>\n${groups}\n</svg>`;
}
