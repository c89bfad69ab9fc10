// The client of the live air: one request in flight, the latest wish wins, and a lost line is taken up again.
const FIRST_WAIT = 500, LONGEST_WAIT = 8000;  // ms before a lost line is tried again
const LAST = { air: "share", layer: "layer" };  // the message that ends an answer

export class LiveClient {
  // `hear(message, wish)` gets every answer to the latest wishes; a binary one as an ArrayBuffer.
  constructor(path, hear) {
    this.url = new URL(path, window.location.href);
    this.url.protocol = this.url.protocol == "https:" ? "wss:" : "ws:";
    this.hear = hear;
    this.wait = FIRST_WAIT;
    this.count = 0;
    this.wishes = new Map();  // by subject: "air", or a layer's name
    this.flying = null;
    this.open();
  }

  // Ask for the air, or for one layer; an older wish for the same is forgotten.
  wish(subject, body) {
    this.wishes.set(subject, body);
    this.send();
  }

  forget(subject) { this.wishes.delete(subject); }

  close() {
    this.closed = true;
    clearTimeout(this.later);
    this.socket?.close();
  }

  open() {
    this.socket = new WebSocket(this.url);
    this.socket.binaryType = "arraybuffer";
    this.socket.onopen = () => {
      this.wait = FIRST_WAIT;
      this.send();
    };
    this.socket.onmessage = (event) => this.take(event.data);
    this.socket.onclose = () => this.lost();
  }

  lost() {
    if (this.closed) return;
    if (this.flying) this.wishes.has(this.flying.subject) || this.wishes.set(this.flying.subject, this.flying.body);
    this.flying = null;
    this.hear({ kind: "away", words: "the line to the program is lost; trying again" });
    this.later = setTimeout(() => this.open(), this.wait);
    this.wait = Math.min(2 * this.wait, LONGEST_WAIT);
  }

  send() {
    if (this.flying || !this.wishes.size || this.socket.readyState != WebSocket.OPEN) return;
    const subject = this.wishes.has("air") ? "air" : this.wishes.keys().next().value;
    const body = this.wishes.get(subject);
    this.wishes.delete(subject);
    this.flying = { subject, body, n: ++this.count };
    this.socket.send(JSON.stringify({ n: this.count, ...body }));
  }

  take(data) {
    const { flying } = this;
    if (typeof data != "string") return this.hear(data, flying);
    const message = JSON.parse(data);
    if (message.n != null && message.n != flying?.n) return undefined;
    const done = message.kind == "fault" || message.kind == LAST[flying?.body.ask];
    if (done) this.flying = null;
    this.hear(message, flying);
    if (done) this.send();
    return undefined;
  }
}
