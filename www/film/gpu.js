// The free live film on the graphics processor: the signed sum of src/imaging/path_length.rs with additive blending, then what the engine
// makes of such sums (texture, trunk, beam hardening, window), with the engine's own numbers. No score depends on it; the engine's picture
// is the reference (film.test.mjs) and what stays when there is no such processor or it is lost.
//
// Both surfaces are drawn once, in any order: a fragment adds its depth less the SOD, times its tissue's step of attenuation, + where the
// ray leaves and - where it enters.

/**
 * @import { TeachingRoom } from '../pkg/downbeam.js'
 *
 * Meshes as the engine's `filmMeshes` and `filmInclusions` give them: places, triangles, and a number a vertex.
 * @typedef {[Float32Array, Uint32Array, Uint8Array | Float32Array]} Meshes
 *
 * @typedef {ReturnType<typeof program>} Program
 */

const PLANES = 5;
const COARSE = 33;
/** Side of the small picture that the window is found of. */
const SAMPLES = 256;
const NUMBERS = { trunk: 89, planes: 44 };

// A processor keeps corners to a sixteenth of a pixel or a little finer, which would bend each triangle's depth: so the plane is worked out from
// the corners themselves, and a fragment asks it.
const SUM_VERTEX = `#version 300 es
precision highp float;
precision highp sampler2D;
precision highp usampler2D;
uniform sampler2D corners;
uniform usampler2D triangles;
uniform vec3 source, d, right, up;
uniform float sid, sod, half_mm, pixels;
uniform float weights[6];
uniform bool by_tissue;
flat out vec4 plane, range;
flat out vec2 slope;
ivec2 place(int i) { return ivec2(i & 1023, i >> 10); }
void main() {
  int number = gl_VertexID / 3, mine = gl_VertexID - 3 * number;
  uvec3 ids = texelFetch(triangles, place(number), 0).rgb;
  vec3 at[3];
  float own = 0.0;
  for (int k = 0; k < 3; k++) {
    vec4 corner = texelFetch(corners, place(int(ids[k])), 0);
    vec3 r = corner.xyz - source;
    float z = dot(r, d);
    at[k] = vec3(vec2(dot(r, right), dot(r, up)) * sid / (half_mm * z), z - sod);
    own = corner.w;
  }
  vec3 b = at[1] - at[0], c = at[2] - at[0];
  float area = b.x * c.y - c.x * b.y;
  slope = area == 0.0 ? vec2(0.0) : vec2(b.z * c.y - c.z * b.y, b.x * c.z - c.x * b.z) / area;
  int tissue = int(own);
  vec2 weight = by_tissue ? vec2(tissue == 1 ? 0.0 : weights[tissue], tissue == 1 ? 1.0 : 0.0) : vec2(own, 0.0);
  plane = vec4(at[0], 0.0);
  range = vec4(min(at[0].z, min(at[1].z, at[2].z)), max(at[0].z, max(at[1].z, at[2].z)), weight);
  gl_Position = vec4(at[mine].xy, 0.0, 1.0);
}`;

const SUM_FRAGMENT = `#version 300 es
precision highp float;
flat in vec4 plane, range;
flat in vec2 slope;
uniform float pixels;
out vec4 sum;
void main() {
  vec2 at = gl_FragCoord.xy / pixels * 2.0 - 1.0;
  float depth = clamp(plane.z + dot(slope, at - plane.xy), range.x, range.y);
  // Counter-clockwise is the outside seen from the receptor, where the ray leaves.
  sum = vec4(range.zw * (gl_FrontFacing ? depth : -depth), 0.0, 0.0);
}`;

const WHOLE_VERTEX = `#version 300 es
void main() {
  gl_Position = vec4(vec2(gl_VertexID & 1, gl_VertexID >> 1) * 4.0 - 1.0, 0.0, 1.0);
}`;

// Rows run from the top in the engine's grids, from the bottom in the processor's.
const DEVELOP = `#version 300 es
precision highp float;
precision highp sampler2D;
precision highp isampler3D;
uniform sampler2D sums, trunk, taken;
uniform isampler3D grain;
uniform vec3 plane[${3 * PLANES}];
uniform float pixels, pixel_mm, sid, hollow, strength;
uniform vec4 p, h0, h1, h2, h3, view;
uniform int show;
out vec4 colour;
float coarse(sampler2D grid, vec2 at) {
  vec2 cell = at / pixels * 32.0;
  ivec2 i = min(ivec2(cell), 31);
  vec2 t = cell - vec2(i);
  vec2 upper = vec2(texelFetch(grid, i, 0).r, texelFetch(grid, i + ivec2(1, 0), 0).r);
  vec2 lower = vec2(texelFetch(grid, i + ivec2(0, 1), 0).r, texelFetch(grid, i + ivec2(1, 1), 0).r);
  vec2 mixed = mix(upper, lower, t.y);
  return mix(mixed.x, mixed.y, t.x);
}
float cubic(vec4 c, float x) { return c.x + x * (c.y + x * (c.z + x * c.w)); }
float attenuation(ivec2 at) {
  vec2 sum = texelFetch(sums, ivec2(at.x, int(pixels) - 1 - at.y), 0).rg;
  vec2 from = vec2(at) + 0.5 - pixels / 2.0;
  float slant = length(vec3(from * pixel_mm / sid, 1.0));
  float s = (sum.r + hollow * sum.g) * slant;
  if (sum.g > 0.3) {
    int all = 0;
    for (int k = 0; k < ${PLANES}; k++) {
      vec3 q = plane[3 * k] + plane[3 * k + 1] * from.x + plane[3 * k + 2] * from.y;
      ivec3 size = textureSize(grain, 0);
      all += texelFetch(grain, ivec3(floor(q)) & (size - 1), 0).r;
    }
    s += strength * sqrt(sum.g) * float(all);
  }
  float t = coarse(trunk, vec2(at) + 0.5);
  float bent = clamp(s, 0.0, 4.5);
  float h = cubic(h0, t) + bent * (cubic(h1, t) + bent * (cubic(h2, t) + bent * cubic(h3, t)));
  return cubic(p, t) + s * h;
}
void main() {
  if (show == 0) {
    ivec2 at = ivec2((floor(gl_FragCoord.xy) + 0.5) * pixels / ${SAMPLES}.0);
    colour = vec4(attenuation(at), 0.0, 0.0, 1.0);
    return;
  }
  ivec2 at = ivec2(gl_FragCoord.x, pixels - gl_FragCoord.y);
  float value = (attenuation(at) - coarse(taken, vec2(at) + 0.5) - view.x) * view.y;
  float kneed = value >= 32.0 ? min(value, 255.0) : 32.0 * exp((value - 32.0) / 32.0);
  float grey = floor(clamp(view.z + view.w * kneed, 0.0, 255.0)) / 255.0;
  colour = vec4(grey, grey, grey, 1.0);
}`;

/**
 * @param {WebGL2RenderingContext} gl
 * @param {string} vertex
 * @param {string} fragment
 */
function program(gl, vertex, fragment) {
  const made = gl.createProgram();
  for (const [kind, text] of /** @type {[number, string][]} */ ([[gl.VERTEX_SHADER, vertex], [gl.FRAGMENT_SHADER, fragment]])) {
    const shader = gl.createShader(kind);
    if (!shader) throw new Error('shader');
    gl.shaderSource(shader, text);
    gl.compileShader(shader);
    gl.attachShader(made, shader);
  }
  gl.linkProgram(made);
  if (!gl.getProgramParameter(made, gl.LINK_STATUS)) throw new Error(gl.getProgramInfoLog(made) ?? 'shader');
  /** @type {Map<string, WebGLUniformLocation | null>} */
  const places = new Map();
  /** @param {string} name */
  const at = (name) => (places.has(name) || places.set(name, gl.getUniformLocation(made, name)), places.get(name) ?? null);
  return { made, at };
}

/**
 * @param {WebGL2RenderingContext} gl
 * @param {number} unit
 * @param {number} target
 */
function texture(gl, unit, target = gl.TEXTURE_2D) {
  const made = gl.createTexture();
  gl.activeTexture(gl.TEXTURE0 + unit);
  gl.bindTexture(target, made);
  for (const filter of [gl.TEXTURE_MIN_FILTER, gl.TEXTURE_MAG_FILTER]) gl.texParameteri(target, filter, gl.NEAREST);
  return made;
}

/**
 * A list as a texture of 1024 texels a row: a vertex's place with its own value, or a triangle's three numbers.
 * @param {WebGL2RenderingContext} gl
 * @param {number} unit
 * @param {[number, number, number]} how
 * @param {Float32Array | Uint32Array} data
 * @param {number} width
 */
function listed(gl, unit, [inner, format, type], data, width) {
  const rows = Math.max(1, Math.ceil(data.length / width / 1024));
  const whole = data instanceof Float32Array ? new Float32Array(rows * 1024 * width) : new Uint32Array(rows * 1024 * width);
  whole.set(data);
  const made = texture(gl, unit);
  gl.texImage2D(gl.TEXTURE_2D, 0, inner, 1024, rows, 0, format, type, whole);
  return made;
}

/**
 * Bodies on the processor.
 * @param {WebGL2RenderingContext} gl
 * @param {Meshes} meshes
 */
function bodies(gl, [places, triangles, own]) {
  const corners = new Float32Array(4 * own.length);
  for (let i = 0; i < own.length; i++) {
    corners.set(places.subarray(3 * i, 3 * i + 3), 4 * i);
    corners[4 * i + 3] = own[i];
  }
  const textures = [
    listed(gl, 5, [gl.RGBA32F, gl.RGBA, gl.FLOAT], corners, 4),
    listed(gl, 6, [gl.RGB32UI, gl.RGB_INTEGER, gl.UNSIGNED_INT], triangles, 3),
  ];
  return {
    draw() {
      textures.forEach((made, i) => {
        gl.activeTexture(gl.TEXTURE5 + i);
        gl.bindTexture(gl.TEXTURE_2D, made);
      });
      gl.drawArrays(gl.TRIANGLES, 0, triangles.length);
    },
    free: () => textures.forEach((made) => gl.deleteTexture(made)),
  };
}

/**
 * The film on the graphics processor, or null where there is none that can. `lost()` when it is gone.
 * @param {[Int8Array, number, number]} grain the engine's `TeachingRoom.filmTexture()`
 * @param {() => void} lost
 */
export function gpuFilm(grain, lost) {
  const canvas = document.createElement('canvas');
  const context = canvas.getContext('webgl2', { antialias: false, depth: false, alpha: false, preserveDrawingBuffer: true });
  if (!context?.getExtension('EXT_color_buffer_float') || !context.getExtension('EXT_float_blend')) return null;
  const gl = context;
  let alive = true;
  canvas.addEventListener('webglcontextlost', () => {
    alive = false;
    lost();
  });
  const [values, side, height] = grain;
  gl.bindVertexArray(gl.createVertexArray());
  const summing = program(gl, SUM_VERTEX, SUM_FRAGMENT);
  const developing = program(gl, WHOLE_VERTEX, DEVELOP);
  const sums = texture(gl, 0);
  const grids = [texture(gl, 1), texture(gl, 2)];
  texture(gl, 3, gl.TEXTURE_3D);
  gl.pixelStorei(gl.UNPACK_ALIGNMENT, 1);
  gl.texImage3D(gl.TEXTURE_3D, 0, gl.R8I, side, side, height, 0, gl.RED_INTEGER, gl.BYTE, values);
  const small = texture(gl, 4);
  gl.texImage2D(gl.TEXTURE_2D, 0, gl.R32F, SAMPLES, SAMPLES, 0, gl.RED, gl.FLOAT, null);
  /** @param {WebGLTexture} target */
  const into = (target) => {
    const buffer = gl.createFramebuffer();
    gl.bindFramebuffer(gl.FRAMEBUFFER, buffer);
    gl.framebufferTexture2D(gl.FRAMEBUFFER, gl.COLOR_ATTACHMENT0, gl.TEXTURE_2D, target, 0);
    return buffer;
  };
  const sampled = into(small);
  /** @type {WebGLFramebuffer | null} */
  let summed = null;
  let size = 0;
  let patient = '';
  /** @type {ReturnType<typeof bodies> | null} */
  let meshes = null;
  const read = new Float32Array(4 * SAMPLES * SAMPLES);
  const attenuation = new Float32Array(SAMPLES * SAMPLES);

  /** @param {number} pixels */
  function fit(pixels) {
    if (pixels === size) return;
    size = canvas.width = canvas.height = pixels;
    gl.activeTexture(gl.TEXTURE0);
    gl.texImage2D(gl.TEXTURE_2D, 0, gl.RG32F, size, size, 0, gl.RG, gl.FLOAT, null);
    summed ??= into(sums);
  }

  /**
   * Sums all bodies up.
   * @param {Float32Array} view the engine's numbers of it
   * @param {Meshes} inclusions
   */
  function add(view, inclusions) {
    const { made, at } = summing;
    gl.useProgram(made);
    ['source', 'd', 'right', 'up'].forEach((name, i) => gl.uniform3fv(at(name), view.subarray(3 * i, 3 * i + 3)));
    ['sid', 'sod', 'half_mm'].forEach((name, i) => gl.uniform1f(at(name), view[12 + i]));
    gl.uniform1f(at('pixels'), size);
    gl.uniform1i(at('corners'), 5);
    gl.uniform1i(at('triangles'), 6);
    gl.uniform1fv(at('weights'), view.subarray(16, 22));
    gl.bindFramebuffer(gl.FRAMEBUFFER, summed);
    gl.viewport(0, 0, size, size);
    gl.clearColor(0, 0, 0, 0);
    gl.clear(gl.COLOR_BUFFER_BIT);
    gl.enable(gl.BLEND);
    gl.blendFunc(gl.ONE, gl.ONE);
    gl.uniform1i(at('by_tissue'), 1);
    meshes?.draw();
    gl.uniform1i(at('by_tissue'), 0);
    if (inclusions[1].length) {
      const own = bodies(gl, inclusions);
      own.draw();
      own.free();
    }
    gl.disable(gl.BLEND);
  }

  /**
   * @param {number} unit
   * @param {Float32Array} values_
   */
  function grid(unit, values_) {
    gl.activeTexture(gl.TEXTURE0 + unit);
    gl.texImage2D(gl.TEXTURE_2D, 0, gl.R32F, COARSE, COARSE, 0, gl.RED, gl.FLOAT, values_);
  }

  /**
   * Develops into the small picture, whose window the engine finds, and then into the canvas.
   * @param {TeachingRoom} room
   * @param {Float32Array} view
   * @param {boolean} boneDark
   */
  function develop(room, view, boneDark) {
    const { made, at } = developing;
    gl.useProgram(made);
    ['sums', 'trunk', 'taken', 'grain'].forEach((name, unit) => gl.uniform1i(at(name), unit));
    gl.uniform1f(at('pixels'), size);
    gl.uniform1f(at('pixel_mm'), (2 * view[14]) / size);
    gl.uniform1f(at('sid'), view[12]);
    gl.uniform1f(at('hollow'), view[22]);
    gl.uniform1f(at('strength'), view[23]);
    ['p', 'h0', 'h1', 'h2', 'h3'].forEach((name, i) => gl.uniform4fv(at(name), view.subarray(24 + 4 * i, 28 + 4 * i)));
    gl.uniform3fv(at('plane'), view.subarray(NUMBERS.planes, NUMBERS.trunk));
    grid(1, view.subarray(NUMBERS.trunk));
    gl.uniform1i(at('show'), 0);
    gl.bindFramebuffer(gl.FRAMEBUFFER, sampled);
    gl.viewport(0, 0, SAMPLES, SAMPLES);
    gl.drawArrays(gl.TRIANGLES, 0, 3);
    gl.readPixels(0, 0, SAMPLES, SAMPLES, gl.RGBA, gl.FLOAT, read);
    for (let i = 0; i < attenuation.length; i++) attenuation[i] = read[4 * i];
    const window_ = room.filmWindow(attenuation, boneDark);
    grid(2, window_.subarray(4));
    gl.uniform4fv(at('view'), window_.subarray(0, 4));
    gl.uniform1i(at('show'), 1);
    gl.bindFramebuffer(gl.FRAMEBUFFER, null);
    gl.viewport(0, 0, size, size);
    gl.drawArrays(gl.TRIANGLES, 0, 3);
  }

  /**
   * @param {TeachingRoom} room
   * @param {string} who
   * @param {number | undefined} tick
   * @param {number} pixels
   */
  function sum(room, who, tick, pixels) {
    if (patient !== who) {
      meshes?.free();
      meshes = bodies(gl, room.filmMeshes());
      patient = who;
    }
    fit(pixels);
    const view = room.filmView(pixels);
    add(view, room.filmInclusions(tick, view[15]));
    return view;
  }

  return {
    /**
     * Draws the live film on a canvas, which takes its size; `who` names the patient. Returns whether it could.
     * @param {TeachingRoom} room
     * @param {CanvasRenderingContext2D} film
     * @param {{ who: string, boneDark: boolean, tick?: number, pixels: number }} picture
     */
    draw(room, film, { who, boneDark, tick, pixels }) {
      if (!alive || gl.isContextLost()) return false;
      develop(room, sum(room, who, tick, pixels), boneDark);
      if (gl.isContextLost()) return false;
      if (film.canvas.width !== pixels) film.canvas.width = film.canvas.height = pixels;
      film.drawImage(canvas, 0, 0);
      return true;
    },
    /**
     * The sums as the engine's `filmSums` has them, rows from the top: for comparing both.
     * @param {TeachingRoom} room
     * @param {string} who
     * @param {number} pixels
     */
    sums(room, who, pixels) {
      sum(room, who, undefined, pixels);
      const both = new Float32Array(4 * pixels * pixels);
      gl.readPixels(0, 0, pixels, pixels, gl.RGBA, gl.FLOAT, both);
      return Float32Array.from({ length: pixels * pixels }, (_, i) => both[4 * ((pixels - 1 - Math.floor(i / pixels)) * pixels + (i % pixels))]);
    },
    /** Gives the context back. */
    end: () => gl.getExtension('WEBGL_lose_context')?.loseContext(),
  };
}
