// The live air in the scene: asks while something is dragged, lets smoke move, lays the chosen layers over it.
import { THREE } from "nicegui-scene";
import { LiveClient } from "hoodwright-scene/live.js";
import { Smoke, readField } from "hoodwright-scene/smoke_core.js";
import { SmokeCloud } from "hoodwright-scene/smoke.js";
import { layerBody, legendOf } from "hoodwright-scene/layers.js";
import { Drag } from "hoodwright-scene/drag.js";
import { dispose } from "hoodwright-scene/tools.js";
import { Distance } from "hoodwright-scene/distance.js";

const MOST = 20000, FIRST = 6000, FEWEST = 3000, SLOW = 50, QUICK = 25;  // particles; ms a frame
const SHORTEST_FRAME = 1 / 120, LONGEST_FRAME = 0.4;  // s: more was no picture but a pause
const DEVELOPED = 5, GLANCE = 1, DEVELOP_STEP = 1 / 20;  // s of smoke before a picture, and while something is dragged
const GEOMETRY = ["at", "facing", "across", "half_width", "half_height", "flange", "panels"];
export const EMPTY = {
  shown: "", interval: "", banner: "", told: false, old: false, doing: "", fraction: 0, fault: "", playing: true,
  ready: false, legend: null,
};

export class LiveView {
  // host: three, el, face (what the overlay shows), picture(), draw(), emit(event, value).
  constructor(host) {
    this.host = host;
    this.moved = {};  // places that are not in the draft yet
    this.layers = new Map();
    this.smoke = new Smoke({ most: MOST });
    this.smoke.limit = FIRST;
    this.cloud = new SmokeCloud(this.smoke);
    host.three.scene.add(this.cloud.points);
    this.drag = new Drag(host, { move: (...told) => this.dragging(...told), end: (...told) => this.dropped(...told) });
    this.distance = new Distance(host, this.drag);
    this.calm = window.matchMedia("(prefers-reduced-motion: reduce)");
    host.face.playing = !this.calm.matches;
    this.onHidden = () => this.run();
    document.addEventListener("visibilitychange", this.onHidden);
  }

  // What the page wants: see Scene.live.
  want(live) {
    const before = this.live;
    this.live = live;
    if (live.url != before?.url) this.connect(live.url);
    if (["url", "hood", "source"].some((key) => live[key] != before?.[key])) this.begin();
    if (before && before.running != live.running) this.host.face.playing = live.running;
    const asked = ({ url, hood, source, flow, draught }) => JSON.stringify([url, hood, source, flow, draught]);
    if (!before || asked(live) != asked(before)) this.ask();
    if (before && asked(live) != asked(before)) this.askLayers();
    this.cloud.points.visible = Boolean(live.url && live.smoke);
    this.showLayers(before);
    this.showHandles();
    this.run();
  }

  connect(url) {
    this.client?.close();
    this.client = url ? new LiveClient(url, (message, wish) => this.hear(message, wish)) : null;
    this.field = null;
  }

  // Another hood or source: what was said and seen of the last one goes.
  begin() {
    this.fresh = true;
    this.smoke.forget();
    this.cloud.refresh(this.tall());
    Object.assign(this.host.face, { shown: "", fault: "", old: false });
  }

  // The draft's picture is another: what was dragged is in it now, or was refused.
  follow(changed) {
    if (this.drag.held || !(changed || Object.keys(this.moved).length)) return;
    this.moved = {};
    if (this.live) this.ask();
    this.askLayers();
    this.showHandles();
  }

  ask(anew = false) {
    if (!this.client || !this.live.hood || !this.live.source) return;
    if (anew) this.field = null;
    const body = this.wish("air");
    body.field = this.field != this.geometry();
    this.host.face.old = Boolean(this.host.face.shown);
    this.client.wish("air", body);
  }

  wish(ask) {
    const { hood, source, flow, draught } = this.live, place = (name) => this.moved[name] ?? null;
    return { ask, hood, source, source_at: place(source), hood_at: place(hood), flow, draught };
  }

  // All that shapes the air except flows: where this is another, the air must be sent anew.
  geometry() {
    const { room, plates, people, hoods } = this.host.picture(), { live, moved } = this;
    const stand = hoods.map((hood) => GEOMETRY.map((key) => (key == "at" ? moved[hood.name] ?? hood.at : hood[key])));
    return JSON.stringify([live.hood, room.size, plates, people, stand]);
  }

  hear(message, wish) {
    if (message instanceof ArrayBuffer) return this.breathe(message, wish);
    return this[`hear_${message.kind}`]?.(message, wish);
  }

  breathe(buffer) {
    const field = readField(buffer), { size } = this.host.picture().room;
    field.header.room = [[0, 0, 0], size];
    this.smoke.breathe(field);
    this.field = this.geometry();
  }

  hear_doing({ fraction, words }) {
    Object.assign(this.host.face, { doing: words, fraction, fault: "" });
    this.host.emit("doing", { fraction, words });
  }

  hear_stream(message) {
    this.smoke.give(message);
    if (this.fresh || !this.running) this.develop(this.drag.held ? GLANCE : DEVELOPED);
    this.fresh = false;
    this.host.face.ready = true;
    this.host.emit("field_ready", {});
    this.run();
    this.host.draw();
  }

  hear_share(message) {
    const waits = this.client.wishes.has("air");
    const { shown, interval, banner, told } = message;
    Object.assign(this.host.face, { shown, interval, banner, told, old: waits, doing: "", fault: "" });
    this.host.emit("share", message);
  }

  hear_fault({ words }, wish) {
    Object.assign(this.host.face, { fault: words, doing: "" });
    if (wish?.body.ask == "air") this.host.face.old = true;
    this.host.emit("fault", { words });
  }

  hear_away({ words }) {
    Object.assign(this.host.face, { doing: words, fraction: 0, old: true });
    this.field = null;
  }

  hear_layer(message) {
    this.takeAway(message.layer);
    this.host.face.doing = "";
    if (!this.live.layers.includes(message.layer)) return;
    const body = layerBody(message);
    this.layers.set(message.layer, body);
    this.host.three.scene.add(body);
    this.host.face.legend = { ...this.host.face.legend, [message.layer]: legendOf(message, this.host.inches()) };
    this.host.emit("layer", { layer: message.layer, words: message.words });
    this.host.draw();
  }

  showLayers(before) {
    const plane = before && before.plane != this.live.plane;
    if (before && String(before.layers) != String(this.live.layers)) this.host.face.fault = "";
    for (const name of [...this.layers.keys()]) if (!this.live.layers.includes(name) || plane) this.takeAway(name);
    for (const name of this.live.layers) if (plane || !before?.layers.includes(name)) this.askLayer(name);
  }

  askLayers() { for (const name of this.live?.layers ?? []) this.askLayer(name); }

  askLayer(name) {
    if (!this.client || this.drag.held) return;
    this.client.wish(name, { ...this.wish("layer"), layer: name, plane: this.live.plane });
  }

  takeAway(name) {
    const body = this.layers.get(name);
    if (!body) return;
    this.host.three.scene.remove(body);
    dispose(body);
    this.layers.delete(name);
    const { [name]: _, ...rest } = this.host.face.legend ?? {};
    this.host.face.legend = rest;
    this.host.draw();
  }

  showHandles() {
    const { hoods, sources } = this.host.picture(), names = [this.live?.hood, this.live?.source];
    const parts = this.live?.fixed ? [] : [...hoods, ...sources].filter((part) => names.includes(part.name));
    this.drag.show(parts.map(({ name, at }) => ({ name, at: this.moved[name] ?? at })));
    this.host.draw();
  }

  dragging(name, at) {
    this.moved[name] = at;
    if (name == this.live.source) this.smoke.carry(at);
    this.distance.show(name, this.live, this.moved);
    for (const layer of [...this.layers.keys()]) this.takeAway(layer);
    this.ask();
    this.host.draw();
  }

  dropped(name, at) {
    this.distance.hide();
    if (at) {
      this.host.emit("moved", { name, at });
      this.askLayers();
    }
    this.host.draw();
  }

  // Smoke as it is after a while, so that a picture that stands still shows it whole.
  develop(seconds) {
    this.smoke.forget();
    for (let time = 0; time < seconds; time += DEVELOP_STEP) this.smoke.step(DEVELOP_STEP);
    this.cloud.refresh(this.tall());
  }

  tall() { return this.host.three.renderer.domElement.height; }

  get running() {
    const { running, smoke, url } = this.live ?? {}, wanted = running && smoke && url && this.host.face.playing;
    return Boolean(wanted && this.smoke.ready && !document.hidden && !this.keeping);
  }

  run() {
    if (this.looping || !this.running) return;
    this.looping = true;
    this.last = performance.now();
    requestAnimationFrame((now) => this.frame(now));
  }

  frame(now) {
    this.looping = this.running;
    if (!this.looping) return;
    const seconds = (now - this.last) / 1000;
    if (seconds >= SHORTEST_FRAME) {
      this.last = now;
      this.adapt(1000 * seconds);
      this.smoke.step(Math.min(seconds, LONGEST_FRAME));
      this.cloud.refresh(this.tall());
      this.host.draw(true);
    }
    requestAnimationFrame((next) => this.frame(next));
  }

  // Fewer particles where pictures come slowly, more again where there is time.
  adapt(spent) {
    this.spent = 0.8 * (this.spent ?? spent) + 0.2 * Math.min(spent, 1000 * LONGEST_FRAME);
    const { smoke } = this;
    if (this.spent > SLOW) smoke.limit = Math.max(FEWEST, Math.floor(0.9 * smoke.limit));
    else if (this.spent < QUICK) smoke.limit = Math.min(MOST, Math.ceil(1.01 * smoke.limit));
  }

  async frames(count, everySeconds, take) {
    const kept = [];
    this.keeping = true;
    for (let n = 0; n < count; n++) {
      if (n > 0) this.smoke.step(everySeconds);
      this.cloud.refresh(this.tall());
      kept.push(take());
      if (n % 8 == 7) await new Promise((done) => setTimeout(done, 0));
    }
    this.keeping = false;
    this.run();
    return kept;
  }

  dispose() {
    document.removeEventListener("visibilitychange", this.onHidden);
    this.client?.close();
    this.drag.dispose();
    this.cloud.dispose();
    for (const name of [...this.layers.keys()]) this.takeAway(name);
  }
}
