// Draws a workplace (plain shapes in metres, z up) with three.js, which NiceGUI serves from its own wheel.
// It renders on demand: after a new picture, a resize, or a turn of the view. Only smoke moves, and only while it runs.
import { THREE, OrbitControls, CSS2DRenderer } from "nicegui-scene";
import {
  COLOUR, EMPTY, LiveView, RAMP, besideStance, dimensionLine, dispose, draughtArrow, ductBody, hoodBody, hoodLabel, machine,
  person, pictureOf, roomBody, slab, sourceBody, sourceLabel, spread, stand, subject,
} from "hoodwright-scene";

const STEP = 0.01, BIG_STEP = 0.1, LINE_PICK = 0.02, FINE = 2;
const KEYS = {
  ArrowLeft: [-1, 0, 0], ArrowRight: [1, 0, 0], ArrowUp: [0, 1, 0], ArrowDown: [0, -1, 0],
  PageUp: [0, 0, 1], PageDown: [0, 0, -1],
};

export default {
  template: `
    <div class="scene" tabindex="0" role="application" :aria-label="about" @keydown="key">
      <canvas aria-hidden="true"></canvas>
      <div class="scene-labels" aria-hidden="true"></div>
      <div v-if="live?.url" class="scene-air">
        <div v-if="face.shown" class="scene-answer" :class="{ old: face.old }">
          <p role="status"><strong>{{ live.said || face.shown }}</strong>
            <span v-if="face.told"> captured, {{ face.interval }}</span></p>
          <p class="scene-banner">{{ face.banner }}</p>
        </div>
        <p v-if="face.fault" class="scene-fault" role="alert">{{ face.fault }}</p>
        <p v-if="face.doing" class="scene-doing" role="status">
          <progress :value="face.fraction" max="1" aria-hidden="true"></progress>{{ face.doing }}</p>
      </div>
      <div v-if="live?.layers?.length && legend.length" class="scene-legend">
        <div v-for="one in legend"><p>{{ one.words }}</p>
          <span>{{ one.low }}</span><i v-if="one.low" :style="{ background: ramp }"></i><span>{{ one.high }}</span></div>
      </div>
      <div class="scene-views">
        <button v-if="live?.url && face.ready" type="button" class="scene-play" @click="play">
          {{ face.playing ? "Pause the smoke" : "Let the smoke move" }}</button>
        <button type="button" @click="look('near')" :aria-pressed="view == 'near'">At the hood</button>
        <button type="button" @click="look('room')" :aria-pressed="view == 'room'">Whole room</button>
      </div>
    </div>`,
  props: {
    picture: Object, chosen: String, dimensions: Array, draught: String, about: String, live: Object, stance: Object,
  },
  data: () => ({ view: "near", face: { ...EMPTY }, ramp: RAMP }),
  computed: {
    legend() { return Object.values(this.face.legend ?? {}).filter(Boolean); },
  },

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
    this.air();
  },
  beforeUnmount() {
    this.three.air?.dispose();
    this.observer?.disconnect();
    this.three.controls?.dispose();
    this.three.renderer?.dispose();
  },
  watch: {
    picture(now, before) {
      this.draw();
      this.three.air?.follow(JSON.stringify(now) != JSON.stringify(before));
    },
    live: { deep: true, handler() { this.air(); } },
    dimensions() { this.draw(); },
    stance() { this.draw(); this.look(this.view); },
    chosen() { this.draw(); if (this.view == "near") this.look("near"); },
  },

  methods: {
    // The live air, once it is asked for.
    air() {
      if (!this.live || !this.three.scene || !this.picture) return;
      this.three.air ??= new LiveView({
        three: this.three, face: this.face, picture: () => this.picture,
        draw: (now) => (now ? this.render() : this.ask()),
        emit: (event, value) => this.$emit(event, value),
        inches: () => this.dimensions?.some((line) => /\d\s*(in|ft)\b/.test(line.words)),
      });
      this.three.air.want(JSON.parse(JSON.stringify(this.live)));
    },
    ask_air(anew) {
      this.three.air?.ask(anew);
      this.three.air?.askLayers();
    },
    play() {
      this.face.playing = !this.face.playing;
      this.three.air?.run();
    },
    said() {
      const { shown, told, interval, banner, old } = this.face;
      if (!this.live?.url || !shown || old) return [];
      return [told ? `${shown} captured` : this.live.said || shown, ...(told ? [interval] : []), banner];
    },
    take(width, kind) {
      this.render();
      const labels = this.$el.querySelector(".scene-labels");
      return pictureOf(this.three.renderer.domElement, labels, this.said(), width, kind);
    },
    still() { return this.three.scene ? this.finely(() => this.take(Infinity, "png")) : ""; },
    // For a picture to keep: twice as fine as on a plain screen.
    finely(act) {
      const { renderer, air } = this.three, usual = renderer.getPixelRatio();
      const fit = (ratio) => {
        renderer.setPixelRatio(ratio);
        air?.cloud.refresh(renderer.domElement.height);
      };
      fit(Math.max(FINE, usual));
      try {
        return act();
      } finally {
        fit(usual);
        this.ask();
      }
    },
    frames(count, every, width = 640) {
      const { air } = this.three;
      return air ? air.frames(count, every, () => this.take(width, "jpeg")) : [];
    },
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
      if (shapes) { scene.remove(shapes); dispose(shapes); }
      const all = new THREE.Group(), picture = this.picture;
      all.add(roomBody(picture.room));
      picture.plates.forEach((plate) => all.add(slab(plate)));
      picture.people.forEach((shape) => all.add(person(shape)));
      picture.ducts.forEach((duct) => all.add(ductBody(duct, picture.hoods)));
      picture.boxes.forEach((box) => all.add(machine(box)));
      picture.hoods.forEach((hood) => {
        const chosen = hood.name == this.chosen;
        all.add(hoodBody(hood, chosen), hoodLabel(hood, chosen));
      });
      picture.sources.forEach((source) => {
        const chosen = source.name == this.chosen;
        const served = picture.hoods.some((hood) => hood.name == this.chosen && hood.serves.includes(source.name));
        all.add(sourceBody(source, chosen));
        if (chosen || served) all.add(sourceLabel(source, chosen));
      });
      all.traverse((o) => {
        if (o.isMesh && !o.material.transparent && o.material.colorWrite) { o.castShadow = !o.receiveShadow; o.receiveShadow = true; }
      });
      this.dimensions?.forEach((line) => all.add(dimensionLine(line, picture.hoods.find((hood) => hood.name == line.hood))));
      if (this.draught && Math.hypot(...picture.room.draught ?? []) > 0) {
        const { middle, size } = subject(picture, this.chosen), { stance } = this;
        const arrow = stance ? besideStance(stance) : [middle.toArray(), Math.max(0.72, size)];
        all.add(draughtArrow(picture.room.draught, this.draught, ...arrow));
      }
      scene.add(all);
      this.three.shapes = all;
      this.report(all);
      this.light();
      this.ask();
    },
    report(all) {
      // what stands in the scene now, for tests and for whoever asks the page
      const found = [];
      all.traverse((o) => {
        if (!o.userData.part) return;
        let meshes = 0;
        o.traverse((inner) => { meshes += inner.isMesh ? 1 : 0; });
        found.push(`${o.userData.kind}: ${o.userData.part} (${meshes})`);
      });
      this.$el.dataset.parts = found.join("; ");
    },
    light() {
      const [x, y, z] = this.picture.room.size, { sun } = this.three, reach = Math.max(x, y);
      sun.position.set(x * 0.8, -y * 0.7, z * 2.6);
      sun.target.position.set(x / 2, y / 2, 0);
      Object.assign(sun.shadow.camera, { left: -reach, right: reach, top: reach, bottom: -reach, near: 0.1, far: 4 * reach + 10 });
      sun.shadow.camera.updateProjectionMatrix();
    },
    look(view) {
      this.view = view;
      this.$el.classList.toggle("far", view == "room");
      const { camera, controls } = this.three;
      if (!camera || !this.picture) return;
      stand(camera, controls, this.picture, this.chosen, view, this.stance);
      this.ask();
    },
    resize() {
      const { renderer, labels, camera } = this.three;
      const { clientWidth: w, clientHeight: h } = this.$el;
      if (!w || !h) return;
      renderer.setSize(w, h, false);
      labels.setSize(w, h);
      camera.aspect = w / h;
      camera.updateProjectionMatrix();
      this.look(this.view);
      this.ask();
    },
    ask() {
      if (this.asked) return;
      this.asked = true;
      requestAnimationFrame(() => this.render());
    },
    render() {
      this.asked = false;
      const { renderer, labels, scene, camera, air } = this.three;
      air?.drag.fit();
      renderer.render(scene, camera);
      labels.render(scene, camera);
      spread(scene, camera, this.$el.clientWidth, this.$el.clientHeight);
      this.$el.dataset.drawn = String(Number(this.$el.dataset.drawn ?? 0) + 1);
    },
    pick(event) {
      const box = this.$el.getBoundingClientRect();
      const at = new THREE.Vector2(((event.clientX - box.left) / box.width) * 2 - 1, 1 - ((event.clientY - box.top) / box.height) * 2);
      const ray = new THREE.Raycaster();
      ray.params.Line.threshold = LINE_PICK;
      ray.setFromCamera(at, this.three.camera);
      const hits = [];
      for (const hit of ray.intersectObject(this.three.shapes, true)) {
        for (let o = hit.object; o; o = o.parent) if (o.userData.part) hits.push(o.userData);
      }
      // a source seen through its half-transparent hood is what was meant
      const first = this.picture.hoods.find((hood) => hood.name == hits[0]?.part);
      const inside = first?.panels.length && hits.find((hit) => hit.kind == "source" && first.serves.includes(hit.part));
      const meant = inside || hits[0];
      if (meant) this.$emit("choose", meant.part);
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
