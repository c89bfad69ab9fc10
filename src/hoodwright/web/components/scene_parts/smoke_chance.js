// Random numbers by counting, as in kernels/chance.py: a hash of a counter is a place in a table of normal deviates.
const PLACES = 65536, LOW = 65535;

// A 32-bit hash of a 32-bit number.
export function mixed(x) {
  x ^= x >>> 16;
  x = Math.imul(x, 0x7feb352d);
  x ^= x >>> 15;
  x = Math.imul(x, 0x846ca68b);
  return (x ^ (x >>> 16)) >>> 0;
}

export const particleKey = (seed, stream, particle) => mixed((mixed((mixed(seed) + stream) | 0) + particle) | 0);

// An even number from 0 to 1, and a normal deviate; `count` says which one of this key.
export const even = (key, count) => (mixed((key + Math.imul(count, 0x9e3779b9)) | 0) + 0.5) / 4294967296;
export const normal = (key, count) => NORMALS[mixed((key + count) | 0) & LOW];

function table() {
  const found = new Float32Array(PLACES), half = PLACES / 2;
  for (let n = half; n < PLACES; n++) {
    found[n] = quantile((n + 0.5) / PLACES);
    found[PLACES - 1 - n] = -found[n];
  }
  return found;
}

const run = (factors, r) => factors.reduceRight((sum, factor) => sum * r + factor, 0);
const MIDDLE = [
  [3.3871328727963666080, 133.14166789178437745, 1971.5909503065514427, 13731.693765509461125, 45921.953931549871457,
    67265.770927008700853, 33430.575583588128105, 2509.0809287301226727],
  [1, 42.313330701600911252, 687.18700749205790830, 5394.1960214247511077, 21213.794301586595867,
    39307.895800092710610, 28729.085735721942674, 5226.4952788528545610],
];
const SIDE = [
  [1.42343711074968357734, 4.63033784615654529590, 5.76949722146069140550, 3.64784832476320460504,
    1.27045825245236838258, 0.241780725177450611770, 0.0227238449892691845833, 7.74545014278341407640e-4],
  [1, 2.05319162663775882187, 1.67638483018380384940, 0.689767334985100004550, 0.148103976427480074590,
    0.0151986665636164571966, 5.47593808499534494600e-4, 1.05075007164441684324e-9],
];

// Inverse of the normal distribution from a half to one (Wichura 1988, algorithm AS 241), not into its far tail.
function quantile(p) {
  const q = p - 0.5;
  if (q <= 0.425) {
    const r = 0.180625 - q * q;
    return q * run(MIDDLE[0], r) / run(MIDDLE[1], r);
  }
  const r = Math.sqrt(-Math.log(1 - p)) - 1.6;
  return run(SIDE[0], r) / run(SIDE[1], r);
}

export const NORMALS = table();
