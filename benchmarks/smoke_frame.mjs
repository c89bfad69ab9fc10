// How long one frame (1/30 s) of live smoke takes: node smoke_frame.mjs <folder of the modules> <air> <stream> <name>
// Prints one line of JSON. The smoke has run until as much of it ends as begins, so that frames are alike.
import { readFileSync } from "node:fs";

const [folder, air, stream, name] = process.argv.slice(2);
const { Smoke, readField, FLYING } = await import(`file://${folder}/smoke_core.js`);
const MOST = 20000, FRAME = 1 / 30, WARM = 900, COUNTED = 300;

const bytes = readFileSync(air), smoke = new Smoke({ most: MOST, rate: Infinity });
const begin = performance.now();
smoke.breathe(readField(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength)));
smoke.give(JSON.parse(readFileSync(stream, "utf8")));
const ready = performance.now() - begin;
for (let n = 0; n < WARM; n++) smoke.step(FRAME);
const spent = [];
let seen = 0, flying = 0;
for (let n = 0; n < COUNTED; n++) {
  const start = performance.now();
  smoke.step(FRAME);
  spent.push(performance.now() - start);
  for (const stage of smoke.stage) {
    seen += stage > 0;
    flying += stage == FLYING;
  }
}
spent.sort((a, b) => a - b);
const at = (share) => spent[Math.floor(share * COUNTED)];
console.log(JSON.stringify({
  name, median_ms: at(0.5), fast_ms: at(0.1), slow_ms: at(0.9), ready_ms: ready,
  seen: seen / COUNTED, flying: flying / COUNTED, nodes: smoke.air.nodes, node: process.version,
}));
