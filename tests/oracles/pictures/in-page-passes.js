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

/** The drawing as the browser's own tree has it, with declarations added to elements by their place in the document. */
function hideElements(source, hidden) {
  const drawing = new DOMParser().parseFromString(source, 'image/svg+xml');
  const elements = drawing.getElementsByTagName('*');
  for (const [row, property, value] of hidden) elements[row].style.setProperty(property, value, 'important');
  return new XMLSerializer().serializeToString(drawing);
}

/** For each pass: how many pixels differ, and how many have ink. */
// biome-ignore lint/correctness/noUnusedVariables: called by name from the test.
async function comparePasses({ source, width, height, passes }) {
  const results = [];
  for (const { sheet, hidden } of passes) {
    const alone = await paintText(sheet, width, height);
    const rest = await paintText(hideElements(source, hidden), width, height);
    let differing = 0;
    let inked = 0;
    for (let at = 0; at < alone.length; at += 4) {
      if (alone[at + 3] > 0) inked += 1;
      if ([0, 1, 2, 3].some((channel) => alone[at + channel] !== rest[at + channel])) differing += 1;
    }
    results.push({ differing, inked });
  }
  return results;
}
