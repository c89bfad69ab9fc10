// Sources with their extent, and dimension lines from a source to its hood.
import { THREE } from "nicegui-scene";
import { COLOUR, vec, matte, plain, ball, bar, arrow, label, named } from "hoodwright-scene/tools.js";
import { bounds, right } from "hoodwright-scene/hoods.js";

const LINE = 0.008;

export function sourceBody(source, chosen) {
  const group = new THREE.Group();
  const pale = matte(COLOUR.source, { emissive: COLOUR.source, emissiveIntensity: 0.5 });
  group.add(ball(source.at, 0.018, pale));
  for (const [size, opacity] of [[0.035, 0.28], [0.06, 0.12]]) {
    group.add(ball(source.at, chosen ? size * 1.25 : size, plain(COLOUR.source, opacity)));
  }
  for (const line of source.lines) {
    const thrown = line.length == 2 && String(line[0]) == String(source.at);
    group.add(thrown ? arrow(line[0], line[1], LINE, pale) : bar(line, chosen ? LINE * 1.4 : LINE, pale));
  }
  return named(group, source.name, "source");
}

export function sourceLabel(source, chosen) {
  const low = Math.min(source.at[2], ...source.lines.flat().map((p) => p[2]));
  const thick = source.lines.length ? 0.06 : 0.09;
  return label(source.name, [source.at[0], source.at[1], low - thick], "scene-source", chosen ? 8 : 4);
}

// The line stands beside the hood's rim, so that it does not run through what it measures.
export function dimensionLine(line, hood) {
  const group = new THREE.Group();
  const a = vec(line.start), b = vec(line.end), along = b.clone().sub(a);
  const upright = Math.abs(along.clone().normalize().z) > 0.9;
  const lift = upright && hood ? right(hood) : new THREE.Vector3(upright ? 1 : 0, 0, upright ? 0 : 1);
  const rim = hood ? Math.max(...bounds({ ...hood, panels: [], lines: [] }).map((p) => p.sub(vec(hood.at)).dot(lift))) : 0;
  const raise = lift.clone().multiplyScalar(rim + 0.14), tick = lift.clone().multiplyScalar(rim + 0.17);
  const p = a.clone().add(raise), q = b.clone().add(raise);
  const points = [a, a.clone().add(tick), b, b.clone().add(tick), p, q];
  const drawn = new THREE.LineSegments(new THREE.BufferGeometry().setFromPoints(points),
    new THREE.LineBasicMaterial({ color: COLOUR.line, depthTest: false, transparent: true, opacity: 0.9 }));
  drawn.renderOrder = 5;
  const middle = p.clone().add(q).multiplyScalar(0.5).addScaledVector(lift, 0.05);
  group.userData.measure = true;
  group.add(drawn, label(line.words, middle.toArray(), "scene-measure", 10));
  return group;
}
