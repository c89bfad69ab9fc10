// What can be laid over the scene: stream lines by speed, lines of equal speed, and the map of the captured share.
import { THREE } from "nicegui-scene";
import { label } from "hoodwright-scene/tools.js";
import { evenColour } from "hoodwright-scene/colours.js";

const MAP_OPACITY = 0.5, SIDES = 3, THIN = 0.0014;  // m
const FEET = 196.85;  // ft/min in a m/s
const LABEL_STEP = 0.37;  // of a line's length
const BUILD = { streamlines, speed: speedLines, map: captureMap };

export const layerBody = (message) => BUILD[message.layer](message);

// What the ends of its colours mean, and what it says; lines of equal speed carry their own labels.
export function legendOf({ layer, words, top }, inches) {
  if (layer == "map") return { words, low: "0 %", high: "100 % captured" };
  if (layer == "speed") return { words };
  const high = inches ? `${Math.round(FEET * top)}\u2009ft/min` : `${top.toPrecision(2)}\u2009m/s`;
  return { words, low: "0", high };
}

// Many lines as one body of thin three-sided tubes; `colourOf(line, point)` gives red, green, blue.
function linesBody(lines, colourOf, thick) {
  const places = [], colours = [], corners = [];
  lines.forEach((line, n) => line.forEach((point, m) => {
    const first = places.length / 3, [u, v] = acrossAt(line, m), colour = colourOf(n, m).map((c) => c ** 2.2);
    for (let side = 0; side < SIDES; side++) {
      const turn = 2 * Math.PI * side / SIDES, a = thick * Math.cos(turn), b = thick * Math.sin(turn);
      places.push(...point.map((c, k) => c + a * u[k] + b * v[k]));
      colours.push(...colour);
      const next = (side + 1) % SIDES;
      const [here, on, back, off] = [first + side, first + next, first + side - SIDES, first + next - SIDES];
      if (m > 0) corners.push(here, on, back, on, off, back);
    }
  }));
  const shape = new THREE.BufferGeometry();
  shape.setAttribute("position", new THREE.Float32BufferAttribute(places, 3));
  shape.setAttribute("color", new THREE.Float32BufferAttribute(colours, 3));
  shape.setIndex(corners);
  const body = new THREE.Mesh(shape, new THREE.MeshBasicMaterial({ vertexColors: true, side: THREE.DoubleSide }));
  body.renderOrder = 5;
  return body;
}

// Two directions across a line at one of its points.
function acrossAt(line, m) {
  const from = line[Math.max(m - 1, 0)], to = line[Math.min(m + 1, line.length - 1)];
  const way = new THREE.Vector3(...to).sub(new THREE.Vector3(...from)).normalize();
  const first = new THREE.Vector3(0, 0, 1).cross(way);
  if (first.length() < 0.05) first.set(1, 0, 0).cross(way);
  first.normalize();
  return [first.toArray(), way.cross(first).toArray()];
}

function streamlines({ lines, speeds, top }) {
  return linesBody(lines, (n, m) => evenColour(Math.sqrt(speeds[n][m] / (top || 1))), THIN);
}

// Labels stand at other places of each line, so that they do not lie on one another.
function contours(levels, colourOf, kind) {
  const group = new THREE.Group();
  levels.forEach((level, n) => {
    const colour = colourOf(level);
    group.add(linesBody(level.lines, () => colour, THIN));
    const longest = level.lines.reduce((best, line) => (line.length > (best?.length ?? 0) ? line : best), null);
    const at = longest && longest[Math.floor((0.15 + LABEL_STEP * n) % 1 * longest.length)];
    if (at) group.add(label(level.words, at, kind, 3));
  });
  return group;
}

function speedLines({ levels }) {
  const top = Math.max(...levels.map((level) => level.velocity), 1e-9);
  return contours(levels, (level) => evenColour(0.25 + 0.75 * Math.sqrt(level.velocity / top)), "scene-level");
}

function captureMap({ plane, shape, values, levels }) {
  const group = contours(levels ?? [], () => [0.98, 0.98, 0.96], "scene-level");
  group.add(mapPlane(plane, shape, values));
  return group;
}

// values[a * shape[1] + b]: a along the first side, b along the second; null where there is no air.
function mapPlane({ corner, first, second }, [na, nb], values) {
  const pixels = new Uint8Array(4 * na * nb);
  for (let a = 0; a < na; a++) {
    for (let b = 0; b < nb; b++) {
      const value = values[a * nb + b], o = 4 * (b * na + a);
      if (value !== null) pixels.set([...evenColour(value).map((c) => Math.round(255 * c)), 255 * MAP_OPACITY], o);
    }
  }
  const picture = new THREE.DataTexture(pixels, na, nb);
  picture.colorSpace = THREE.SRGBColorSpace;
  picture.magFilter = picture.minFilter = THREE.LinearFilter;
  picture.needsUpdate = true;
  const far = [corner, plus(corner, first), plus(plus(corner, first), second), plus(corner, second)];
  const shape = new THREE.BufferGeometry();
  shape.setAttribute("position", new THREE.Float32BufferAttribute([0, 1, 2, 0, 2, 3].flatMap((n) => far[n]), 3));
  shape.setAttribute("uv", new THREE.Float32BufferAttribute([0, 0, 1, 0, 1, 1, 0, 0, 1, 1, 0, 1], 2));
  const look = { map: picture, transparent: true, side: THREE.DoubleSide, depthWrite: false };
  const mesh = new THREE.Mesh(shape, new THREE.MeshBasicMaterial(look));
  mesh.renderOrder = 4;
  return mesh;
}

const plus = (a, b) => a.map((c, n) => c + b[n]);
