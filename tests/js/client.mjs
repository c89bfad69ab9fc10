// The client of the live air against a line made up for the purpose: node client.mjs <folder of live.js>
const sockets = [];
globalThis.window = { location: { href: "http://127.0.0.1:8088/?file=a.yaml" } };
globalThis.WebSocket = class {
  static OPEN = 1;
  constructor(url) {
    Object.assign(this, { url: String(url), readyState: 0, sent: [] });
    sockets.push(this);
  }
  open() { this.readyState = 1; this.onopen(); }
  send(text) { this.sent.push(JSON.parse(text)); }
  answer(kind, more = {}) { this.onmessage({ data: JSON.stringify({ kind, n: this.sent.at(-1).n, ...more }) }); }
  close() { this.readyState = 3; this.onclose(); }
};
const { LiveClient } = await import(`file://${process.argv[2]}/live.js`);

const heard = [], told = {};
const client = new LiveClient("/live?file=a.yaml", (message) => heard.push(message.kind ?? "bytes"));
const [first] = sockets;
told.url = first.url;
const ask = (x) => client.wish("air", { ask: "air", source_at: [x, 0, 0] });

ask(1);
told.before_open = first.sent.length;
first.open();
ask(2);
ask(3);
client.wish("speed", { ask: "layer", layer: "speed" });
told.in_flight = first.sent.length;
first.answer("doing");
first.onmessage({ data: new ArrayBuffer(8) });
first.answer("stream");
told.still_in_flight = first.sent.length;
first.answer("share");
told.then = first.sent.map((one) => one.source_at?.[0] ?? one.layer);
first.answer("share", { n: 1 });
told.late_answer_ignored = first.sent.length;
first.answer("fault");
told.last = first.sent.at(-1).layer;
first.answer("layer");

ask(4);
first.close();
await new Promise((done) => setTimeout(done, 700));
sockets[1].open();
told.again = sockets[1].sent.map((one) => one.source_at[0]);
told.numbers_grow = sockets[1].sent[0].n > first.sent.at(-1).n;
client.close();
await new Promise((done) => setTimeout(done, 700));
told.sockets = sockets.length;
told.heard = heard;
console.log(JSON.stringify(told));
