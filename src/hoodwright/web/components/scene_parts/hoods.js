// Hoods of every type, and the ducts that leave them. Bodies come as flat panels; a nozzle is made from its opening.
import { THREE } from "nicegui-scene";
import { COLOUR, vec, matte, plain, between, ball, bar, arrow, panel, edge, label, named } from "hoodwright-scene/tools.js";

const NOZZLE_DEPTH = 0.12, SHEET = 0.004, RIM = 0.012;
const SEEN_THROUGH = { enclosing: 0.26, receiving: 0.62 };

export function hoodBody(hood, chosen) {
  const group = hood.panels.length ? panelled(hood, chosen) : nozzle(hood, chosen);
  const copper = matte(chosen ? COLOUR.copperBright : COLOUR.copper, { roughness: 0.55 });
  hood.lines.forEach((line, i) => {
    group.add(i == 0 ? bar(line, 0.018, copper) : arrow(line[0], line[line.length - 1], 0.01, plain(COLOUR.breeze)));
  });
  return named(group, hood.name, hood.type);
}

export function hoodLabel(hood, chosen) {
  const top = bounds(hood).reduce((high, p) => (p.z > high.z ? p : high));
  const middle = vec(hood.at).addScaledVector(vec(hood.facing), hood.panels.length ? 0 : -0.1);
  return label(hood.name, [middle.x, middle.y, top.z + 0.05], "scene-hood", chosen ? 9 : 6);
}

// Corners of all that belongs to a hood: for the camera and for its label.
export function bounds(hood) {
  const across = right(hood), up = vec(hood.up), w = hood.half_width + hood.flange, h = hood.half_height + hood.flange;
  const corners = [[-w, -h], [w, -h], [w, h], [-w, h]].map(([a, b]) =>
    vec(hood.at).addScaledVector(across, a).addScaledVector(up, b));
  return [...corners, ...hood.panels.flat().map(vec), ...hood.lines.flat().map(vec)];
}

// A canopy or an enclosure: half transparent, with visible edges, so that the work inside is seen.
function panelled(hood, chosen) {
  const group = new THREE.Group();
  const opacity = SEEN_THROUGH[hood.type] ?? 0.6;
  const sheet = matte(chosen ? COLOUR.copperBright : COLOUR.copper,
    { roughness: 0.8, side: THREE.DoubleSide, transparent: true, opacity, depthWrite: false });
  const pale = chosen ? COLOUR.line : COLOUR.copperBright;
  for (const corners of hood.panels) {
    const face = panel(corners, sheet);
    face.renderOrder = 3;
    group.add(face);
    if (!hood.is_round || hood.type == "enclosing") group.add(edge(corners, pale, 0.75));
  }
  const rim = opening(hood).map((p) => p.toArray());
  group.add(bar([...rim, rim[0]], RIM, matte(chosen ? COLOUR.copperBright : COLOUR.copper, { roughness: 0.55 })));
  const face = panel(rim, plain(COLOUR.duct, 0.16));
  face.material.side = THREE.DoubleSide;
  face.renderOrder = 4;
  group.add(face);
  return group;
}

function opening(hood) {
  const across = right(hood), up = vec(hood.up);
  const count = hood.is_round ? 32 : 4;
  return Array.from({ length: count }, (_, i) => {
    const turn = (2 * Math.PI * (i + 0.5)) / count;
    const [a, b] = hood.is_round ? [Math.cos(turn), Math.sin(turn)] : [Math.sign(Math.cos(turn)), Math.sign(Math.sin(turn))];
    return vec(hood.at).addScaledVector(across, a * hood.half_width).addScaledVector(up, b * hood.half_height);
  });
}

function nozzle(hood, chosen) {
  const group = new THREE.Group();
  const copper = matte(chosen ? COLOUR.copperBright : COLOUR.copper,
    { roughness: 0.55, metalness: 0.15, side: THREE.DoubleSide });
  const rim = outline(hood, Math.max(hood.flange, 0.006));
  rim.holes.push(outline(hood, 0));
  const flange = new THREE.Mesh(extruded(rim, SHEET), copper);
  flange.position.z = -SHEET;
  const face = new THREE.Mesh(new THREE.ShapeGeometry(outline(hood, 0), 40), matte(COLOUR.dark, { side: THREE.DoubleSide }));
  face.position.z = -Math.min(0.03, hood.half_height);
  const shell = outline(hood, SHEET);
  shell.holes.push(outline(hood, 0));
  const wall = new THREE.Mesh(extruded(shell, NOZZLE_DEPTH), copper);
  wall.position.z = -SHEET - NOZZLE_DEPTH;
  const back = new THREE.Mesh(new THREE.ShapeGeometry(outline(hood, SHEET), 40), copper);
  back.position.z = -SHEET - NOZZLE_DEPTH;
  const rimLine = new THREE.LineLoop(new THREE.BufferGeometry().setFromPoints(outline(hood, 0).getPoints(40)),
    new THREE.LineBasicMaterial({ color: chosen ? COLOUR.line : COLOUR.copperBright }));
  rimLine.position.z = 0.001;
  const body = new THREE.Group();
  body.add(flange, face, wall, back, rimLine);
  body.quaternion.setFromRotationMatrix(new THREE.Matrix4().makeBasis(right(hood), vec(hood.up), vec(hood.facing)));
  body.position.set(...hood.at);
  group.add(body);
  return group;
}

const extruded = (shape, depth) => new THREE.ExtrudeGeometry(shape, { depth, bevelEnabled: false, curveSegments: 40 });
export const right = (hood) => vec(hood.up).cross(vec(hood.facing));

function outline(hood, grow) {
  const shape = new THREE.Shape();
  const w = hood.half_width + grow, h = hood.half_height + grow;
  if (hood.is_round) shape.absarc(0, 0, w, 0, 2 * Math.PI);
  else shape.moveTo(-w, -h).lineTo(w, -h).lineTo(w, h).lineTo(-w, h).lineTo(-w, -h);
  return shape;
}

export function ductBody(duct, hoods) {
  const group = new THREE.Group();
  const steel = matte(COLOUR.duct, { roughness: 0.65 });
  const points = duct.points.map(vec);
  const fromNozzle = hoods.some((hood) => !hood.panels.length && String(hood.duct_at) == String(duct.points[0]));
  if (fromNozzle && points.length > 1) {
    points[0].lerp(points[1], Math.min(0.9, NOZZLE_DEPTH / points[0].distanceTo(points[1])));
  }
  points.forEach((point, i) => {
    if (i > 0) group.add(between(points[i - 1].toArray(), point.toArray(), duct.diameter / 2, steel, 24));
    if (i > 0 && i < points.length - 1) group.add(ball(point.toArray(), duct.diameter / 2, steel));
  });
  return group;
}
