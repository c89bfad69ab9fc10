// What stands around the hoods: room, benches, people, machines, and the draught.
import { THREE } from "nicegui-scene";
import { COLOUR, vec, matte, plain, between, ball, arrow, label } from "hoodwright-scene/tools.js";

export function roomBody(room) {
  const [x, y, z] = room.size;
  const group = new THREE.Group();
  const floor = new THREE.Mesh(new THREE.PlaneGeometry(x, y), matte(COLOUR.floor));
  floor.position.set(x / 2, y / 2, -0.002);
  floor.receiveShadow = true;
  group.add(floor, metreGrid(x, y));
  for (const [w, h, at, turn] of [
    [x, z, [x / 2, y, z / 2], [Math.PI / 2, 0, 0]],
    [y, z, [0, y / 2, z / 2], [Math.PI / 2, Math.PI / 2, 0]],
  ]) {
    // seen from inside only, so that a view through the wall stays free
    const wall = new THREE.Mesh(new THREE.PlaneGeometry(w, h),
      matte(COLOUR.wall, { transparent: true, opacity: 0.45, depthWrite: false }));
    wall.position.set(...at);
    wall.rotation.set(...turn);
    group.add(wall);
  }
  const edges = new THREE.LineSegments(new THREE.EdgesGeometry(new THREE.BoxGeometry(x, y, z)),
    new THREE.LineBasicMaterial({ color: COLOUR.grid, transparent: true, opacity: 0.6 }));
  edges.position.set(x / 2, y / 2, z / 2);
  group.add(edges);
  return group;
}

const MOST_GRID_LINES = 100;

function metreGrid(x, y) {
  const points = [], step = Math.max(1, Math.ceil(Math.max(x, y) / MOST_GRID_LINES));
  for (let i = 0; i <= x + 1e-9; i += step) points.push(new THREE.Vector3(i, 0, 0), new THREE.Vector3(i, y, 0));
  for (let j = 0; j <= y + 1e-9; j += step) points.push(new THREE.Vector3(0, j, 0), new THREE.Vector3(x, j, 0));
  return new THREE.LineSegments(new THREE.BufferGeometry().setFromPoints(points),
    new THREE.LineBasicMaterial({ color: COLOUR.grid, transparent: true, opacity: 0.55 }));
}

export function slab(plate) {
  const [a, b, , d] = plate.corners.map(vec);
  const group = new THREE.Group();
  const u = b.clone().sub(a), v = d.clone().sub(a);
  const box = new THREE.Mesh(new THREE.BoxGeometry(u.length(), v.length(), 0.03), matte(COLOUR.wood));
  const basis = new THREE.Matrix4().makeBasis(u.clone().normalize(), v.clone().normalize(), u.clone().cross(v).normalize());
  box.quaternion.setFromRotationMatrix(basis);
  box.position.copy(a).addScaledVector(u, 0.5).addScaledVector(v, 0.5);
  if (Math.abs(u.z) + Math.abs(v.z) < 1e-6) {
    box.position.z -= 0.015;
    for (const [s, t] of [[0.04, 0.06], [0.96, 0.06], [0.04, 0.94], [0.96, 0.94]]) {
      const top = a.clone().addScaledVector(u, s).addScaledVector(v, t);
      if (top.z > 0.05) group.add(between([top.x, top.y, 0], [top.x, top.y, top.z - 0.03], 0.025, matte(COLOUR.legs), 8));
    }
  }
  group.add(box);
  return group;
}

export function person(shape) {
  const group = new THREE.Group();
  const skin = matte(COLOUR.person, { transparent: true, opacity: 0.42 });
  const eyes = shape.breathing_height + 0.1;
  const body = new THREE.Mesh(new THREE.CapsuleGeometry(0.17, eyes * 0.42, 6, 20), skin);
  body.rotation.x = Math.PI / 2;
  body.position.z = eyes * 0.62;
  body.scale.set(1.15, 1, 0.72);
  const head = ball([0, 0.04, eyes], 0.11, skin);
  head.scale.z = 1.2;
  group.add(body, head);
  for (const side of [-0.09, 0.09]) group.add(between([side, 0, 0], [side, 0, eyes * 0.42], 0.075, skin));
  const turned = new THREE.Group();
  turned.add(group);
  turned.rotation.z = Math.atan2(shape.facing[1], shape.facing[0]) - Math.PI / 2;
  turned.position.set(shape.at[0], shape.at[1], 0);
  // first its depth alone, then its colour: so the parts of the body do not show through each other
  const parts = [];
  turned.traverse((o) => o.isMesh && parts.push(o));
  for (const part of parts) {
    const depth = new THREE.Mesh(part.geometry, new THREE.MeshBasicMaterial({ colorWrite: false }));
    depth.renderOrder = 1;
    part.renderOrder = 2;
    part.add(depth);
  }
  return turned;
}

export function machine(box) {
  const group = new THREE.Group();
  const mesh = new THREE.Mesh(new THREE.BoxGeometry(box.size, box.size, box.size), matte(COLOUR.machine));
  mesh.position.set(...box.centre);
  group.add(mesh, label(box.name, [box.centre[0], box.centre[1], box.centre[2] - box.size * 0.7], "scene-part", 1));
  return group;
}

export function draughtArrow(draught, words, near, size, scale = 1) {
  const way = vec(draught).normalize();
  const start = vec(near).addScaledVector(way, -scale * (size + 0.3)).add(new THREE.Vector3(0, 0, 0.42 * scale));
  const end = start.clone().addScaledVector(way, 0.5 * scale);
  const group = new THREE.Group();
  group.add(arrow(start.toArray(), end.toArray(), 0.009 * scale, plain(COLOUR.breeze, 0.85)));
  const over = start.clone().addScaledVector(way, 0.2 * scale).add(new THREE.Vector3(0, 0, 0.09 * scale));
  group.add(label(words, over.toArray(), "scene-draught", 2));
  return group;
}
