// Where the camera stands: near enough to see the chosen hood and its work whole, and before its opening.
import { THREE } from "nicegui-scene";
import { vec } from "hoodwright-scene/tools.js";
import { bounds } from "hoodwright-scene/hoods.js";

const NEAREST = 0.72;  // m, half size of the smallest thing framed, so that a bench and a hand give the scale
const ASIDE = [51, -51, 25, -25, 70, -70].map((degrees) => degrees * Math.PI / 180);
const LOOKED_FROM = new THREE.Vector3(0.3, -1, 0).normalize(), FROM_FRONT = new THREE.Vector3(0, -1, 0);
const UP = new THREE.Vector3(0, 0, 1);

// What to look at: the chosen hood with the work it serves, as a middle and a half size.
export function subject(picture, chosen) {
  const { hoods, sources } = picture;
  const hood = hoods.find((h) => h.name == chosen) ?? hoods.find((h) => h.serves.includes(chosen)) ?? hoods[0];
  const seen = sources.filter((s) => s.name == chosen || hood?.serves.includes(s.name));
  const places = [...(hood ? bounds(hood) : []), ...seen.flatMap((s) => [s.at, ...s.lines.flat()]).map(vec)];
  if (!places.length) {
    const [x, y, z] = picture.room.size;
    return { middle: new THREE.Vector3(x / 2, y / 2, z / 2), size: Math.hypot(x, y, z) / 2, hood };
  }
  const box = new THREE.Box3().setFromPoints(places);
  return { middle: box.getCenter(new THREE.Vector3()), size: box.getSize(new THREE.Vector3()).length() / 2, hood };
}

// From before the opening, more or less aside: where fewest other hoods and people stand between, then from the front.
function direction(picture, hood, middle, far) {
  const ahead = hood ? new THREE.Vector3(hood.facing[0], hood.facing[1], 0) : new THREE.Vector3();
  const level = ahead.length() < 0.3;
  const first = level ? FROM_FRONT.clone() : ahead.normalize();
  const rise = level ? (hood?.facing[2] < 0 ? 0.17 : 0.6) : hood.panels.length ? 0.3 : 0.39;
  const ways = ASIDE.map((turn) => first.clone().applyAxisAngle(UP, turn).setZ(rise).normalize());
  const cost = (way, i) => inTheWay(picture, hood, middle, middle.clone().addScaledVector(way, far))
    - 0.3 * way.dot(LOOKED_FROM) + 0.02 * i;
  return ways.map((way, i) => [cost(way, i), way]).sort((a, b) => a[0] - b[0])[0][1];
}

function inTheWay(picture, hood, middle, eye) {
  const sight = new THREE.Line3(eye, middle), near = new THREE.Vector3();
  const meets = (point, size) => {
    const along = sight.closestPointToPointParameter(point, true);
    return along < 0.95 && sight.at(along, near).distanceTo(point) < size;
  };
  const others = picture.hoods.filter((other) => other != hood && other.panels.length).map((other) => {
    const box = new THREE.Box3().setFromPoints(bounds(other));
    return meets(box.getCenter(new THREE.Vector3()), box.getSize(new THREE.Vector3()).length() / 2);
  });
  const people = picture.people.map((one) => meets(vec([one.at[0], one.at[1], 1.1]), 0.6));
  return others.filter(Boolean).length + 0.5 * people.filter(Boolean).length;
}

// Where the arrow of the draught stands beside what a stance shows: high, at its free side. See draughtArrow.
export function besideStance({ middle, size, looked_from, free_side }) {
  const scale = size / 0.9, aside = UP.clone().cross(vec(looked_from)).normalize();
  const place = vec(middle).addScaledVector(aside, 0.95 * free_side * size).add(new THREE.Vector3(0, 0, 0.55 * size - 0.42 * scale));
  return [place.toArray(), -0.05, scale];
}

// `stance`, where a page has one: { middle, size, looked_from, free_side }.
export function stand(camera, controls, picture, chosen, view, stance) {
  const narrow = Math.max(1, 1.35 / camera.aspect);
  const [x, y, z] = picture.room.size;
  controls.maxDistance = Math.max(30, 3 * Math.hypot(x, y, z));
  camera.far = 2 * controls.maxDistance;
  camera.updateProjectionMatrix();
  if (view == "room") {
    controls.target.set(x / 2, y / 2, z * 0.32);
    camera.position.set(0.32, -1, 0.5).normalize().multiplyScalar(Math.hypot(x, y, z) * 1.12 * narrow);
  } else if (stance) {
    const far = stance.size / Math.sin((camera.fov / 2) * Math.PI / 180) * narrow;
    controls.target.copy(vec(stance.middle));
    camera.position.copy(vec(stance.looked_from)).multiplyScalar(far);
  } else {
    const { middle, size, hood } = subject(picture, chosen);
    const far = Math.max(NEAREST, size) / Math.sin((camera.fov / 2) * Math.PI / 180) * 1.18 * narrow;
    controls.target.copy(middle);
    camera.position.copy(direction(picture, hood, middle, far)).multiplyScalar(far);
  }
  camera.position.add(controls.target);
  controls.update();
}
