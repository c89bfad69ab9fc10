// Draws a workplace (plain shapes in metres, z up) with three.js, which NiceGUI serves from its own wheel.
// It renders on demand: after a new picture, a resize, or a turn of the view. Nothing moves by itself.
import { THREE, OrbitControls, CSS2DRenderer, CSS2DObject } from "nicegui-scene";

const COLOUR = {
  slate: 0x1e2a31, floor: 0x36464f, grid: 0x6d7f88, wall: 0x3f515b, wood: 0xcdb892, legs: 0x7d8a90,
  person: 0xc9d2d6, copper: 0xb4622d, copperBright: 0xe8935a, air: 0x2f7f8f, duct: 0x4fa3b3, dark: 0x10181c,
  source: 0xf4f1e8, machine: 0x7d8b92, line: 0xfbf9f4,
};
const STEP = 0.01, BIG_STEP = 0.1, HOOD_DEPTH = 0.12;
const KEYS = {
  ArrowLeft: [-1, 0, 0], ArrowRight: [1, 0, 0], ArrowUp: [0, 1, 0], ArrowDown: [0, -1, 0],
  PageUp: [0, 0, 1], PageDown: [0, 0, -1],
};

const vec = (p) => new THREE.Vector3(...p);
const matte = (color, more = {}) => new THREE.MeshStandardMaterial({ color, roughness: 0.9, metalness: 0, ...more });

function between(a, b, radius, material, sides = 20) {
  const along = vec(b).sub(vec(a));
  const mesh = new THREE.Mesh(new THREE.CylinderGeometry(radius, radius, along.length(), sides), material);
  mesh.position.copy(vec(a)).addScaledVector(along, 0.5);
  mesh.quaternion.setFromUnitVectors(new THREE.Vector3(0, 1, 0), along.normalize());
  return mesh;
}

function ball(at, radius, material) {
  const mesh = new THREE.Mesh(new THREE.SphereGeometry(radius, 24, 16), material);
  mesh.position.set(...at);
  return mesh;
}

function slab(plate) {
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
      group.add(between([top.x, top.y, 0], [top.x, top.y, top.z - 0.03], 0.025, matte(COLOUR.legs), 8));
    }
  }
  group.add(box);
  return group;
}

function person(shape) {
  const group = new THREE.Group();
  const skin = matte(COLOUR.person, { transparent: true, opacity: 0.42 });
  const eyes = shape.breathing_height + 0.1;
  const body = new THREE.Mesh(new THREE.CapsuleGeometry(0.17, eyes * 0.42, 6, 20), skin);
  body.rotation.x = Math.PI / 2;
  body.position.z = eyes * 0.62;
  body.scale.set(1.15, 1, 0.72);
  const head = ball([0.04 * shape.facing[0], 0.04 * shape.facing[1], eyes], 0.11, skin);
  head.scale.z = 1.2;
  group.add(body, head);
  for (const side of [-0.09, 0.09]) group.add(between([side, 0, 0], [side, 0, eyes * 0.42], 0.075, skin));
  const turned = new THREE.Group();
  turned.add(group);
  turned.rotation.z = Math.atan2(shape.facing[1], shape.facing[0]) - Math.PI / 2;
  head.position.set(0, 0.04, eyes);
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

function outline(hood, grow) {
  const shape = new THREE.Shape();
  const w = hood.half_width + grow, h = hood.half_height + grow;
  if (hood.is_round) shape.absarc(0, 0, w, 0, 2 * Math.PI);
  else shape.moveTo(-w, -h).lineTo(w, -h).lineTo(w, h).lineTo(-w, h).lineTo(-w, -h);
  return shape;
}

function hoodBody(hood, chosen) {
  const group = new THREE.Group();
  const copper = matte(chosen ? COLOUR.copperBright : COLOUR.copper, { roughness: 0.55, metalness: 0.15, side: THREE.DoubleSide });
  const rim = outline(hood, Math.max(hood.flange, 0.006));
  rim.holes.push(outline(hood, 0));
  const flange = new THREE.Mesh(new THREE.ExtrudeGeometry(rim, { depth: 0.004, bevelEnabled: false, curveSegments: 40 }), copper);
  flange.position.z = -0.004;
  const face = new THREE.Mesh(new THREE.ShapeGeometry(outline(hood, 0), 40), matte(COLOUR.dark, { side: THREE.DoubleSide }));
  face.position.z = -0.03;
  const wall = new THREE.Mesh(
    new THREE.ExtrudeGeometry(hollow(hood), { depth: HOOD_DEPTH, bevelEnabled: false, curveSegments: 40 }), copper);
  wall.position.z = -0.004 - HOOD_DEPTH;
  const edge = new THREE.LineLoop(
    new THREE.BufferGeometry().setFromPoints(outline(hood, 0).getPoints(40)),
    new THREE.LineBasicMaterial({ color: chosen ? COLOUR.line : COLOUR.copperBright }));
  edge.position.z = 0.001;
  group.add(flange, face, wall, edge);
  group.quaternion.setFromRotationMatrix(
    new THREE.Matrix4().makeBasis(right(hood), vec(hood.up), vec(hood.facing)));
  group.position.set(...hood.at);
  return group;
}

const right = (hood) => vec(hood.up).cross(vec(hood.facing));

function hollow(hood) {
  const shape = outline(hood, 0.004);
  shape.holes.push(outline(hood, 0));
  return shape;
}

function sourceBody(source, chosen) {
  const group = new THREE.Group();
  group.add(ball(source.at, 0.018, matte(COLOUR.source, { emissive: COLOUR.source, emissiveIntensity: 0.5 })));
  for (const [size, opacity] of [[0.035, 0.28], [0.06, 0.12]]) {
    group.add(ball(source.at, chosen ? size * 1.25 : size,
      new THREE.MeshBasicMaterial({ color: COLOUR.source, transparent: true, opacity, depthWrite: false })));
  }
  return group;
}

function ductBody(duct, fromHood) {
  const group = new THREE.Group();
  const steel = matte(COLOUR.duct, { roughness: 0.65 });
  const points = duct.points.map(vec);
  if (fromHood) points[0].lerp(points[1], Math.min(0.9, HOOD_DEPTH / points[0].distanceTo(points[1])));
  points.forEach((point, i) => {
    if (i > 0) group.add(between(points[i - 1].toArray(), point.toArray(), duct.diameter / 2, steel, 24));
    if (i > 0 && i < points.length - 1) group.add(ball(point.toArray(), duct.diameter / 2, steel));
  });
  return group;
}

function roomBody(room, picture) {
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
    const wall = new THREE.Mesh(new THREE.PlaneGeometry(w, h),
      matte(COLOUR.wall, { transparent: true, opacity: 0.45, side: THREE.DoubleSide, depthWrite: false }));
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

function metreGrid(x, y) {
  const points = [];
  for (let i = 0; i <= x + 1e-9; i++) points.push(new THREE.Vector3(i, 0, 0), new THREE.Vector3(i, y, 0));
  for (let j = 0; j <= y + 1e-9; j++) points.push(new THREE.Vector3(0, j, 0), new THREE.Vector3(x, j, 0));
  return new THREE.LineSegments(new THREE.BufferGeometry().setFromPoints(points),
    new THREE.LineBasicMaterial({ color: COLOUR.grid, transparent: true, opacity: 0.55 }));
}

function dimensionLine(line, rim) {
  const group = new THREE.Group();
  const a = vec(line.start), b = vec(line.end), along = b.clone().sub(a);
  const up = new THREE.Vector3(0, 0, 1);
  const lift = Math.abs(along.clone().normalize().z) > 0.9 ? new THREE.Vector3(1, 0, 0) : up;
  const raise = lift.clone().multiplyScalar(rim + 0.14), tick = lift.clone().multiplyScalar(rim + 0.17);
  const p = a.clone().add(raise), q = b.clone().add(raise);
  const points = [a, a.clone().add(tick), b, b.clone().add(tick), p, q];
  group.add(new THREE.LineSegments(new THREE.BufferGeometry().setFromPoints(points),
    new THREE.LineBasicMaterial({ color: COLOUR.line, depthTest: false, transparent: true, opacity: 0.9 })));
  group.add(label(line.words, p.clone().add(q).multiplyScalar(0.5).addScaledVector(lift, 0.05).toArray(), "scene-measure"));
  group.renderOrder = 5;
  return group;
}

function draughtArrow(draught, near, words) {
  const way = vec(draught).normalize();
  const start = vec(near).addScaledVector(way, -1.05).add(new THREE.Vector3(0, 0, 0.42));
  const group = new THREE.Group();
  const pale = new THREE.MeshBasicMaterial({ color: 0xbfd9de, transparent: true, opacity: 0.85 });
  const end = start.clone().addScaledVector(way, 0.4);
  group.add(between(start.toArray(), end.toArray(), 0.009, pale, 8));
  const head = new THREE.Mesh(new THREE.ConeGeometry(0.035, 0.1, 16), pale);
  head.position.copy(end).addScaledVector(way, 0.05);
  head.quaternion.setFromUnitVectors(new THREE.Vector3(0, 1, 0), way);
  group.add(head, label(words, start.clone().addScaledVector(way, 0.2).add(new THREE.Vector3(0, 0, 0.09)).toArray(), "scene-draught"));
  return group;
}

function label(words, at, kind) {
  const element = document.createElement("div");
  element.className = `scene-label ${kind}`;
  element.textContent = words;
  element.dataset.part = words;
  const made = new CSS2DObject(element);
  made.position.set(...at);
  return made;
}

function named(object, name) {
  object.userData.part = name;
  return object;
}

export default {
  template: `
    <div class="scene" tabindex="0" role="application" :aria-label="about" @keydown="key">
      <canvas aria-hidden="true"></canvas>
      <div class="scene-labels" aria-hidden="true"></div>
      <div class="scene-views">
        <button type="button" @click="look('near')" :aria-pressed="view == 'near'">At the hood</button>
        <button type="button" @click="look('room')" :aria-pressed="view == 'room'">Whole room</button>
      </div>
    </div>`,
  props: { picture: Object, chosen: String, dimensions: Array, draught: String, about: String },
  data: () => ({ view: "near" }),

  mounted() {
    const canvas = this.$el.querySelector("canvas");
    this.three = {};
    try {
      this.three.renderer = new THREE.WebGLRenderer({ canvas, antialias: true });
    } catch {
      this.$el.classList.add("blind");
      this.$emit("blind");
      return;
    }
    this.$el.querySelector(".scene-labels").addEventListener("click", (e) => {
      if (e.target.matches(".scene-hood, .scene-source")) this.$emit("choose", e.target.dataset.part);
    });
    this.build();
    this.observer = new ResizeObserver(() => this.resize());
    this.observer.observe(this.$el);
    this.draw();
    this.look("near");
  },
  beforeUnmount() {
    this.observer?.disconnect();
    this.three.controls?.dispose();
    this.three.renderer?.dispose();
  },
  watch: {
    picture() { this.draw(); },
    dimensions() { this.draw(); },
    chosen() { this.draw(); if (this.view == "near") this.look("near"); },
  },

  methods: {
    build() {
      const { renderer } = this.three;
      renderer.setPixelRatio(Math.min(window.devicePixelRatio, 2));
      renderer.setClearColor(COLOUR.slate);
      renderer.shadowMap.enabled = true;
      renderer.shadowMap.type = THREE.PCFSoftShadowMap;
      const scene = new THREE.Scene();
      scene.add(new THREE.HemisphereLight(0xfdf8ee, 0x6b7a80, 2.4));
      const sun = new THREE.DirectionalLight(0xfff4e2, 2.0);
      sun.castShadow = true;
      sun.shadow.mapSize.set(1024, 1024);
      sun.shadow.radius = 6;
      sun.shadow.bias = -0.0005;
      sun.shadow.normalBias = 0.02;
      scene.add(sun, sun.target);
      const camera = new THREE.PerspectiveCamera(34, 1, 0.05, 100);
      camera.up.set(0, 0, 1);
      const controls = new OrbitControls(camera, renderer.domElement);
      controls.enableDamping = false;
      controls.maxPolarAngle = Math.PI / 2 - 0.02;
      controls.minDistance = 0.4;
      controls.maxDistance = 30;
      controls.addEventListener("change", () => this.ask());
      const labels = new CSS2DRenderer({ element: this.$el.querySelector(".scene-labels") });
      Object.assign(this.three, { scene, sun, camera, controls, labels });
      let pressed = null;
      renderer.domElement.addEventListener("pointerdown", (e) => (pressed = [e.clientX, e.clientY]));
      renderer.domElement.addEventListener("pointerup", (e) => {
        if (pressed && Math.hypot(e.clientX - pressed[0], e.clientY - pressed[1]) < 5) this.pick(e);
        pressed = null;
      });
    },
    draw() {
      if (!this.three.scene || !this.picture) return;
      const { scene, shapes } = this.three;
      if (shapes) { scene.remove(shapes); shapes.traverse((o) => { o.geometry?.dispose(); o.material?.dispose?.(); o.element?.remove(); }); }
      const all = new THREE.Group(), picture = this.picture;
      all.add(roomBody(picture.room, picture));
      picture.plates.forEach((plate) => all.add(slab(plate)));
      picture.people.forEach((shape) => all.add(person(shape)));
      const mouths = picture.hoods.map((hood) => String(hood.at));
      picture.ducts.forEach((duct) => all.add(ductBody(duct, mouths.includes(String(duct.points[0])))));
      picture.boxes.forEach((box) => {
        const mesh = new THREE.Mesh(new THREE.BoxGeometry(box.size, box.size, box.size), matte(COLOUR.machine));
        mesh.position.set(...box.centre);
        all.add(mesh, label(box.name, [box.centre[0], box.centre[1], box.centre[2] - box.size * 0.7], "scene-part"));
      });
      picture.hoods.forEach((hood) => {
        all.add(named(hoodBody(hood, hood.name == this.chosen), hood.name));
        const over = hood.half_height + hood.flange + 0.05;
        all.add(label(hood.name, vec(hood.at).addScaledVector(vec(hood.up), over).addScaledVector(vec(hood.facing), -0.1).toArray(), "scene-hood"));
      });
      picture.sources.forEach((source) => {
        all.add(named(sourceBody(source, source.name == this.chosen), source.name));
        all.add(label(source.name, [source.at[0], source.at[1], source.at[2] - 0.09], "scene-source"));
      });
      all.traverse((o) => { if (o.isMesh && !o.material.transparent && o.material.colorWrite) { o.castShadow = !o.receiveShadow; o.receiveShadow = true; } });
      const rims = new Map(picture.hoods.map((hood) => [String(hood.at), hood.half_height + hood.flange]));
      this.dimensions?.forEach((line) => all.add(dimensionLine(line, rims.get(String(line.end)) ?? 0)));
      if (picture.room.draught && this.draught) all.add(draughtArrow(picture.room.draught, this.focus(), this.draught));
      scene.add(all);
      this.three.shapes = all;
      this.light();
      this.ask();
    },
    light() {
      const [x, y, z] = this.picture.room.size, { sun } = this.three, reach = Math.max(x, y);
      sun.position.set(x * 0.8, -y * 0.7, z * 2.6);
      sun.target.position.set(x / 2, y / 2, 0);
      Object.assign(sun.shadow.camera, { left: -reach, right: reach, top: reach, bottom: -reach, near: 0.1, far: 4 * reach + 10 });
      sun.shadow.camera.updateProjectionMatrix();
    },
    focus() {
      const { hoods, sources } = this.picture;
      const hood = hoods.find((h) => h.name == this.chosen) ?? hoods.find((h) => h.serves.includes(this.chosen)) ?? hoods[0];
      const source = sources.find((s) => s.name == this.chosen) ?? sources.find((s) => hood?.serves.includes(s.name));
      const places = [hood?.at, source?.at].filter(Boolean).map(vec);
      if (!places.length) return this.picture.room.size.map((side) => side / 2);
      return places.reduce((sum, p) => sum.add(p), new THREE.Vector3()).divideScalar(places.length).toArray();
    },
    look(view) {
      this.view = view;
      this.$el.classList.toggle("far", view == "room");
      const { camera, controls } = this.three;
      if (!camera || !this.picture) return;
      const [x, y, z] = this.picture.room.size;
      const narrow = Math.max(1, 1.35 / camera.aspect);
      const target = view == "room" ? new THREE.Vector3(x / 2, y / 2, z * 0.32) : vec(this.focus()).add(new THREE.Vector3(0.05, 0, 0.02));
      const from = view == "room"
        ? new THREE.Vector3(0.32, -1, 0.5).normalize().multiplyScalar(Math.hypot(x, y, z) * 1.12 * narrow)
        : new THREE.Vector3(1.0, -0.8, 0.5).normalize().multiplyScalar(2.9 * narrow);
      controls.target.copy(target);
      camera.position.copy(target).add(from);
      controls.update();
      this.ask();
    },
    resize() {
      const { renderer, labels, camera } = this.three;
      const { clientWidth: w, clientHeight: h } = this.$el;
      if (!w || !h) return;
      renderer.setSize(w, h, false);
      labels.setSize(w, h);
      const before = camera.aspect;
      camera.aspect = w / h;
      camera.updateProjectionMatrix();
      if (Math.abs(before - camera.aspect) > 0.01) this.look(this.view);
      this.ask();
    },
    ask() {
      if (this.asked) return;
      this.asked = true;
      requestAnimationFrame(() => {
        this.asked = false;
        const { renderer, labels, scene, camera } = this.three;
        renderer.render(scene, camera);
        labels.render(scene, camera);
        this.$el.dataset.drawn = String(Number(this.$el.dataset.drawn ?? 0) + 1);
      });
    },
    pick(event) {
      const box = this.$el.getBoundingClientRect();
      const at = new THREE.Vector2(((event.clientX - box.left) / box.width) * 2 - 1, 1 - ((event.clientY - box.top) / box.height) * 2);
      const ray = new THREE.Raycaster();
      ray.setFromCamera(at, this.three.camera);
      for (const hit of ray.intersectObject(this.three.shapes, true)) {
        for (let o = hit.object; o; o = o.parent) if (o.userData.part) return this.$emit("choose", o.userData.part);
      }
    },
    key(event) {
      const way = KEYS[event.key];
      if (!way || event.target != this.$el || event.altKey || event.ctrlKey || event.metaKey) return;
      event.preventDefault();
      const size = event.shiftKey ? BIG_STEP : STEP;
      this.$emit("step", way.map((w) => w * size));
    },
  },
};
