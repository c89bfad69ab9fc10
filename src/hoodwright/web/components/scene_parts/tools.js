// Colours, and the few plain bodies that everything in the scene is made of.
import { THREE, CSS2DObject } from "nicegui-scene";

export const COLOUR = {
  slate: 0x1e2a31, floor: 0x36464f, grid: 0x6d7f88, wall: 0x3f515b, wood: 0xcdb892, legs: 0x7d8a90,
  person: 0xc9d2d6, copper: 0xb4622d, copperBright: 0xe8935a, air: 0x2f7f8f, duct: 0x4fa3b3, dark: 0x10181c,
  source: 0xf4f1e8, machine: 0x7d8b92, line: 0xfbf9f4, breeze: 0xbfd9de,
};

export const vec = (p) => new THREE.Vector3(...p);
export const matte = (color, more = {}) =>
  new THREE.MeshStandardMaterial({ color, roughness: 0.9, metalness: 0, ...more });
export const plain = (color, opacity = 1) =>
  new THREE.MeshBasicMaterial({ color, transparent: opacity < 1, opacity, depthWrite: opacity == 1 });

export function between(a, b, radius, material, sides = 20) {
  const along = vec(b).sub(vec(a));
  const mesh = new THREE.Mesh(new THREE.CylinderGeometry(radius, radius, along.length(), sides), material);
  mesh.position.copy(vec(a)).addScaledVector(along, 0.5);
  mesh.quaternion.setFromUnitVectors(new THREE.Vector3(0, 1, 0), along.normalize());
  return mesh;
}

export function ball(at, radius, material) {
  const mesh = new THREE.Mesh(new THREE.SphereGeometry(radius, 24, 16), material);
  mesh.position.set(...at);
  return mesh;
}

// A line of points as a thin round bar; a closed loop when it ends where it begins.
export function bar(points, radius, material) {
  const group = new THREE.Group();
  points.forEach((point, i) => {
    if (i > 0 && vec(points[i - 1]).distanceTo(vec(point)) > 1e-6) {
      group.add(between(points[i - 1], point, radius, material, 8));
    }
    if (i > 0 && i < points.length - 1) group.add(ball(point, radius, material));
  });
  return group;
}

export function arrow(start, end, radius, material) {
  const group = new THREE.Group();
  const way = vec(end).sub(vec(start)), long = way.length();
  way.normalize();
  const neck = vec(start).addScaledVector(way, long * 0.78);
  const head = new THREE.Mesh(new THREE.ConeGeometry(radius * 3.6, long * 0.22, 16), material);
  head.position.copy(vec(start)).addScaledVector(way, long * 0.89);
  head.quaternion.setFromUnitVectors(new THREE.Vector3(0, 1, 0), way);
  group.add(between(start, neck.toArray(), radius, material, 8), head);
  return group;
}

// A flat face of three or more corners in order, and its edge.
export function panel(corners, material) {
  const points = corners.map(vec), places = [];
  for (let i = 1; i + 1 < points.length; i++) {
    for (const p of [points[0], points[i], points[i + 1]]) places.push(p.x, p.y, p.z);
  }
  const face = new THREE.BufferGeometry();
  face.setAttribute("position", new THREE.Float32BufferAttribute(places, 3));
  face.computeVertexNormals();
  return new THREE.Mesh(face, material);
}

export function edge(corners, color, opacity = 1) {
  return new THREE.LineLoop(new THREE.BufferGeometry().setFromPoints(corners.map(vec)),
    new THREE.LineBasicMaterial({ color, transparent: opacity < 1, opacity }));
}

// `weight` says which of two labels gives way where there is room for one only; `owner` is whose label it is.
export function label(words, at, kind, weight = 0, owner = words) {
  const element = document.createElement("div");
  element.className = `scene-label ${kind}`;
  element.textContent = words;
  element.dataset.part = owner;
  const made = new CSS2DObject(element);
  made.position.set(...at);
  made.userData.weight = weight;
  return made;
}

export function named(object, name, kind) {
  object.userData.part = name;
  object.userData.kind = kind;
  return object;
}

export function dispose(shapes) {
  shapes.traverse((o) => { o.geometry?.dispose(); o.material?.dispose?.(); o.element?.remove(); });
}
