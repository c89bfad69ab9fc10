// Labels that would lie on each other are moved apart; where there is no room, the lighter one is left out.
// Near the rim of the picture they are held inside it; what lies beyond the rim has none.
const GAP = 3, TRIES = [0, 1, -1, 2, -2, 3, -3];
const ALWAYS = 6;

export function spread(scene, camera, width, height) {
  const found = [];
  scene.traverse((o) => { if (o.element) found.push(o); });
  const boxes = found.map((o) => box(o, camera, width, height)).filter(Boolean);
  boxes.sort((a, b) => b.weight - a.weight);
  const taken = [];
  for (const one of boxes) {
    const shifts = (one.fixed ? [0] : TRIES).map((n) => n * (one.h + GAP));
    const shift = shifts.find((dy) => !taken.some((other) => meets(one, other, dy)));
    const hidden = shift === undefined && one.weight < ALWAYS;
    one.element.style.marginLeft = `${one.inward}px`;
    one.element.style.marginTop = `${shift ?? 0}px`;
    one.element.style.visibility = hidden ? "hidden" : "visible";
    if (!hidden) taken.push({ ...one, y: one.y + (shift ?? 0) });
  }
}

function box(object, camera, width, height) {
  const { element } = object;
  if (element.style.display == "none" || getComputedStyle(element).display == "none") return null;
  const at = object.getWorldPosition(object.position.clone()).project(camera);
  const w = element.offsetWidth, h = element.offsetHeight;
  const x = ((at.x + 1) / 2) * width, y = ((1 - at.y) / 2) * height;
  if (x < 0 || x > width || y < 0 || y > height) {
    element.style.visibility = "hidden";
    return null;
  }
  const held = Math.min(Math.max(x, w / 2 + GAP), width - w / 2 - GAP);
  const fixed = element.classList.contains("scene-level");  // belongs to its line
  return { element, fixed, weight: object.userData.weight, x: held, y, w, h, inward: held - x };
}

const meets = (one, other, dy) =>
  Math.abs(one.x - other.x) < (one.w + other.w) / 2 + GAP && Math.abs(one.y + dy - other.y) < (one.h + other.h) / 2 + GAP - 1;
