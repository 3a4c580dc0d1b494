// Bones as a surface, drawn in perspective by the processor: one way that every browser has, and quick enough while a key is held. What lies
// nearest to the receptor is drawn solid, and what lies nearest to the eye as glass before it, so that the arch is seen through the body.
//
// Two depths a pixel: the largest and the smallest. A triangle's corners go through the pinhole, light is worked out at the corners and goes
// evenly over the triangle (Gouraud 1971, IEEE Trans Comput C-20:623: from memory). No score comes from here.

/**
 * Bones: places (mm, three numbers a corner), triangles (three corners each) and the surface's direction at each corner.
 * @typedef {{ places: Float32Array, triangles: Uint32Array, normals: Float32Array }} Surface
 *
 * A pinhole, in the frame of the places: where the eye is, which way it looks, what is right and up, how wide the picture is at a mm's distance, and how
 * far what is looked at lies ahead, mm.
 * @typedef {{ eye: number[], ahead: number[], right: number[], up: number[], wide: number, about_mm: number }} Eye
 */

/** Tissue number of cortical bone's outside in the engine's `filmMeshes`. */
const CORTEX = 0;
/** Bone, and glass, red green blue. */
const BONE = [238, 222, 192];
const GLASS = [150, 196, 224];
/** Bone so far beyond what is looked at, towards the receptor, is drawn lightest, and from there so much nearer to the eye darkest: about a vertebra's depth, mm. Choices, no source. */
const [LIGHT_MM, DIM_MM] = [35, 110];
/** What lies farther beyond, such as the wing of the ilium in a lateral view, goes over into glass from here to there, mm: a lumbar spine's arch ends before. Choices, no source. */
const [BEYOND_MM, GLASS_FROM_MM] = [72, 128];
/** How dark it then is, how light what the lamp does not reach, how much of the glass is seen straight on and at its edge. Choices, no source. */
const [DIMMEST, SHADE, GLASS_FACE, GLASS_EDGE] = [0.3, 0.28, 0.05, 0.42];

/**
 * The bones of the engine's meshes, with the directions of their surface.
 * @param {[Float32Array, Uint32Array, Uint8Array]} meshes `TeachingRoom.filmMeshes()`
 * @returns {Surface}
 */
export function bonesOf([places, all, tissues]) {
  const triangles = new Uint32Array(all.length);
  let count = 0;
  for (let i = 0; i < all.length; i += 3) {
    if (tissues[all[i]] !== CORTEX) continue;
    triangles.set(all.subarray(i, i + 3), count);
    count += 3;
  }
  const used = triangles.slice(0, count);
  return { places, triangles: used, normals: normalsOf(places, used) };
}

/**
 * At each corner the mean of its triangles' directions, by their areas, of unit length.
 * @param {Float32Array} places
 * @param {Uint32Array} triangles
 */
function normalsOf(places, triangles) {
  const normals = new Float32Array(places.length);
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [3 * triangles[i], 3 * triangles[i + 1], 3 * triangles[i + 2]];
    const [ux, uy, uz] = [places[b] - places[a], places[b + 1] - places[a + 1], places[b + 2] - places[a + 2]];
    const [vx, vy, vz] = [places[c] - places[a], places[c + 1] - places[a + 1], places[c + 2] - places[a + 2]];
    const [x, y, z] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
    for (const corner of [a, b, c]) {
      normals[corner] += x;
      normals[corner + 1] += y;
      normals[corner + 2] += z;
    }
  }
  for (let i = 0; i < normals.length; i += 3) {
    const length = Math.hypot(normals[i], normals[i + 1], normals[i + 2]) || 1;
    for (const k of [0, 1, 2]) normals[i + k] /= length;
  }
  return normals;
}

/**
 * Where a point falls in a picture one wide, from its left upper corner, and how far ahead of the eye it lies, mm.
 * @param {Eye} eye
 * @param {readonly number[]} point
 */
export function seenAt({ eye, ahead, right, up, wide }, point) {
  const [x, y, z] = [point[0] - eye[0], point[1] - eye[1], point[2] - eye[2]];
  const far = x * ahead[0] + y * ahead[1] + z * ahead[2];
  const across = (x * right[0] + y * right[1] + z * right[2]) / (far * wide);
  const high = (x * up[0] + y * up[1] + z * up[2]) / (far * wide);
  return { x: 0.5 + across, y: 0.5 - high, far };
}

/**
 * What a corner is for the picture: where in pixels, how far, how light for the solid surface, and how much of the glass.
 * @param {Surface} surface
 * @param {Eye} eye
 * @param {number} size
 */
function corners({ places, normals }, eye, size) {
  const { ahead, right, up } = eye;
  // The lamp stands beyond the bones, by the receptor, and to the picture's left above.
  const lamp = [0, 1, 2].map((k) => ahead[k] * 0.78 - right[k] * 0.36 + up[k] * 0.5);
  const count = places.length / 3;
  const made = { x: new Float32Array(count), y: new Float32Array(count), far: new Float32Array(count), light: new Float32Array(count), glass: new Float32Array(count) };
  for (let i = 0; i < count; i++) {
    const at = 3 * i;
    const [dx, dy, dz] = [places[at] - eye.eye[0], places[at + 1] - eye.eye[1], places[at + 2] - eye.eye[2]];
    const far = dx * ahead[0] + dy * ahead[1] + dz * ahead[2];
    const scale = size / (far * eye.wide);
    made.x[i] = size / 2 + (dx * right[0] + dy * right[1] + dz * right[2]) * scale;
    made.y[i] = size / 2 - (dx * up[0] + dy * up[1] + dz * up[2]) * scale;
    made.far[i] = far;
    const [nx, ny, nz] = [normals[at], normals[at + 1], normals[at + 2]];
    made.light[i] = Math.max(0, nx * lamp[0] + ny * lamp[1] + nz * lamp[2]);
    const facing = Math.abs(nx * dx + ny * dy + nz * dz) / Math.hypot(dx, dy, dz);
    made.glass[i] = GLASS_FACE + (GLASS_EDGE - GLASS_FACE) * (1 - facing) ** 3;
  }
  return made;
}

/**
 * The farthest surface in each pixel up to where bone begins to go over into glass, the farthest of those that go over, and the nearest.
 * @param {Surface} surface
 * @param {ReturnType<typeof corners>} at
 * @param {number} size
 * @param {number} solid_mm the solid surface's greatest distance
 * @param {number} most_mm from where on all is glass
 */
function depths({ triangles }, at, size, solid_mm, most_mm) {
  const all = size * size;
  const none = () => new Float32Array(all).fill(-Infinity);
  const [farthest, going, nearest] = [none(), none(), new Float32Array(all).fill(Infinity)];
  const [light, goingLight, glass] = [new Float32Array(all), new Float32Array(all), new Float32Array(all)];
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [triangles[i], triangles[i + 1], triangles[i + 2]];
    const [ax, ay, bx, by, cx, cy] = [at.x[a], at.y[a], at.x[b], at.y[b], at.x[c], at.y[c]];
    const area = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay);
    if (area === 0 || !(at.far[a] > 1 && at.far[b] > 1 && at.far[c] > 1)) continue;
    const left = Math.max(0, Math.ceil(Math.min(ax, bx, cx) - 0.5));
    const last = Math.min(size - 1, Math.floor(Math.max(ax, bx, cx) - 0.5));
    const top = Math.max(0, Math.ceil(Math.min(ay, by, cy) - 0.5));
    const low = Math.min(size - 1, Math.floor(Math.max(ay, by, cy) - 0.5));
    for (let y = top; y <= low; y++) {
      for (let x = left; x <= last; x++) {
        const [px, py] = [x + 0.5, y + 0.5];
        const v = ((px - ax) * (cy - ay) - (cx - ax) * (py - ay)) / area;
        const w = ((bx - ax) * (py - ay) - (px - ax) * (by - ay)) / area;
        const u = 1 - v - w;
        if (u < 0 || v < 0 || w < 0) continue;
        const far = u * at.far[a] + v * at.far[b] + w * at.far[c];
        const k = y * size + x;
        if (far < solid_mm ? far > farthest[k] : far > going[k] && far < most_mm) {
          const lit = u * at.light[a] + v * at.light[b] + w * at.light[c];
          if (far < solid_mm) [farthest[k], light[k]] = [far, lit];
          else [going[k], goingLight[k]] = [far, lit];
        }
        if (far < nearest[k] || far >= most_mm) {
          nearest[k] = Math.min(nearest[k], far);
          glass[k] = Math.max(far >= most_mm ? glass[k] : 0, u * at.glass[a] + v * at.glass[b] + w * at.glass[c]);
        }
      }
    }
  }
  return { farthest, going, nearest, light, goingLight, glass };
}

/**
 * Draws the bones: red, green, blue and opacity of `size` by `size` pixels, rows from the top. Where there is no bone the film's ground is left.
 * @param {Surface} surface
 * @param {Eye} eye
 * @param {number} size
 */
export function drawBones(surface, eye, size) {
  const [solid_mm, most_mm] = [eye.about_mm + BEYOND_MM, eye.about_mm + GLASS_FROM_MM];
  const { farthest, going, nearest, light, goingLight, glass } = depths(surface, corners(surface, eye, size), size, solid_mm, most_mm);
  const pixels = new Uint8ClampedArray(4 * size * size);
  for (let k = 0; k < farthest.length; k++) {
    pixels[4 * k + 3] = 255;
    if (nearest[k] === Infinity) continue;
    const deep = Math.min(1, Math.max(0, (eye.about_mm + LIGHT_MM - farthest[k]) / DIM_MM));
    const solid = farthest[k] > -Infinity;
    const under = solid ? (1 - (1 - DIMMEST) * deep) * (SHADE + (1 - SHADE) * light[k]) : 0;
    // Nowhere an edge: what goes over fades from bone to nothing over what lies under it.
    const left = going[k] > -Infinity ? (most_mm - going[k]) / (most_mm - solid_mm) : 0;
    const lit = under + (SHADE + (1 - SHADE) * goingLight[k] - under) * left * left * (3 - 2 * left);
    // One wall alone, such as a rim, is no glass before itself.
    const share = Math.abs(farthest[k] - nearest[k]) > 0.5 ? Math.max(glass[k], GLASS_FACE) : 0;
    for (const c of [0, 1, 2]) pixels[4 * k + c] = (1 - share) * BONE[c] * lit + share * GLASS[c];
  }
  return pixels;
}
