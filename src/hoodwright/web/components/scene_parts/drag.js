// A handle on what can be dragged: along the level through it, or up and down by its arrow or with Shift.
import { THREE } from "nicegui-scene";
import { COLOUR, vec, plain, dispose } from "hoodwright-scene/tools.js";
import { dimensionLine } from "hoodwright-scene/sources.js";

const RING = 0.03, ARROW = 0.075, FINGER = 0.036, TIP = 0.024;  // m, of a handle that is not scaled
const SCREEN = 0.36;  // of the distance to the eye in metres: so much a handle is scaled, never below 1
const STEP = 0.001;  // m: places are whole millimetres
const UP = new THREE.Vector3(0, 0, 1);

export class Drag {
  // host: three, canvas(), size(), draw(); told: move, end with (name, place).
  constructor(host, told) {
    Object.assign(this, { host, told, handles: new THREE.Group(), ray: new THREE.Raycaster() });
    this.held = this.measured = null;
    this.canvas = host.three.renderer.domElement;
    const [pointerdown, pointermove, pointerup] = [this.down, this.move, this.up].map((act) => act.bind(this));
    this.bound = { pointerdown, pointermove, pointerup };
    for (const [kind, act] of Object.entries(this.bound)) this.canvas.addEventListener(kind, act, { capture: true });
    this.canvas.addEventListener("pointercancel", this.bound.pointerup);
  }

  // Handles for these parts: { name, at }.
  show(parts) {
    if (this.held) return;
    this.clear();
    for (const part of parts) this.handles.add(handleOf(part));
    this.host.three.scene.add(this.handles);
    this.fit();
  }

  // Handles keep a size on the screen that a finger finds.
  fit() {
    const eye = this.host.three.camera.position;
    for (const handle of this.handles.children) {
      handle.scale.setScalar(Math.max(1, SCREEN * eye.distanceTo(handle.position)));
    }
  }

  clear() {
    dispose(this.handles);
    this.handles.clear();
  }

  aim(event) {
    const box = this.canvas.getBoundingClientRect();
    const x = (event.clientX - box.left) / box.width, y = (event.clientY - box.top) / box.height;
    this.ray.setFromCamera(new THREE.Vector2(2 * x - 1, 1 - 2 * y), this.host.three.camera);
  }

  hit(event) {
    this.aim(event);
    return this.ray.intersectObject(this.handles, true).find((one) => one.object.userData.grip);
  }

  down(event) {
    const hit = this.hit(event);
    if (!hit || event.button != 0) return;
    event.stopImmediatePropagation();
    event.preventDefault();
    this.canvas.setPointerCapture(event.pointerId);
    const handle = hit.object.parent, upright = hit.object.userData.grip == "upright";
    this.held = { handle, upright, name: handle.userData.name };
    this.host.three.controls.enabled = false;
    this.canvas.style.cursor = "grabbing";
    this.plane(this.held.upright || event.shiftKey);
  }

  // The plane in which the pointer moves now, and where it took hold of it.
  plane(upright) {
    const { held } = this, ahead = this.ray.ray.direction.clone().setZ(0).normalize();
    held.lifting = upright;
    held.from = held.handle.position.clone();
    held.plane = new THREE.Plane().setFromNormalAndCoplanarPoint(upright ? ahead : UP, held.from);
    held.grip = this.ray.ray.intersectPlane(held.plane, new THREE.Vector3()) ?? held.from.clone();
  }

  move(event) {
    if (!this.held) {
      this.canvas.style.cursor = event.buttons ? "" : this.hit(event) ? "grab" : "";
      return;
    }
    event.stopImmediatePropagation();
    const { held } = this;
    this.aim(event);
    const lifting = held.upright || event.shiftKey;
    if (lifting != held.lifting) this.plane(lifting);
    const here = this.ray.ray.intersectPlane(held.plane, new THREE.Vector3());
    if (!here) return;
    const place = held.from.clone().add(here.sub(held.grip));
    if (lifting) place.set(held.from.x, held.from.y, place.z);
    else place.z = held.from.z;
    const { size } = this.host.picture().room;
    held.at = place.toArray().map((c, n) => Math.round(Math.min(Math.max(c, 0), size[n]) / STEP) * STEP);
    held.handle.position.set(...held.at);
    this.told.move(held.name, held.at);
  }

  up(event) {
    if (!this.held) return;
    event.stopImmediatePropagation();
    const { name, at } = this.held;
    this.held = null;
    this.host.three.controls.enabled = true;
    this.canvas.style.cursor = "";
    this.measure(null);
    this.told.end(name, at);
  }

  // A dimension line with the distance now, while dragging.
  measure(line, hood) {
    if (this.measured) {
      this.host.three.scene.remove(this.measured);
      dispose(this.measured);
    }
    this.measured = line ? dimensionLine(line, hood) : null;
    if (this.measured) this.host.three.scene.add(this.measured);
  }

  dispose() {
    this.clear();
    this.measure(null);
    for (const [kind, act] of Object.entries(this.bound)) this.canvas.removeEventListener(kind, act, { capture: true });
  }
}

function handleOf({ name, at }) {
  const group = new THREE.Group(), copper = plain(COLOUR.copperBright, 0.85);
  const hidden = new THREE.MeshBasicMaterial({ visible: false });
  const ring = new THREE.Mesh(new THREE.TorusGeometry(RING, 0.0022, 8, 48), copper);
  const stem = new THREE.Mesh(new THREE.CylinderGeometry(0.0018, 0.0018, ARROW - RING / 2, 8), copper);
  stem.rotation.x = Math.PI / 2;
  stem.position.z = (ARROW + RING / 2) / 2;
  const head = new THREE.Mesh(new THREE.ConeGeometry(0.007, 0.018, 16), copper);
  head.rotation.x = Math.PI / 2;
  head.position.z = ARROW;
  const level = new THREE.Mesh(new THREE.SphereGeometry(FINGER, 12, 8), hidden);
  const upright = new THREE.Mesh(new THREE.SphereGeometry(TIP, 12, 8), hidden);
  upright.position.z = ARROW;
  level.userData.grip = "level";
  upright.userData.grip = "upright";
  copper.depthTest = false;
  for (const part of [ring, stem, head]) part.renderOrder = 8;
  group.add(ring, stem, head, level, upright);
  group.position.copy(vec(at));
  group.userData.name = name;
  return group;
}
