// The parts of the scene, served as one module named "hoodwright-scene".
export * from "hoodwright-scene/tools.js";
export * from "hoodwright-scene/room.js";
export * from "hoodwright-scene/hoods.js";
export * from "hoodwright-scene/sources.js";
export * from "hoodwright-scene/labels.js";
export * from "hoodwright-scene/view.js";
export * from "hoodwright-scene/stills.js";
export * from "hoodwright-scene/live_view.js";
export { RAMP } from "hoodwright-scene/colours.js";
