// The free live film, loaded after the first picture: on the graphics processor at the screen's own sharpness where there is one that can,
// else by the engine: as coarse as keeps up while it moves, and sharp once it rests, in slices that input never waits for.

/**
 * @import { TeachingRoom } from '../pkg/downbeam.js'
 *
 * What is drawn: whom (a text for the patient), how, and as of which tick.
 * @typedef {{ who: string, boneDark: boolean, tick?: number }} LivePicture
 *
 * @typedef {NonNullable<ReturnType<typeof import('./gpu.js').gpuFilm>>} GpuFilm
 * @typedef {ReturnType<typeof liveFilm>} LiveFilm
 */

/** Sizes of the engine's film while it moves, canvas pixels. */
const PACES = [512, 384, 256, 192];
/** A frame that takes longer than this wants a coarser film, one that would take less than that a finer one, ms. */
const [SLOW_MS, QUICK_MS] = [26, 13];
/** How long the hand has rested before the film is made sharp, and a slice of making it so, ms. */
const [REST_MS, SLICE_MS] = [140, 8];
/** Frames in a row that a graphics processor may be slow in. */
const PATIENCE = 4;

/**
 * Sharpness of a film at rest, canvas pixels: those of the screen, in steps that the engine has.
 * @param {number} screen
 */
export const restPixels = (screen) => Math.min(1024, Math.max(512, 32 * Math.ceil(screen / 32)));

/**
 * The size for the next frame, after one of `size` has taken `ms`.
 * @param {number} size
 * @param {number} ms
 */
export function nextPace(size, ms) {
  const i = PACES.indexOf(size);
  if (ms > SLOW_MS && i < PACES.length - 1) return PACES[i + 1];
  // Time goes a little slower than the number of pixels.
  const finer = PACES[i - 1];
  return finer && ms * (finer / size) ** 1.7 < QUICK_MS ? finer : size;
}

/** A processor that draws by program would be slower than the engine. */
function inSoftware() {
  const gl = document.createElement('canvas').getContext('webgl2');
  const info = gl?.getExtension('WEBGL_debug_renderer_info');
  const name = info && gl ? gl.getParameter(info.UNMASKED_RENDERER_WEBGL) : '';
  gl?.getExtension('WEBGL_lose_context')?.loseContext();
  return !gl || /swiftshader|llvmpipe|softpipe|software|basic render/i.test(name);
}

/**
 * `screen()`: the film's side in screen pixels; `redraw()` when what was drawn is gone; `rested()` once a film that was drawn in a hurry is sharp.
 * `always`: a graphics processor even where it is slow.
 * `draw(room, film, {who, boneDark, tick})` draws on the 2D context `film`; `stop()` before anything else is drawn there.
 * @param {{ screen: () => number, redraw: () => void, rested: () => void, always?: boolean }} how
 */
export function liveFilm({ screen, redraw, rested, always = false }) {
  let pace = PACES[0];
  /** @type {GpuFilm | null} */
  let gpu = null;
  let slow = 0;
  let asked = 0;
  let timer = 0;
  /** @type {(() => void) | null} */
  let last = null;
  /** Whether what is on the canvas was drawn coarser than it should be, to keep up. */
  let hurried = false;
  /** @param {'sharp' | 'moving'} how */
  function tell(how) {
    document.documentElement.dataset.film = how;
    const before = hurried;
    hurried = how === 'moving' && pace < PACES[0];
    if (before && how === 'sharp') rested();
  }

  let tried = false;
  /** @param {typeof TeachingRoom} Room */
  function tryThere(Room) {
    if (tried) return;
    tried = true;
    if (!always && inSoftware()) return;
    import('./gpu.js').then(({ gpuFilm }) => {
      gpu = gpuFilm(Room.filmTexture(), () => {
        gpu = null;
        redraw();
      });
      if (gpu) redraw();
    }).catch(() => (gpu = null));
  }

  function stop() {
    asked += 1;
    clearTimeout(timer);
  }

  /**
   * Draws on the graphics processor; false where that is none or no longer.
   * @param {TeachingRoom} room
   * @param {CanvasRenderingContext2D} film
   * @param {LivePicture} picture
   */
  function drawThere(room, film, picture) {
    if (!gpu) return false;
    const started = performance.now();
    try {
      if (!gpu.draw(room, film, { ...picture, pixels: restPixels(screen()) })) return false;
    } catch {
      gpu = null;
      return false;
    }
    slow = performance.now() - started > SLOW_MS ? slow + 1 : 0;
    if (slow > PATIENCE && !always) {
      gpu.end();
      gpu = null;
    }
    return true;
  }

  /**
   * Makes the film at rest, a slice at a time, until something else is drawn.
   * @param {TeachingRoom} room
   * @param {CanvasRenderingContext2D} film
   * @param {LivePicture} picture
   */
  function sharpen(room, film, { boneDark, tick }) {
    const mine = asked;
    const pixels = restPixels(screen());
    if (film.canvas.width === pixels) return void tell('sharp');
    room.beginStill(pixels, tick);
    const slice = () => {
      if (mine !== asked) return;
      const until = performance.now() + SLICE_MS;
      do {
        if (!room.stepStill()) continue;
        room.showStill(film, boneDark);
        return void tell('sharp');
      } while (performance.now() < until);
      setTimeout(slice);
    };
    slice();
  }

  return {
    /**
     * @param {TeachingRoom} room
     * @param {CanvasRenderingContext2D} film
     * @param {LivePicture} picture
     */
    draw(room, film, picture) {
      stop();
      tryThere(/** @type {typeof TeachingRoom} */ (room.constructor));
      last = () => sharpen(room, film, picture);
      if (drawThere(room, film, picture)) return void tell('sharp');
      const started = performance.now();
      room.drawRadiograph(film, picture.boneDark, pace);
      pace = nextPace(pace, performance.now() - started);
      tell('moving');
      timer = setTimeout(last, REST_MS);
    },
    /** Anything else than the live film is drawn. */
    stop() {
      stop();
      last = null;
      delete document.documentElement.dataset.film;
    },
    /** The sharpness that is wanted has changed. */
    rest() {
      if (!last) return;
      stop();
      if (gpu) redraw();
      else timer = setTimeout(last, REST_MS);
    },
    hurried: () => hurried,
    /** The film of the graphics processor, or null: for tests. */
    gpu: () => gpu,
  };
}
