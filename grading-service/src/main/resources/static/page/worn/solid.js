// The worn sleeve drawn by the graphics card.

import {
  BackSide, BufferAttribute, BufferGeometry, CylinderGeometry, DirectionalLight, FrontSide, Group, HemisphereLight, Mesh, MeshStandardMaterial, PerspectiveCamera, Scene,
  SphereGeometry, Vector3, WebGLRenderer,
} from "../vendor/three.js";
import { CLOTH, SKIN, TRUNK } from "./colours.js";

const UP = new Vector3(0, 1, 0);

/** A limb: two balls and the cone between them. */
function limb({ from, to, thick, thin }, material) {
  const [a, b] = [new Vector3(...from), new Vector3(...to)];
  const group = new Group();
  const along = b.clone().sub(a);
  const cone = new Mesh(new CylinderGeometry(thin, thick, along.length(), 32, 1, true), material);
  cone.position.copy(a).add(b).multiplyScalar(0.5);
  cone.quaternion.setFromUnitVectors(UP, along.normalize());
  group.add(cone);
  for (const [at, radius] of [[a, thick], [b, thin]]) {
    const ball = new Mesh(new SphereGeometry(radius, 32, 20), material);
    ball.position.copy(at);
    group.add(ball);
  }
  return group;
}

export class Solid {
  constructor(canvas) {
    this.renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true, preserveDrawingBuffer: true });
    this.scene = new Scene();
    this.eye = new PerspectiveCamera(32, 1, 0.05, 10);
    const key = new DirectionalLight(0xffffff, 2.2);
    key.position.set(1.5, 1.6, 1);
    this.scene.add(new HemisphereLight(0xffffff, 0x8d8577, 1.5), key);
    this.worn = new Group();
    this.scene.add(this.worn);
  }

  show({ surfaces, body, position }) {
    this.#clear();
    const of = (colour) => new MeshStandardMaterial({ color: colour, roughness: 0.9 });
    for (const each of body.arm) this.worn.add(limb(each, of(SKIN)));
    for (const each of body.trunk) this.worn.add(limb(each, of(TRUNK)));
    this.points = new BufferAttribute(new Float32Array(position), 3);
    this.pieces = surfaces.map(({ id, triangles }) => {
      const geometry = new BufferGeometry();
      geometry.setAttribute("position", this.points);
      geometry.setIndex(triangles.flat());
      for (const [side, colour] of [[FrontSide, CLOTH[id].out], [BackSide, CLOTH[id].in]]) {
        this.worn.add(new Mesh(geometry, new MeshStandardMaterial({ color: colour, side, roughness: 0.85, polygonOffset: true, polygonOffsetFactor: id === "overlay-main" ? -1 : 0 })));
      }
      return geometry;
    });
    this.move(position);
  }

  #clear() {
    this.worn.traverse((each) => {
      each.geometry?.dispose();
      each.material?.dispose();
    });
    this.worn.clear();
  }

  move(position) {
    this.points.array.set(position);
    this.points.needsUpdate = true;
    for (const geometry of this.pieces) {
      geometry.computeVertexNormals();
      geometry.computeBoundingSphere();
    }
  }

  draw({ from, aim }, width, height) {
    this.renderer.setPixelRatio(Math.min(2, devicePixelRatio));
    this.renderer.setSize(width, height, false);
    this.eye.aspect = width / height;
    this.eye.position.set(...from);
    this.eye.lookAt(...aim);
    this.eye.updateProjectionMatrix();
    this.renderer.render(this.scene, this.eye);
  }

  dispose() {
    this.#clear();
    this.renderer.dispose();
  }
}
