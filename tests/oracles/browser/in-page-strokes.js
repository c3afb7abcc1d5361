// Runs inside the browser: where strokes leave ink, and the stroke boxes that its transforms refer to.

/** Bounds of the pixels with any ink in a picture of `side` by `side` px: left, top, right, bottom, in px. */
function inkOf(context, side) {
  const { data } = context.getImageData(0, 0, side, side);
  const alphas = new Uint32Array(data.buffer);
  let [left, top, right, bottom] = [side, side, 0, 0];
  for (let y = 0, at = 0; y < side; y += 1) {
    for (let x = 0; x < side; x += 1, at += 1) {
      if (alphas[at] === 0) continue;
      if (x < left) left = x;
      if (x >= right) right = x + 1;
      if (top > y) top = y;
      bottom = y + 1;
    }
  }
  return [left, top, right, bottom];
}

/** Draws each document as a picture and looks where it left ink. */
async function askInk(texts, side) {
  const canvas = new OffscreenCanvas(side, side);
  const context = canvas.getContext('2d', { willReadFrequently: true });
  const answers = [];
  for (const text of texts) {
    const image = new Image();
    image.src = `data:image/svg+xml,${encodeURIComponent(text)}`;
    await image.decode();
    context.clearRect(0, 0, side, side);
    context.drawImage(image, 0, 0, side, side);
    answers.push(inkOf(context, side));
  }
  return answers;
}

/**
 * The stroke box of a path in its own user units: twice as large about a corner of that box, a matrix moves by the corner.
 * Left, top, right, bottom.
 */
function askStrokeBox(path) {
  const cornerOf = (origin) => {
    path.style.cssText = `transform-box: stroke-box; transform-origin: ${origin}; transform: scale(2)`;
    const { e, f } = path.getCTM();
    return [0 - e, 0 - f];
  };
  return [...cornerOf('0 0'), ...cornerOf('100% 100%')];
}

/** Stroke boxes of the elements that stand for paths. */
function askStrokeBoxes(elements) {
  const holder = document.createElement('div');
  holder.innerHTML = `<svg width="200" height="200">${elements.join('')}</svg>`;
  document.body.append(holder);
  const boxes = [...holder.firstElementChild.children].map(askStrokeBox);
  holder.remove();
  return boxes;
}

Object.assign(globalThis, { askInk, askStrokeBoxes });
