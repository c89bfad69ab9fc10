// Draws the ducts as a converging tree, and says which part was chosen. All places, words and widths come from the page;
// one part is in the order of the Tab key, and the arrow keys go on to the next part that lies that way.
const WAYS = { ArrowRight: [1, 0], ArrowLeft: [-1, 0], ArrowDown: [0, 1], ArrowUp: [0, -1] };
const ASIDE = 2.5; // how much farther off a part seems that does not lie straight ahead
const STEP = { "+": 1, "=": 1, "-": -1 };

export default {
  template: `
    <div class="duct-drawing" :class="{ old: old }">
      <svg :viewBox="'0 -26 ' + width + ' ' + (height + 26)" :style="{ width: width + 'px', height: height + 26 + 'px' }"
           role="group" :aria-label="about" @keydown="key">
        <g class="duct-lines">
          <g v-for="one in ducts" :key="one.name" class="duct" :class="one.classes" :data-part="one.name" role="button"
             :tabindex="one.name == here ? 0 : -1" :aria-label="one.about" :aria-pressed="String(one.name == chosen)"
             @click="choose(one.name)">
            <title>{{ one.about }}</title>
            <path class="reach" :d="one.path" />
            <path class="ring" :d="one.path" :style="{ strokeWidth: one.width + 8 + 'px' }" />
            <path class="band" :d="one.path" :style="{ strokeWidth: one.width + 'px' }" />
            <path v-if="one.pace" class="air" :d="one.path" :style="{ animationDuration: one.pace + 's' }" />
          </g>
        </g>
        <g class="duct-marks" aria-hidden="true">
          <g v-for="one in ducts" :key="one.name" :class="one.classes" @click="choose(one.name)">
            <g v-if="one.damper" class="damper" :class="{ set: one.damper.set }"
               :transform="'translate(' + one.damper.x + ' ' + one.damper.y + ')'">
              <circle r="9" /><line x1="-7" x2="7" y1="0" y2="0" :style="{ transform: 'rotate(' + one.damper.turn + 'deg)' }" />
            </g>
            <text v-for="line in one.lines" :x="line.x" :y="line.y" :class="line.classes">{{ line.words }}</text>
            <g v-for="mark in one.marks" class="trouble" :transform="'translate(' + mark.x + ' ' + mark.y + ')'">
              <g v-html="mark.shape"></g><text v-if="mark.words" x="22" y="13">{{ mark.words }}</text>
            </g>
          </g>
        </g>
        <g v-for="one in spots" :key="one.key" class="spot" :class="one.classes" :data-part="one.key" role="button"
           :tabindex="one.key == here ? 0 : -1" :aria-label="one.about" :aria-pressed="String(one.key == chosen)"
           :transform="'translate(' + one.x + ' ' + one.y + ')'" @click="choose(one.key)">
          <title>{{ one.about }}</title>
          <rect class="reach" :x="one.box[0]" :y="one.box[1]" :width="one.box[2]" :height="one.box[3]" rx="6" />
          <g v-html="one.shape"></g>
          <text v-for="line in one.lines" :x="line.x" :y="line.y" :class="line.classes">{{ line.words }}</text>
          <g v-for="mark in one.marks" class="trouble" :transform="'translate(' + mark.x + ' ' + mark.y + ')'">
            <g v-html="mark.shape"></g><text v-if="mark.words" x="22" y="13">{{ mark.words }}</text>
          </g>
        </g>
      </svg>
    </div>`,
  props: {
    width: { type: Number, default: 0 }, height: { type: Number, default: 0 }, about: String, chosen: String, old: Boolean,
    ducts: { type: Array, default: () => [] }, spots: { type: Array, default: () => [] },
  },
  data: () => ({ at: null }),
  computed: {
    places() { return [...this.ducts.map((one) => [one.name, one.at]), ...this.spots.map((one) => [one.key, [one.x, one.y]])]; },
    here() {
      const names = this.places.map(([name]) => name);
      return [this.at, this.chosen].find((name) => names.includes(name)) ?? names[0];
    },
  },
  watch: { chosen() { this.at = this.chosen; } },
  methods: {
    choose(name) { this.at = name; this.$emit("choose", name); },
    key(e) {
      const name = e.target.closest("[data-part]")?.dataset.part;
      if (!name) return;
      if (e.key == "Enter" || e.key == " ") this.choose(name);
      else if (e.key in STEP) this.$emit("step", { part: name, step: STEP[e.key] });
      else if (e.key in WAYS) this.go(name, WAYS[e.key]);
      else return;
      e.preventDefault();
    },
    go(name, [right, down]) {
      const [x, y] = this.places.find(([part]) => part == name)[1];
      let best = null, nearest = Infinity;
      for (const [part, place] of this.places) {
        const dx = place[0] - x, dy = place[1] - y;
        const ahead = dx * right + dy * down, beside = Math.abs(dx * down) + Math.abs(dy * right);
        const far = ahead + ASIDE * beside;
        if (part != name && ahead > 1 && far < nearest) [best, nearest] = [part, far];
      }
      if (best === null) return;
      this.at = best;
      this.$nextTick(() => this.$el.querySelector(`[data-part="${CSS.escape(best)}"]`)?.focus());
    },
  },
};
