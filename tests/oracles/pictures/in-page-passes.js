// In the page: a drawing with all but one pass hidden, beside the sheet of that pass, as pictures of equal size.

/** A picture of a text, painted onto a canvas; its pixels. */
async function paintText(text, width, height) {
  const url = URL.createObjectURL(new Blob([text], { type: 'image/svg+xml' }));
  try {
    const image = new Image();
    image.src = url;
    await image.decode();
    const canvas = document.createElement('canvas');
    canvas.width = width;
    canvas.height = height;
    const context = canvas.getContext('2d', { willReadFrequently: true });
    context.drawImage(image, 0, 0, width, height);
    return context.getImageData(0, 0, width, height).data;
  } finally {
    URL.revokeObjectURL(url);
  }
}

/** The drawing as the browser's own tree has it, without what a pass does not draw; a group of which nothing is left goes as well. */
function hideElements(source, { hidden, kept }) {
  const drawing = new DOMParser().parseFromString(source, 'image/svg+xml');
  const elements = drawing.getElementsByTagName('*');
  for (const [row, property, value] of hidden) elements[row].style.setProperty(property, value, 'important');
  // For the browser a group with a blend mode or a mask stays a layer of its own when all in it is hidden, and rounds what is under it.
  const filled = new Set();
  for (const row of kept) {
    for (let element = elements[row]; element !== null; element = element.parentElement) filled.add(element);
  }
  for (const group of drawing.getElementsByTagName('g')) {
    if (!filled.has(group) && group.closest('defs, symbol') === null) {
      group.style.setProperty('display', 'none', 'important');
    }
  }
  return new XMLSerializer().serializeToString(drawing);
}

/** How far a pixel of one picture is from that of another, as it comes out on white: where nothing is seen, colour is nothing. */
function measureDifference(one, other, at) {
  const [alpha, beside] = [one[at + 3], other[at + 3]];
  let difference = Math.abs(alpha - beside);
  for (let channel = at; channel < at + 3; channel += 1) {
    difference = Math.max(difference, Math.abs(one[channel] * alpha - other[channel] * beside) / 255);
  }
  return difference;
}

/** How many pixels differ at all, how many blocks of two by two differ by more than a tolerance, and how many pixels have ink. */
function comparePixels(alone, rest, { width, tolerance }) {
  const differs = new Uint8Array(alone.length / 4);
  const counts = { differing: 0, blocks: 0, inked: 0 };
  for (let at = 0; at < alone.length; at += 4) {
    if (alone[at + 3] > 0) counts.inked += 1;
    if ([0, 1, 2, 3].every((channel) => alone[at + channel] === rest[at + channel])) continue;
    counts.differing += 1;
    if (measureDifference(alone, rest, at) <= tolerance) continue;
    const pixel = at / 4;
    differs[pixel] = 1;
    const isBlock = differs[pixel - 1] + differs[pixel - width] + differs[pixel - width - 1] === 3;
    if (isBlock && pixel % width > 0) counts.blocks += 1;
  }
  return counts;
}

/** Each sheet against the drawing with all but that pass hidden. */
// biome-ignore lint/correctness/noUnusedVariables: called by name from the test.
async function comparePasses({ source, width, height, tolerance, passes }) {
  const results = [];
  for (const { sheet, ...pass } of passes) {
    const alone = await paintText(sheet, width, height);
    const rest = await paintText(hideElements(source, pass), width, height);
    results.push(comparePixels(alone, rest, { width, tolerance }));
  }
  return results;
}
