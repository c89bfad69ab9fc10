// Where smoke starts: over the source's extent, and over the opening of its stream (as flow/release.py).
import { even } from "./smoke_chance.js";

const WIDEST = 0.9;  // of the opening's radius
const FIRST = 101;  // the first even number that is drawn of a particle's key, far from those of its motion

export class Starts {
  constructor({ form, points, radius, direction, path }) {
    this.form = form;
    this.points = points;
    this.flows = (path ?? []).length > 1;
    this.radius = this.flows ? WIDEST * radius : 0;
    this.middle = [0, 1, 2].map((c) => points.reduce((sum, p) => sum + p[c], 0) / points.length);
    this.pieces = points.slice(1).map((p, n) => Math.hypot(...p.map((x, c) => x - points[n][c])));
    this.whole = this.pieces.reduce((sum, piece) => sum + piece, 0);
    [this.first, this.second] = across(direction ?? [0, 0, 1]);
    this.at = [0, 0, 0];
  }

  // A place in `places` at `o`; in `shift` how far the stream's own beginning lies from its mean one.
  draw(key, places, shift, o) {
    const { at, first, second, middle, radius } = this;
    this.onExtent(key);
    const far = radius * Math.sqrt(even(key, FIRST + 3)), turn = 2 * Math.PI * even(key, FIRST + 4);
    const a = far * Math.cos(turn), b = far * Math.sin(turn);
    for (let c = 0; c < 3; c++) {
      shift[o + c] = this.flows ? at[c] - middle[c] : 0;
      places[o + c] = at[c] + a * first[c] + b * second[c];
    }
  }

  onExtent(key) {
    const { at, form, points, pieces } = this;
    if (form == "point") return this.between(points[0], points[0], 0);
    if (form == "box") {
      for (let c = 0; c < 3; c++) at[c] = points[0][c] + even(key, FIRST + c) * (points[1][c] - points[0][c]);
      return undefined;
    }
    let way = even(key, FIRST) * this.whole, n = 0;
    while (n < pieces.length - 1 && way > pieces[n]) way -= pieces[n++];
    return this.between(points[n], points[n + 1], way / Math.max(pieces[n], 1e-12));
  }

  between(from, to, share) {
    for (let c = 0; c < 3; c++) this.at[c] = from[c] + share * (to[c] - from[c]);
  }
}

// Two unit directions across one.
function across(way) {
  const least = way.map(Math.abs).indexOf(Math.min(...way.map(Math.abs)));
  const cross = (a, b) => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
  const first = cross(way, [0, 1, 2].map((c) => (c == least ? 1 : 0)));
  const long = Math.hypot(...first), unit = first.map((c) => c / long);
  return [unit, cross(way, unit)];
}
