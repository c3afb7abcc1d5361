// Documents that try what sheets of a designer seldom hold all at once: viewports, uses, units, origins, style sheets.
import { createDice, type Dice } from './dice.js';

/** A document in the making. */
interface Making {
  readonly dice: Dice;
  /** Ids that a use may name; each is written before it is used. */
  readonly targets: string[];
  readonly classes: readonly string[];
  count: number;
}

const COLOURS = [
  'red',
  '#00ff80',
  '#abc',
  'rgb(10, 20, 30)',
  'hsl(120 50% 40%)',
  'none',
  'currentColor',
  'rgb(0 0 255 / 50%)',
];
const UNITS = ['', 'px', 'mm', 'cm', 'in', 'pt', 'pc', 'Q', 'em', '%'];
const ALIGNS = ['xMinYMin', 'xMidYMid', 'xMaxYMax', 'xMinYMax', 'xMaxYMin', 'xMidYMin'];
const PER_UNIT: Readonly<Record<string, number>> = { mm: 0.3, cm: 0.03, in: 0.01, pt: 0.7, pc: 0.06, em: 0.06, Q: 1.1 };

/** A length of about `value` user units in a unit of chance. */
function length(dice: Dice, low: number, high: number): string {
  const unit = dice.happens(0.5) ? '' : dice.pick(UNITS);
  const share = PER_UNIT[unit] ?? (unit === '%' ? 0.4 : 1);
  return `${Math.round(dice.between(low, high) * share * 1000) / 1000}${unit}`;
}

function transformList(dice: Dice): string {
  const one = (): string => {
    switch (dice.whole(0, 5)) {
      case 0:
        return `translate(${dice.between(-20, 40)} ${dice.between(-20, 40)})`;
      case 1:
        return `rotate(${dice.between(-90, 90)})`;
      case 2:
        return `rotate(${dice.between(-90, 90)}, ${dice.between(0, 50)}, ${dice.between(0, 50)})`;
      case 3:
        return `scale(${dice.between(0.3, 2)}${dice.happens(0.5) ? `,${dice.between(-2, 2)}` : ''})`;
      case 4:
        return `skew${dice.pick(['X', 'Y'])}(${dice.between(-40, 40)})`;
      default:
        return `matrix(${dice.between(0.5, 1.5)} ${dice.between(-0.5, 0.5)} ${dice.between(-0.5, 0.5)} ${dice.between(0.5, 1.5)} ${dice.between(-9, 9)} ${dice.between(-9, 9)})`;
    }
  };
  return Array.from({ length: dice.whole(1, 3) }, one).join(' ');
}

function cssTransform(dice: Dice): string {
  const share = (): string => `${dice.between(-40, 40)}${dice.pick(['px', '%', 'mm', 'em'])}`;
  return dice.pick([
    () => `transform: translate(${share()}, ${share()}) rotate(${dice.between(-1, 1)}rad)`,
    () => `transform: rotate(${dice.between(-0.25, 0.25)}turn) scale(${dice.between(0.5, 1.5)})`,
    () => `transform: skew(${dice.between(-20, 20)}deg, ${dice.between(-20, 20)}grad)`,
    () => `translate: ${share()} ${share()}; rotate: ${dice.between(-90, 90)}deg; scale: ${dice.between(0.5, 1.5)}`,
    () => `transform: translateX(${share()}) scaleY(${dice.between(0.5, 1.5)}) matrix(1, 0.2, -0.1, 1, 3, 4)`,
  ])();
}

function origin(dice: Dice): string {
  const side = (words: readonly string[]): string =>
    dice.happens(0.4) ? dice.pick(words) : `${dice.between(-20, 80)}${dice.pick(['px', '%', 'mm'])}`;
  return dice.happens(0.2)
    ? side(['left', 'right', 'top', 'bottom', 'center'])
    : `${side(['left', 'center', 'right'])} ${side(['top', 'center', 'bottom'])}`;
}

function paintDeclarations(dice: Dice): readonly string[] {
  const all = [
    () => `fill: ${dice.pick(COLOURS)}`,
    () => `stroke: ${dice.pick(COLOURS)}`,
    () => `stroke-width: ${dice.between(0.1, 6)}${dice.pick(['', 'px', 'mm', 'pt', '%', 'em'])}`,
    () => `stroke-dasharray: ${dice.pick(['none', '4 2', '3', '1mm, 2mm', '5% 1', '0 0', '1 2 3'])}`,
    () => `stroke-dashoffset: ${dice.between(-5, 5)}${dice.pick(['', 'mm', '%'])}`,
    () => `color: ${dice.pick(COLOURS.slice(0, 5))}`,
    () => `fill-opacity: ${dice.pick(['0.5', '30%', '0', '2'])}`,
    () => `stroke-linecap: ${dice.pick(['round', 'square', 'butt', 'inherit'])}`,
    () => `stroke-linejoin: ${dice.pick(['round', 'bevel', 'miter', 'unset'])}`,
    () => `stroke-miterlimit: ${dice.between(1, 12)}`,
    () => `visibility: ${dice.pick(['hidden', 'visible', 'collapse'])}`,
    () => `fill-rule: ${dice.pick(['evenodd', 'nonzero', 'initial'])}`,
    () => `opacity: ${dice.pick(['0.4', '50%', '0'])}`,
    () => `font-size: ${dice.pick(['20px', '2em', '150%', 'larger', '10pt', '0.5rem'])}`,
    () => `--ink: ${dice.pick(COLOURS)}; stroke: var(--ink, #123456)`,
    () => `fill: var(--ink, var(--none, olive))${dice.happens(0.3) ? ' !important' : ''}`,
  ];
  return Array.from({ length: dice.whole(1, 3) }, () => dice.pick(all)());
}

/** Attributes of paint, transform and class; at most one way to a transform, so that every one is seen. */
function writeAttributes({ dice, classes }: Making, isShape = true): string {
  const parts: string[] = [];
  const styles: string[] = [];
  if (dice.happens(0.4))
    parts.push(`class="${dice.pick(classes)}${dice.happens(0.3) ? ` ${dice.pick(classes)}` : ''}"`);
  if (dice.happens(0.3)) styles.push(...paintDeclarations(dice));
  if (dice.happens(0.25)) {
    const [name, value] = paintDeclarations(dice)[0]!.split(': ');
    if (!name!.startsWith('--') && !value!.includes('!')) parts.push(`${name}="${value!.split(';')[0]}"`);
  }
  if (dice.happens(0.35)) parts.push(`transform="${transformList(dice)}"`);
  else if (dice.happens(0.25)) styles.push(cssTransform(dice));
  if (dice.happens(0.15)) styles.push(`transform-origin: ${origin(dice)}`);
  if (dice.happens(isShape ? 0.15 : 0.05)) {
    const boxes = ['fill-box', 'view-box', 'content-box', ...(isShape ? ['stroke-box', 'border-box'] : [])];
    styles.push(`transform-box: ${dice.pick(boxes)}`);
  }
  if (dice.happens(0.03)) styles.push('display: none');
  if (styles.length > 0) parts.push(`style="${styles.join('; ')}"`);
  return parts.join(' ');
}

function pathData(dice: Dice): string {
  const at = (): string => `${dice.between(-10, 60)} ${dice.between(-10, 60)}`;
  const step = (): string => {
    switch (dice.whole(0, 8)) {
      case 0:
        return `L${at()}`;
      case 1:
        return `h${dice.between(-20, 20)}v${dice.between(-20, 20)}`;
      case 2:
        return `C${at()} ${at()} ${at()}`;
      case 3:
        return `s${at()},${at()}`;
      case 4:
        return `Q${at()} ${at()}`;
      case 5:
        return `T${at()}`;
      case 6:
        return `A${dice.between(1, 40)} ${dice.between(1, 40)} ${dice.between(-90, 90)} ${dice.whole(0, 1)}${dice.whole(0, 1)}${at()}`;
      case 7:
        return `z m${dice.between(-5, 5)},${dice.between(-5, 5)} l${at()}`;
      default:
        return `q${at()} ${at()}`;
    }
  };
  const close = dice.happens(0.4) ? 'Z' : '';
  const lone = dice.happens(0.04) ? ` m${at()}` : '';
  return `M${at()}${Array.from({ length: dice.whole(1, 5) }, step).join('')}${close}${lone}`;
}

function writeShape(making: Making): string {
  const { dice } = making;
  making.count += 1;
  const id = `s${making.count}`;
  if (dice.happens(0.3)) making.targets.push(id);
  const points = Array.from({ length: dice.whole(2, 6) }, () => `${dice.between(-10, 60)},${dice.between(-10, 60)}`);
  const near = (): string => length(dice, -10, 50);
  const wide = (): string => length(dice, 1, 40);
  const [name, geometry] = dice.pick<() => readonly [string, string]>([
    () => ['path', `d="${pathData(dice)}"`],
    () => ['path', `d="${pathData(dice)}"`],
    () => [
      'rect',
      `x="${near()}" y="${near()}" width="${wide()}" height="${wide()}"${dice.happens(0.4) ? ` rx="${wide()}"` : ''}`,
    ],
    () => ['circle', `cx="${near()}" cy="${near()}" r="${wide()}"`],
    () => ['ellipse', `cx="${near()}" cy="${near()}" rx="${wide()}" ${dice.happens(0.8) ? `ry="${wide()}"` : ''}`],
    () => ['line', `x1="${near()}" y1="${near()}" x2="${near()}" y2="${near()}"`],
    () => ['polyline', `points="${points.join(' ')}"`],
    () => ['polygon', `points="${points.join(' ')}"`],
  ])();
  return `<${name} id="${id}" ${geometry} ${writeAttributes(making)}/>`;
}

function writeFit(dice: Dice): string {
  const fit = dice.happens(0.2) ? 'none' : `${dice.pick(ALIGNS)} ${dice.pick(['meet', 'slice'])}`;
  return `preserveAspectRatio="${fit}" `;
}

function writeViewport({ dice }: Making): string {
  const corner = `${dice.between(-20, 20)} ${dice.between(-20, 20)}`;
  const box = dice.happens(0.6) ? `viewBox="${corner} ${dice.between(20, 120)} ${dice.between(20, 120)}" ` : '';
  return box + (dice.happens(0.5) ? writeFit(dice) : '');
}

function writeUse(making: Making): string {
  const { dice, targets } = making;
  if (targets.length === 0) return writeShape(making);
  const place = dice.happens(0.7) ? `x="${length(dice, -10, 40)}" y="${length(dice, -10, 40)}" ` : '';
  const size = dice.happens(0.3) ? `width="${length(dice, 10, 80)}" height="${length(dice, 10, 80)}" ` : '';
  making.count += 1;
  return `<use id="u${making.count}" ${dice.pick(['href', 'xlink:href'])}="#${dice.pick(targets)}" ${place}${size}${writeAttributes(making)}/>`;
}

/** A group, a nested svg, a link, or definitions; what is defined may be used afterwards. */
function writeContainer(making: Making, depth: number): string {
  const { dice, targets } = making;
  making.count += 1;
  const id = `g${making.count}`;
  const kind = dice.pick(['g', 'g', 'g', 'svg', 'symbol', 'defs', 'a', 'switch']);
  // No link stands in a link, and a switch holds no definitions: browsers draw neither, and SVG 2 allows neither.
  const writeChild = kind === 'a' || kind === 'switch' ? writeShape : (inner: Making) => writeNode(inner, depth + 1);
  const content = Array.from({ length: dice.whole(1, 4) }, () => writeChild(making)).join('\n');
  // After its content, which must not name it.
  if (kind !== 'defs' && kind !== 'a' && (kind === 'symbol' || dice.happens(0.3))) targets.push(id);
  const place = kind === 'svg' ? `x="${length(dice, -10, 30)}" y="${length(dice, -10, 30)}" ` : '';
  const size =
    kind === 'svg' && dice.happens(0.7) ? `width="${length(dice, 10, 90)}" height="${length(dice, 10, 90)}" ` : '';
  const viewport = kind === 'svg' || kind === 'symbol' ? place + size + writeViewport(making) : '';
  // Browsers differ over transforms on a nested svg or symbol; groups around them do the same.
  const rest = kind === 'svg' || kind === 'symbol' ? '' : writeAttributes(making, false);
  return `<${kind} id="${id}" ${viewport}${rest}>\n${content}\n</${kind}>`;
}

function writeNode(making: Making, depth: number): string {
  const { dice } = making;
  if (depth < 4 && dice.happens(0.4)) return writeContainer(making, depth);
  return dice.happens(0.2) ? writeUse(making) : writeShape(making);
}

/** Half of the sheets look at neighbours and parents; uses cannot be written out under those. */
function writeSheet({ dice, classes }: Making): string {
  const simple = classes.map((name) => `.${name} { ${paintDeclarations(dice).join('; ')} }`);
  const more = [
    () => `rect, circle.${dice.pick(classes)} { ${paintDeclarations(dice).join('; ')} }`,
    () => `#s${dice.whole(1, 9)} { ${paintDeclarations(dice).join('; ')}; ${cssTransform(dice)} }`,
    () => `circle { r: ${dice.between(1, 30)}px; cx: ${dice.between(0, 30)}% }`,
    () => `rect.${dice.pick(classes)} { width: ${dice.between(5, 30)}mm; rx: 3px }`,
    () => `@media screen, print { ellipse { ${paintDeclarations(dice).join('; ')} } }`,
  ];
  const looking = [
    () => `g > path:first-child { ${paintDeclarations(dice).join('; ')} }`,
    () => `g .${dice.pick(classes)} ~ rect, :not(g) > circle { ${paintDeclarations(dice).join('; ')} }`,
    () => `svg g:nth-of-type(2n+1) :is(path, line) { ${paintDeclarations(dice).join('; ')} }`,
    () => `[id^="s1"], [class~="${dice.pick(classes)}"] { ${paintDeclarations(dice).join('; ')} }`,
  ];
  const pool = dice.happens(0.25) ? [...more, ...looking] : more;
  const rules = [...simple, ...Array.from({ length: dice.whole(0, 4) }, () => dice.pick(pool)())];
  return `<style>${rules.join('\n').replaceAll('>', '&gt;')}</style>`;
}

/** Sides in units that come to whole px, since the browser lays the root out on a grid of 1/64 px. */
function writeRoot({ dice }: Making): string {
  const [unit, perPx, step] = dice.pick([
    ...([
      ['', 1, 1],
      ['px', 1, 1],
      ['mm', 25.4 / 96, 48],
      ['cm', 2.54 / 96, 48],
    ] as const),
    ...([
      ['in', 1 / 96, 3],
      ['pt', 0.75, 1],
      ['pc', 1 / 16, 1],
      ['Q', 101.6 / 96, 12],
    ] as const),
  ]);
  const print = (): string => `${Math.round(Math.ceil(dice.whole(60, 400) / step) * step * perPx * 1e6) / 1e6}${unit}`;
  const size = dice.happens(0.85) ? `width="${print()}" height="${print()}" ` : '';
  const corner = `${dice.between(-20, 20)} ${dice.between(-20, 20)}`;
  const box = dice.happens(0.7) ? `viewBox="${corner} ${dice.between(50, 300)} ${dice.between(50, 300)}" ` : '';
  return `${size}${box}${dice.happens(0.3) ? writeFit(dice) : ''}`;
}

/** A document by its number. */
export function generateDocument(seed: number): string {
  const dice = createDice(seed * 7919);
  const making: Making = { dice, targets: [], classes: ['a', 'b', 'c', 'd'], count: 0 };
  const root = writeRoot(making);
  const sheet = dice.happens(0.7) ? writeSheet(making) : '';
  const content = Array.from({ length: dice.whole(3, 8) }, () => writeNode(making, 1)).join('\n');
  const names = 'xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"';
  return `<svg ${names} ${root}>\n${sheet}\n${content}\n</svg>\n`;
}
