// Draws files whose every number goes through the arithmetic that could differ: turned, skewed, bent and stroked; seeded.

import { seedChance } from '../bench/draw-layered.js';

const SIZES = [
  ['160mm', '120mm'],
  ['6.3in', '4.7in'],
  ['450pt', '340pt'],
  ['16.1cm', '11.9cm'],
];

/** One file; the units of its size go by the seed. */
export function drawTurned(seed) {
  const next = seedChance(seed);
  const number = (from, to) => String(Math.round((from + next() * (to - from)) * 1000) / 1000);
  const point = () => `${number(60, 100)} ${number(45, 75)}`;
  const turn = () => `rotate(${number(-180, 180)} 80 60) skewX(${number(-20, 20)})`;
  const flags = () => `${next() < 0.5 ? 0 : 1} ${next() < 0.5 ? 0 : 1}`;
  const arc = () => `A${number(3, 12)} ${number(3, 12)} ${number(0, 180)} ${flags()} ${point()}`;
  const line = () => `M${point()}C${point()} ${point()} ${point()}Q${point()} ${point()}${arc()}`;
  const [width, height] = SIZES[seed % SIZES.length];
  const shapes = (count, paint) =>
    Array.from({ length: count }, () => `    <path ${paint()} transform="${turn()}" d="${line()}"/>`).join('\n');
  const hue = () => `hsl(${number(0, 360)} 60% 40%)`;
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 160 120">
  <style>.ink { stroke-linejoin: round } g > path:nth-child(3n) { stroke-width: 0.7px }</style>
  <g id="Artwork ÄÖ">
${shapes(6, () => `class="ink" fill="${hue()}" stroke="${hue()}" stroke-width="${number(0.1, 0.9)}"`)}
  </g>
  <g id="Cut">
${shapes(3, () => `fill="none" stroke="#c2185b" stroke-width="0.3" stroke-miterlimit="${number(1, 20)}"`)}
  </g>
</svg>
`;
}
