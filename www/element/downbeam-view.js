// <downbeam-view>: a patient under a C-arm, in any page. What it takes and tells is in interface.js; this file holds the state and
// joins attributes, engine and face. All elements of a page share one engine, and those with the same patient share that too.

import { FIRST_CATALOGUE } from '../catalogue.js';
import { viewOf } from '../criterion-rows.js';
import { IntegrityError, reason } from '../engine-load.js';
import { onceAFrame, onceQuiet } from '../frame.js';
import { BY_NAME, fallbacks, readAttribute } from './attributes.js';
import { buildFace } from './face.js';
import { ATTRIBUTES, TAG } from './interface.js';
import { aim, leavePatient, takePatient } from './patients.js';
import { forgetEngine, sharedEngine, usage } from './shared-engine.js';
import { stateOf } from './snapshot.js';
import { sheets, styleProblem } from './styles.js';
import { textsFor } from './words.js';

const SETTLE_MS = 350;
/** An element begins to load when it comes this near to the screen. */
const NEAR = '300px';
const AIM = ['patient', 'level', 'side', 'view', 'oblique', 'tilt', 'rotation'];
const CASE = ['patient', 'level', 'side', 'view', 'start'];

export class DownbeamView extends HTMLElement {
  static observedAttributes = ATTRIBUTES.map((entry) => entry.name);
  static usage = usage;

  #state = { ...fallbacks(), ownView: null };
  #problems = new Map();
  #texts = null;
  #face = null;
  #awake = null;
  #stand = null;
  #report = null;
  #failed = false;
  #bringing = false;
  #held = false;
  /** The best view is wanted as soon as it is known. */
  #toBest = false;
  /** Whether the learner has asked for the checks: ever, and of the view as it stands. */
  #test = { asked: false, revealed: false };
  #wasReached = true;
  /** The view is another one: than was last told as settled, and than was last drawn. */
  #moved = false;
  #stale = false;
  #first = promised();
  #frame = onceAFrame(() => this.#draw());
  #settle = onceQuiet(() => this.#settled(), SETTLE_MS);

  constructor() {
    super();
    this.attachShadow({ mode: 'open' }).adoptedStyleSheets = sheets;
  }

  // --- Attributes and properties ---

  attributeChangedCallback(name, before, now) {
    if (before !== now) this.#take(name, now);
  }

  /** Reads one attribute or property and changes the state; what does not fit is told and changes nothing. */
  #take(name, given) {
    const { key } = BY_NAME.get(name);
    const { value, problem } = readAttribute(name, given, this.#state[key], this.#words());
    this.#solved(name);
    // Without digests that can be read no engine is loaded, and that is told then.
    if (problem?.about === 'integrity') this.#problems.set(name, problem);
    else if (problem) this.#complain(name, problem);
    else this.#change({ [key]: value });
  }

  #words() {
    return (this.#texts ??= textsFor(this));
  }

  get score() {
    return viewOf(this.#report, this.#state.view)?.score ?? null;
  }

  get reached() {
    return stateOf(this.#state, this.#report, false).reached;
  }

  get ready() {
    return this.#first.promise;
  }

  get problems() {
    return [...this.#problems.values()];
  }

  static {
    for (const { name, key } of ATTRIBUTES) {
      Object.defineProperty(this.prototype, name, {
        configurable: true,
        enumerable: true,
        get() {
          return this.#state[key];
        },
        set(value) {
          this.#take(name, value);
        },
      });
    }
  }

  // --- Methods ---

  async best() {
    await this.#start();
    const view = viewOf(this.#report, this.#state.view);
    if (!view) throw new Error(this.#words().problem.nothingChecked);
    this.#showBest();
    return { oblique: tenths(view.best.oblique), tilt: tenths(view.best.tilt), reached: view.reached };
  }

  async check() {
    await this.#start();
    this.#ask();
    return stateOf(this.#state, this.#report, true);
  }

  restart() {
    const patch = { ownView: null };
    for (const { name, key } of ATTRIBUTES) {
      const { value } = readAttribute(name, this.getAttribute(name), this.#state[key], this.#words());
      if (value !== undefined) patch[key] = value;
    }
    this.#test = { asked: false, revealed: false };
    this.#toBest = patch.start === 'best';
    this.#change(patch);
    this.#touch();
  }

  async report() {
    await this.#start();
    return structuredClone(this.#report);
  }

  async png() {
    await this.#start();
    return this.#face.film.png(this.#words().caution);
  }

  // --- In and out of the page ---

  connectedCallback() {
    if (this.#awake) return;
    // A property that was set before the element was defined would hide ours.
    for (const { name } of ATTRIBUTES) {
      if (!Object.hasOwn(this, name)) continue;
      const value = this[name];
      delete this[name];
      this[name] = value;
    }
    this.#wake();
  }

  disconnectedCallback() {
    // An element that is only moved is back before this runs.
    queueMicrotask(() => {
      if (!this.isConnected && this.#awake) this.#sleep();
    });
  }

  /** Moved by `moveBefore`: nothing has to be done. */
  connectedMoveCallback() {}

  #wake() {
    const texts = this.#words();
    const state = this.#state;
    this.#face ??= buildFace(this.shadowRoot, {
      state,
      catalogue: FIRST_CATALOGUE,
      change: (patch) => this.#change(patch),
      hold: (on) => this.#hold(on),
      check: () => this.#ask(),
      toggleBest: () => (state.ownView ? this.#change({ ...state.ownView, ownView: null }) : this.#showBest()),
      retry: () => this.#bring(),
    }, texts);
    if (styleProblem) this.#complain('style', { about: 'style', attribute: null, value: null, sentence: texts.problem.style(styleProblem) });
    this.#toBest = state.start === 'best';
    const { signal, stop } = stopper();
    this.#awake = stop;
    const light = matchMedia('(prefers-color-scheme: light)');
    light.addEventListener('change', () => this.#dress(light), { signal });
    this.#dress(light);
    const resized = new ResizeObserver(() => this.#face.film.fit() && this.#frame());
    resized.observe(this.#face.image);
    signal.addEventListener('abort', () => resized.disconnect());
    this.#showWords();
    if (state.loading === 'eager') this.#bring();
    else this.#whenNear(signal);
  }

  #whenNear(signal) {
    const near = new IntersectionObserver((seen) => {
      if (!seen.some((entry) => entry.isIntersecting)) return;
      near.disconnect();
      this.#bring();
    }, { rootMargin: NEAR });
    near.observe(this);
    signal.addEventListener('abort', () => near.disconnect());
  }

  /** Gives back all that it holds: observers, listeners, its share in a patient. */
  #sleep() {
    this.#awake();
    this.#awake = null;
    if (this.#stand) leavePatient(this.#stand);
    this.#stand = this.#report = null;
    this.#face.film.forget();
    this.#face.cover.waiting();
  }

  #dress(light) {
    const { theme } = this.#state;
    this.#face.dress(theme === 'light' || (theme === 'device' && light.matches) ? 'light' : 'dark');
  }

  // --- State ---

  #change(patch) {
    const state = this.#state;
    const changed = Object.keys(patch).filter((key) => state[key] !== patch[key]);
    if (changed.length === 0) return;
    Object.assign(state, patch);
    const has = (keys) => changed.some((key) => keys.includes(key));
    if (has(AIM)) {
      this.#moved = true;
      this.#test.revealed = false;
      if (!('ownView' in patch)) state.ownView = null;
    }
    if (has(CASE)) {
      this.#test.asked = false;
      this.#wasReached = false;
      this.#toBest = state.start === 'best';
    }
    if (!this.#awake) return;
    if (has(['theme'])) this.#dress(matchMedia('(prefers-color-scheme: light)'));
    if ((has(['loading']) && state.loading === 'eager') || (has(['integrity']) && this.#failed)) this.#bring();
    this.#touch();
  }

  /** Something changed: draw it, and settle once it has been quiet. */
  #touch() {
    if (!this.#awake) return;
    this.#stale = true;
    this.#frame();
    this.#settle();
  }

  #hold(on) {
    this.#held = on;
    if (!on) this.#settle();
  }

  #ask() {
    if (!this.#report) return;
    this.#test = { asked: true, revealed: true };
    this.#showWords();
    this.#face.announce(this.#state, this.#report, this.#test);
    this.#reachedOrNot();
  }

  #showBest() {
    const best = viewOf(this.#report, this.#state.view)?.best;
    if (!best) return;
    const { oblique, tilt, ownView } = this.#state;
    const { revealed } = this.#test;
    this.#change({ oblique: tenths(best.oblique), tilt: tenths(best.tilt), ownView: ownView ?? { oblique, tilt } });
    this.#test.revealed = revealed;
  }

  // --- Engine ---

  /** Resolves once there is a picture; rejects with the sentence that the element shows. */
  async #start() {
    if (!this.#awake) throw new Error(this.#words().problem.notHere);
    if (!this.#report || this.#stand.name !== this.#state.patient) {
      await this.#bring();
      this.#stale = true;
    }
    if (this.#stale) this.#draw();
    if (!this.#report) throw new Error([...this.#problems.values()].at(-1)?.sentence ?? this.#words().loading.failedHeading);
    return this.#report;
  }

  /** Brings engine and patient to what the state asks for, one at a time; a later wish is met before it ends. */
  async #bring() {
    this.#bringing ||= this.#bringAll().finally(() => (this.#bringing = false));
    return this.#bringing;
  }

  async #bringAll() {
    const state = this.#state;
    const { cover } = this.#face;
    const texts = this.#words();
    this.#failed = false;
    this.#solved('engine');
    try {
      const bad = this.#problems.get('integrity');
      if (bad) throw new IntegrityError(bad.sentence);
      if (!this.#stand) cover.loading(null);
      const engine = await sharedEngine(state.integrity, texts.loading, (percent) => cover.loading(percent));
      while (this.#awake && this.#stand?.name !== state.patient) await this.#bringPatient(engine);
    } catch (error) {
      return this.#fail(error instanceof IntegrityError ? 'integrity' : 'engine', error.message);
    }
    if (!this.#awake) return;
    cover.clear();
    this.#face.film.fit();
    this.#frame();
  }

  async #bringPatient(engine) {
    const state = this.#state;
    const wanted = state.patient;
    this.#face.cover.shaping(wanted);
    this.#report = null;
    let stand;
    try {
      stand = await takePatient(engine, wanted, this.#stand);
    } catch (error) {
      const kept = this.#stand?.name ?? BY_NAME.get('patient').fallback;
      if (wanted === kept) throw new Error(this.#words().loading.failedRun(reason(error)), { cause: error });
      this.#complain('patient', { about: 'attribute', attribute: 'patient', value: wanted, sentence: this.#words().problem.patient(reason(error), kept) });
      if (state.patient === wanted) state.patient = kept;
      return;
    }
    this.#stand = stand;
    if (this.#awake) return;
    leavePatient(stand);
    this.#stand = null;
  }

  /** Puts the state on screen. */
  #draw() {
    if (!this.#awake) return;
    const state = this.#state;
    if (this.#stand && this.#stand.name !== state.patient && !this.#failed) this.#bring();
    if (this.#stand && !this.#bringing && !this.#failed) {
      try {
        this.#picture();
      } catch (error) {
        forgetEngine(this.#stand.engine);
        return this.#fail('engine', this.#words().loading.failedRun(reason(error)));
      }
    }
    this.#showWords();
  }

  #picture() {
    const state = this.#state;
    const { film } = this.#face;
    const stand = this.#stand;
    const isFirst = !this.#report;
    this.#stale = false;
    aim(stand, state);
    this.#report = stand.room.report();
    if (this.#toBest) {
      this.#toBest = false;
      this.#showBest();
      aim(stand, state);
      this.#report = stand.room.report();
    }
    film.expose(stand, state);
    film.mark(stand, state, this.#report);
    if (isFirst) this.#isReady();
    else if (this.#moved) this.#tell('downbeam-change', stateOf(state, this.#report, false));
  }

  #isReady() {
    this.#moved = false;
    this.#wasReached = this.reached;
    this.#first.resolve();
    this.#tell('downbeam-ready', stateOf(this.#state, this.#report, true));
  }

  #showWords() {
    this.#face?.show(this.#state, this.#report, this.#test);
  }

  /** It stands still: told, said, and seen whether the view is reached. */
  #settled() {
    if (this.#held || !this.#awake || !this.#report || !this.#moved) return;
    this.#moved = false;
    this.#tell('downbeam-change', stateOf(this.#state, this.#report, true));
    this.#face.announce(this.#state, this.#report, this.#test);
    if (this.#state.checks !== 'ask' || this.#test.revealed) this.#reachedOrNot();
  }

  #reachedOrNot() {
    const now = stateOf(this.#state, this.#report, true);
    if (now.reached && !this.#wasReached) this.#tell('downbeam-reached', now);
    this.#wasReached = now.reached;
  }

  // --- What is wrong ---

  #fail(about, sentence) {
    if (this.#stand) leavePatient(this.#stand);
    this.#stand = this.#report = null;
    this.#failed = true;
    if (!this.#awake) return;
    this.#face.film.forget();
    this.#face.cover.failed(sentence);
    this.#problems.set('engine', { about, attribute: about === 'integrity' ? 'integrity' : null, value: null, sentence });
    this.#showWords();
    this.#tell('downbeam-error', this.#problems.get('engine'));
  }

  #complain(name, problem) {
    this.#problems.set(name, problem);
    this.#showProblems();
    // Not at once: while the page is being read, its listeners may not stand yet.
    setTimeout(() => this.#tell('downbeam-error', problem));
  }

  #solved(name) {
    if (this.#problems.delete(name)) this.#showProblems();
  }

  /** In the notice: all but why there is no engine, which stands on the film. */
  #showProblems() {
    this.#face?.complain([...this.#problems].filter(([name]) => name !== 'engine' && name !== 'integrity').map(([, problem]) => problem.sentence));
  }

  #tell(type, detail) {
    this.dispatchEvent(new CustomEvent(type, { detail, bubbles: true, composed: true }));
  }
}

const tenths = (degrees) => Math.round(degrees * 10) / 10;

function promised() {
  const kept = {};
  kept.promise = new Promise((resolve) => (kept.resolve = resolve));
  return kept;
}

function stopper() {
  const controller = new AbortController();
  return { signal: controller.signal, stop: () => controller.abort() };
}

if (!customElements.get(TAG)) customElements.define(TAG, DownbeamView);
