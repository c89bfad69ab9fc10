// While something is dragged: its shapes go with the handle, and a dimension line tells the distance now.
import { vec } from "hoodwright-scene/tools.js";

const INCH = 0.0254, THIN = "\u2009";

export class Distance {
  constructor(host, drag) {
    Object.assign(this, { host, drag });
  }

  show(name, live, moved) {
    const { hoods, sources } = this.host.picture();
    const part = [...hoods, ...sources].find((one) => one.name == name);
    this.shift(name, vec(moved[name]).sub(vec(part.at)));
    const hood = hoods.find((one) => one.name == live.hood), source = sources.find((one) => one.name == live.source);
    if (!hood || !source) return;
    const start = moved[source.name] ?? source.at, end = moved[hood.name] ?? hood.at;
    const apart = vec(start).distanceTo(vec(end));
    if (apart < 1e-3) return;
    this.drag.measure({ start, end, words: this.words(apart), hood: hood.name }, { ...hood, at: end });
  }

  hide() { this.drag.measure(null); }

  // All that is drawn of a part; its own dimension lines are hidden meanwhile.
  shift(name, by) {
    for (const body of this.host.three.shapes.children) {
      if (body.userData.measure) body.visible = false;
      const own = body.userData.part == name || body.element?.dataset.part == name;
      if (!own) continue;
      body.userData.home ??= body.position.clone();
      body.position.copy(body.userData.home).add(by);
    }
  }

  // In inches where the page's own dimensions are.
  words(metres) {
    if (this.host.inches()) return `${(metres / INCH).toFixed(1)}${THIN}in`;
    return metres < 1 ? `${Math.round(1000 * metres)}${THIN}mm` : `${metres.toFixed(2)}${THIN}m`;
  }
}
