// An even map of colour for speeds and shares, from violet to yellow, light enough at its low end for a dark scene.
const PLACES = [
  [112, 88, 172], [90, 108, 186], [66, 130, 184], [46, 150, 172], [42, 170, 150], [66, 188, 120], [118, 204, 88],
  [186, 220, 62], [253, 231, 60],
];

// Red, green, blue from 0 to 1 for a share from 0 to 1.
export function evenColour(share) {
  const at = Math.min(Math.max(share, 0), 1) * (PLACES.length - 1), low = Math.min(Math.floor(at), PLACES.length - 2);
  return PLACES[low].map((c, n) => (c + (at - low) * (PLACES[low + 1][n] - c)) / 255);
}

export const RAMP = `linear-gradient(to right, ${PLACES.map((p) => `rgb(${p})`).join(", ")})`;
