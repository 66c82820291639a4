/**
 * A second way to the shadows of opaque crowns, which shares nothing with the engine: crowns and land as triangles in
 * a bounding-volume hierarchy of a general-purpose library (three-mesh-bvh), and a ray for every question.
 *
 * A crown's mesh has the volume of its crown: the lathe's corners stand out as much as its faces stand in, by less
 * than 0.2 % of the radius (SEGMENTS around: 1 - cos(pi / SEGMENTS), shared out to both sides). The land is two
 * triangles for each square of four neighbouring elevations.
 */
import { BufferAttribute, BufferGeometry, DoubleSide, LatheGeometry, Ray, Vector2, Vector3 } from 'three';
import { mergeGeometries } from 'three/examples/jsm/utils/BufferGeometryUtils.js';
import { MeshBVH } from 'three-mesh-bvh';
import {
  CROWN_BASE,
  CROWN_DEPTH_OFF,
  CROWN_DEPTH_ON,
  CROWN_FORMS,
  CROWN_GROUND,
  CROWN_RADIUS,
  CROWN_STRIDE,
  CROWN_TOP,
  CROWN_X,
  CROWN_Y,
  type CrownForm,
} from '../../src/crowns/crown-set.ts';
import type { LightScene } from '../../src/light/light-types.ts';
import { cellCentreX, cellCentreY, type Grid } from '../../src/numeric/grid.ts';

const SEGMENTS = 56;
/** Depth a metre at which a finger's breadth of crown is dark. */
const OPAQUE_PER_M = 1000;

/** The scene with its crowns opaque and nothing else drawn in it. */
export function opaqueCrowns(scene: LightScene): LightScene {
  const values = scene.crowns.values.slice();
  for (let i = 0; i < scene.crowns.count; i++) {
    values[i * CROWN_STRIDE + CROWN_DEPTH_ON] = OPAQUE_PER_M;
    values[i * CROWN_STRIDE + CROWN_DEPTH_OFF] = OPAQUE_PER_M;
  }
  const nothing = { ...scene.prisms, count: 0, ringStart: Uint32Array.of(0), ringXY: new Float64Array(0) };
  return { ...scene, crowns: { ...scene.crowns, values }, prisms: nothing, surroundings: null };
}

export interface MeshCaster {
  readonly triangles: number;
  /** Whether anything stands in the way from a point towards a unit vector (x east, y north along the grid, z up). */
  blocked(x: number, y: number, z: number, ux: number, uy: number, uz: number): boolean;
}

export function meshCaster({ crowns, ground }: LightScene): MeshCaster {
  const meshes = [landMesh(ground)];
  for (let i = 0; i < crowns.count; i++) {
    const at = (k: number) => crowns.values[i * CROWN_STRIDE + k];
    const mesh = crownMesh(CROWN_FORMS[crowns.form[i]], at(CROWN_RADIUS), at(CROWN_TOP) - at(CROWN_BASE));
    meshes.push(mesh.translate(at(CROWN_X), at(CROWN_Y), at(CROWN_GROUND) + at(CROWN_BASE)));
  }
  const merged = mergeGeometries(meshes);
  const tree = new MeshBVH(merged);
  const ray = new Ray();
  return {
    triangles: merged.index!.count / 3,
    blocked(x, y, z, ux, uy, uz) {
      ray.origin.set(x, y, z);
      ray.direction.set(ux, uy, uz);
      return tree.raycastFirst(ray, DoubleSide) !== null;
    },
  };
}

/** A closed crown standing on z = 0 about the axis, of the form's own volume. */
export function crownMesh(form: CrownForm, radiusM: number, lengthM: number): BufferGeometry {
  const mesh = bare(new LatheGeometry(profile(form, radiusM, lengthM), SEGMENTS)).rotateX(Math.PI / 2);
  const short = crownVolumeM3(form, radiusM, lengthM) / meshVolumeM3(mesh);
  if (form === 'cone' || form === 'cylinder') return mesh.scale(Math.sqrt(short), Math.sqrt(short), 1);
  const all = Math.cbrt(short);
  const middle = form === 'ellipsoid' ? lengthM / 2 : 0;
  return mesh.translate(0, 0, -middle).scale(all, all, all).translate(0, 0, middle);
}

/** Half the outline from the foot of the axis to its top: distance from the axis, height. */
function profile(form: CrownForm, radiusM: number, lengthM: number): Vector2[] {
  if (form === 'cylinder') return points([0, 0], [radiusM, 0], [radiusM, lengthM], [0, lengthM]);
  if (form === 'cone') return points([0, 0], [radiusM, 0], [0, lengthM]);
  const whole = form === 'ellipsoid';
  const half = whole ? lengthM / 2 : lengthM;
  const steps = whole ? SEGMENTS / 2 : SEGMENTS / 4;
  const arc = Array.from({ length: steps + 1 }, (_, k) => {
    const t = whole ? Math.PI * (k / steps - 0.5) : (Math.PI / 2) * (k / steps);
    return new Vector2(
      k === steps || (whole && k === 0) ? 0 : radiusM * Math.cos(t),
      half * Math.sin(t) + (whole ? half : 0),
    );
  });
  return whole ? arc : [new Vector2(0, 0), ...arc];
}

const points = (...list: [number, number][]): Vector2[] => list.map(([r, z]) => new Vector2(r, z));

/** Positions and triangles alone, so that meshes can be joined. */
function bare(geometry: BufferGeometry): BufferGeometry {
  geometry.deleteAttribute('normal');
  geometry.deleteAttribute('uv');
  return geometry;
}

export function crownVolumeM3(form: CrownForm, radiusM: number, lengthM: number): number {
  const share = { ellipsoid: 2 / 3, dome: 2 / 3, cone: 1 / 3, cylinder: 1 }[form];
  return share * Math.PI * radiusM ** 2 * lengthM;
}

/** Sum of the tetrahedra from the origin to each triangle. */
export function meshVolumeM3(mesh: BufferGeometry): number {
  const at = mesh.getAttribute('position');
  const index = mesh.index!;
  const [a, b, c] = [new Vector3(), new Vector3(), new Vector3()];
  let six = 0;
  for (let t = 0; t < index.count; t += 3) {
    a.fromBufferAttribute(at, index.getX(t));
    b.fromBufferAttribute(at, index.getX(t + 1));
    c.fromBufferAttribute(at, index.getX(t + 2));
    six += a.dot(b.cross(c));
  }
  return Math.abs(six) / 6;
}

function landMesh(ground: Grid): BufferGeometry {
  const { columns, rows, values } = ground;
  const positions = new Float32Array(3 * columns * rows);
  const index = new Uint32Array(6 * (columns - 1) * (rows - 1));
  for (let r = 0, v = 0; r < rows; r++)
    for (let c = 0; c < columns; c++, v++)
      positions.set([cellCentreX(ground, c), cellCentreY(ground, r), values[v]], 3 * v);
  for (let r = 0, t = 0; r + 1 < rows; r++)
    for (let c = 0; c + 1 < columns; c++, t += 6) {
      const v = r * columns + c;
      index.set([v, v + columns, v + 1, v + 1, v + columns, v + columns + 1], t);
    }
  const mesh = new BufferGeometry();
  mesh.setAttribute('position', new BufferAttribute(positions, 3));
  mesh.setIndex(new BufferAttribute(index, 1));
  return mesh;
}
