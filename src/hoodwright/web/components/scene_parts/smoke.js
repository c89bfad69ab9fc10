// Smoke as it is seen: soft round points, brighter where they lie dense, wider and thinner the older they are.
import { THREE } from "nicegui-scene";

const BRIGHTNESS = 5.5e-5, USUAL_RATE = 4000;  // m2 of white of one particle, where so many a second are given off
const VERTEX = `
  attribute float glow;
  attribute float age;
  uniform float tall;
  uniform float weight;
  varying float seen;
  void main() {
    vec4 place = modelViewMatrix * vec4(position, 1.0);
    float wide = 0.007 + 0.034 * sqrt(age) + 0.012 * age;
    gl_Position = projectionMatrix * place;
    float size = wide * projectionMatrix[1][1] * tall / gl_Position.w;
    float drawn = clamp(size, 2.0, 160.0);
    gl_PointSize = glow > 0.0 ? drawn : 0.0;
    seen = min(0.6, glow * weight / (wide * wide) * min(1.0, size * size / (drawn * drawn)));
    if (glow <= 0.0) gl_Position = vec4(2.0, 2.0, 2.0, 1.0);
  }`;
const FRAGMENT = `
  uniform vec3 colour;
  varying float seen;
  void main() {
    vec2 off = 2.0 * gl_PointCoord - 1.0;
    float far = dot(off, off);
    if (far > 1.0) discard;
    float soft = (1.0 - far) * (1.0 - far);
    gl_FragColor = vec4(colour, seen * soft);
  }`;

export class SmokeCloud {
  constructor(smoke) {
    this.smoke = smoke;
    const shape = new THREE.BufferGeometry(), moving = (array, size) => {
      const made = new THREE.BufferAttribute(array, size);
      made.setUsage(THREE.DynamicDrawUsage);
      return made;
    };
    shape.setAttribute("position", moving(smoke.positions, 3));
    shape.setAttribute("glow", moving(smoke.glow, 1));
    shape.setAttribute("age", moving(smoke.ages, 1));
    const material = new THREE.ShaderMaterial({
      vertexShader: VERTEX, fragmentShader: FRAGMENT, transparent: true, depthWrite: false,
      uniforms: { tall: { value: 1 }, weight: { value: 0 }, colour: { value: new THREE.Color(0xeef3f4) } },
    });
    this.points = new THREE.Points(shape, material);
    this.points.frustumCulled = false;
    this.points.renderOrder = 6;
  }

  // `tall`: of the picture in pixels.
  refresh(tall) {
    const { geometry: { attributes }, material: { uniforms } } = this.points;
    for (const name of ["position", "glow", "age"]) attributes[name].needsUpdate = true;
    uniforms.tall.value = tall;
    uniforms.weight.value = BRIGHTNESS * Math.sqrt(USUAL_RATE / (this.smoke.rate || USUAL_RATE));
  }

  dispose() {
    this.points.geometry.dispose();
    this.points.material.dispose();
  }
}
