// Pictures to keep: what is drawn, with the labels and what is said of the captured share written on it.
const INK = "#fbf9f4", SHADE = "#10181c", BAND = 0.13;
const FONT = 'system-ui, "Segoe UI", "Noto Sans", "DejaVu Sans", sans-serif';

// The canvas with its labels, at most `width` pixels wide.
export function pictureOf(canvas, labels, said, width, kind) {
  const scale = Math.min(1, width / canvas.width), made = document.createElement("canvas");
  made.width = Math.max(2, 2 * Math.round(canvas.width * scale / 2));
  made.height = Math.max(2, 2 * Math.round(canvas.height * scale / 2));
  const pen = made.getContext("2d");
  pen.imageSmoothingQuality = "high";
  pen.drawImage(canvas, 0, 0, made.width, made.height);
  const unit = made.width / canvas.clientWidth;
  writeLabels(pen, labels, unit);
  writeAnswer(pen, said, made.height);
  return made.toDataURL(`image/${kind}`, 0.86);
}

function write(pen, words, x, y, size, weight = 400) {
  pen.font = `${weight} ${size}px ${FONT}`;
  pen.lineWidth = Math.max(2, size / 5);
  pen.lineJoin = "round";
  pen.strokeStyle = SHADE;
  pen.strokeText(words, x, y);
  pen.fillText(words, x, y);
}

function writeLabels(pen, labels, unit) {
  const frame = labels.getBoundingClientRect();
  pen.textBaseline = "middle";
  pen.textAlign = "center";
  for (const one of labels.children) {
    const look = getComputedStyle(one);
    if (look.display == "none" || look.visibility == "hidden" || !one.textContent) continue;
    const box = one.getBoundingClientRect();
    pen.fillStyle = look.color;
    const x = (box.left + box.width / 2 - frame.left) * unit, y = (box.top + box.height / 2 - frame.top) * unit;
    write(pen, one.textContent, x, y, Math.max(10, 14 * unit), look.fontWeight);
  }
}

function writeAnswer(pen, said, tall) {
  if (!said.length) return;
  const size = Math.max(13, BAND * tall / 2);
  pen.textAlign = "left";
  pen.textBaseline = "top";
  pen.fillStyle = INK;
  let y = size * 0.5;
  said.forEach((words, n) => {
    const own = n == 0 ? size : Math.max(10, size * 0.5);
    write(pen, words, size * 0.6, y, own, n == 0 ? 700 : 400);
    y += own * 1.25;
  });
}
