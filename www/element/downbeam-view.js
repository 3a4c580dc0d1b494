// <downbeam-view>: a patient under a C-arm, in any page. What it takes and tells is in interface.js; this file holds the state and
// joins attributes, engine and face. All elements of a page share one engine, and those with the same patient share that too.

import { FIRST_CATALOGUE } from '../engine/catalogue.js';
import { viewOf } from '../views/criterion-rows.js';
import { IntegrityError, reason } from '../engine/engine-load.js';
import { onceAFrame, onceQuiet } from '../base/frame.js';
import { endsOwnView, placeOf } from '../state/positioning.js';
import { createStore } from '../state/store.js';
import { attributeOf, fallbacks, readAttribute } from './attributes.js';
import { buildFace } from './face.js';
import { ATTRIBUTES, TAG } from './interface.js';
import { aim, leavePatient, takePatient } from './patients.js';
import { problemList } from './problems.js';
import { forgetEngine, sharedEngine, usage } from './shared-engine.js';
import { stateOf } from './snapshot.js';
import { sheets, styleProblem } from './styles.js';
import { watchSurroundings } from './surroundings.js';
import { textsComing, textsFor } from './words.js';

/**
 * @import { Report } from '../pkg/values.js'
 * @import { Said, ElementState } from './interface.js'
 * @import { Test } from './face.js'
 * @import { Stand } from './patients.js'
 * @import { Problem } from './problems.js'
 * @import { Engine } from './shared-engine.js'
 * @import { Texts } from './words.js'
 */

const SETTLE_MS = 350;
/** @type {readonly (keyof ElementState)[]} */
const AIM = ['patient', 'level', 'side', 'view', 'oblique_deg', 'tilt_deg', 'rotation_deg'];
/** @type {readonly (keyof ElementState)[]} */
const CASE = ['patient', 'level', 'side', 'view', 'start'];

export class DownbeamView extends HTMLElement {
  static observedAttributes = ATTRIBUTES.map((entry) => entry.name);
  static usage = usage;

  #store = createStore(/** @type {ElementState} */ ({ ...fallbacks(), ownView: null }), endsOwnView(AIM));
  #state = this.#store.state;
  #problems = problemList({ show: (sentences) => this.#face?.complain(sentences), tell: (problem) => this.#tell('downbeam-error', problem) });
  /**
   * What it says, from when it was first shown; until then as far as its language is there.
   * @type {Texts | null}
   */
  #texts = null;
  /** @type {Promise<void> | null} */
  #coming = null;
  /**
   * What was given and did not fit before its language was known, by attribute: said when it is first shown.
   * @type {Map<string, unknown>}
   */
  #unsaid = new Map();
  /** @type {ReturnType<typeof buildFace> | null} */
  #face = null;
  /**
   * What it watches while it is in a page; null while it is in none.
   * @type {ReturnType<typeof watchSurroundings> | null}
   */
  #awake = null;
  /** @type {Stand | null} */
  #stand = null;
  /** @type {Report | null} */
  #report = null;
  #failed = false;
  /** @type {Promise<void> | null} */
  #bringing = null;
  #held = false;
  /** The best view is wanted as soon as it is known. */
  #toBest = false;
  /** @type {Test} */
  #test = { asked: false, revealed: false };
  #wasReached = true;
  /** The view is another one: than was last told as settled, and than was last drawn. */
  #moved = false;
  #stale = false;
  #first = /** @type {PromiseWithResolvers<void>} */ (Promise.withResolvers());
  /** There has been a picture since it came into the page or failed. */
  #hasShown = false;
  #frame = onceAFrame(() => this.#draw());
  #settle = onceQuiet(() => this.#settled(), SETTLE_MS);

  constructor() {
    super();
    this.attachShadow({ mode: 'open' }).adoptedStyleSheets = sheets;
    this.#store.subscribe(AIM, () => {
      this.#moved = true;
      this.#test.revealed = false;
    });
    this.#store.subscribe(CASE, () => {
      this.#test.asked = false;
      this.#wasReached = false;
      this.#toBest = this.#state.start === 'best';
    });
    this.#store.subscribe(['theme'], () => this.#awake && this.#dress());
    this.#store.subscribe(['loading', 'integrity'], (changed) => this.#bringIfWanted(changed));
    this.#store.subscribe(null, () => this.#touch());
  }

  // --- Attributes and properties ---

  /**
   * @param {string} name
   * @param {string | null} before
   * @param {string | null} now
   */
  attributeChangedCallback(name, before, now) {
    if (before !== now) this.#take(name, now);
  }

  /**
   * Reads one attribute or property and changes the state; what does not fit is told and changes nothing.
   * @param {string} name
   * @param {unknown} given
   */
  #take(name, given) {
    const { key } = attributeOf(name);
    const { value, problem } = readAttribute(name, given, this.#state[key], this.#words());
    this.#problems.solved(name);
    this.#unsaid.delete(name);
    if (problem && !this.#texts) this.#unsaid.set(name, given);
    // Without digests that can be read no engine is loaded, and that is told then.
    else if (problem?.about === 'integrity') this.#problems.keep(name, problem);
    else if (problem) this.#problems.add(name, problem);
    else this.#store.set({ [key]: value });
  }

  #words() {
    return this.#texts ?? textsFor(this);
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
    return this.#problems.list();
  }

  static {
    for (const { name, key } of ATTRIBUTES) {
      Object.defineProperty(this.prototype, name, {
        configurable: true,
        enumerable: true,
        /** @this {DownbeamView} */
        get() {
          return this.#state[key];
        },
        /**
         * @this {DownbeamView}
         * @param {unknown} value
         */
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
    this.#draw();
    const { oblique_deg, tilt_deg } = placeOf(view.best);
    return { oblique: oblique_deg, tilt: tilt_deg, reached: view.reached };
  }

  async check() {
    await this.#start();
    this.#ask();
    return stateOf(this.#state, this.#report, true);
  }

  restart() {
    const fitting = ATTRIBUTES.flatMap(({ name, key }) => {
      const { value } = readAttribute(name, this.getAttribute(name), this.#state[key], this.#words());
      return value === undefined ? [] : [/** @type {const} */ ([key, value])];
    });
    const patch = /** @type {Partial<ElementState>} */ ({ ownView: null, ...Object.fromEntries(fitting) });
    this.#test = { asked: false, revealed: false };
    this.#toBest = patch.start === 'best';
    this.#store.set(patch);
    this.#touch();
  }

  async report() {
    await this.#start();
    return structuredClone(this.#report);
  }

  async png() {
    await this.#start();
    const texts = this.#words();
    return this.#shown().film.png([texts.picture.caption(this.#state), texts.caution]);
  }

  // --- In and out of the page ---

  connectedCallback() {
    if (this.#awake) return;
    // A property that was set before the element was defined would hide ours.
    for (const { name } of ATTRIBUTES) {
      if (!Object.hasOwn(this, name)) continue;
      const own = /** @type {Record<string, unknown>} */ (/** @type {unknown} */ (this));
      const value = own[name];
      delete own[name];
      own[name] = value;
    }
    this.#coming = this.#texts ? null : textsComing(this);
    if (this.#coming) this.#coming.then(() => this.isConnected && !this.#awake && this.#wake());
    else this.#wake();
  }

  disconnectedCallback() {
    // An element that is only moved is back before this runs.
    queueMicrotask(() => {
      if (!this.isConnected && this.#awake) this.#sleep();
    });
  }

  /** Moved by `moveBefore`: nothing has to be done. */
  connectedMoveCallback() {}

  /** Its face, once it was shown. */
  #shown() {
    if (!this.#face) throw new Error(this.#words().problem.notHere);
    return this.#face;
  }

  #wake() {
    const texts = (this.#texts ??= textsFor(this));
    const state = this.#state;
    const face = (this.#face ??= buildFace(/** @type {ShadowRoot} */ (this.shadowRoot), {
      state,
      catalogue: FIRST_CATALOGUE,
      change: this.#store.set,
      hold: (on) => this.#hold(on),
      check: () => this.#ask(),
      toggleBest: () => (state.ownView ? this.#store.set({ ...state.ownView, ownView: null }) : this.#showBest()),
      retry: () => this.#bring(),
      redraw: () => this.#frame(),
      without: (sentence) => {
        this.#store.set({ through: false });
        this.#problems.add('engine', { about: 'engine', attribute: null, value: null, sentence });
      },
    }, texts));
    for (const [name, given] of this.#unsaid) this.#take(name, given);
    this.#problems.show();
    if (!this.#bringing) face.cover.waiting();
    if (styleProblem) this.#problems.add('style', { about: 'style', attribute: null, value: null, sentence: texts.problem.style(styleProblem) });
    this.#toBest = state.start === 'best';
    const awake = watchSurroundings(face.image, {
      resized: () => face.film.fit() && this.#frame(),
      scheme: () => this.#dress(),
    });
    this.#awake = awake;
    this.#dress();
    this.#showWords();
    if (state.loading === 'eager') this.#bring();
    else awake.whenNear(this, () => this.#bring());
  }

  /** Gives back all that it holds: observers, listeners, its share in a patient. */
  #sleep() {
    this.#awake?.stop();
    this.#awake = null;
    // What is being brought is given back when it is there.
    if (!this.#bringing) this.#leave();
    this.#face?.cover.waiting();
  }

  /** Gives back its share in a patient; there is no picture any more. */
  #leave() {
    if (this.#stand) leavePatient(this.#stand);
    this.#stand = this.#report = null;
    this.#hasShown = false;
    this.#face?.film.forget();
  }

  #dress() {
    if (this.#awake) this.#face?.dress(this.#awake.look(this.#state.theme));
  }

  // --- State ---

  /**
   * It is to load at once, or under digests that may fit after one that has failed.
   * @param {readonly (keyof ElementState)[]} changed
   */
  #bringIfWanted(changed) {
    const now = changed.includes('loading') && this.#state.loading === 'eager';
    const again = changed.includes('integrity') && this.#failed;
    if (this.#awake && (now || again)) this.#bring();
  }

  /** Something changed: draw it, and settle once it has been quiet. */
  #touch() {
    if (!this.#awake) return;
    this.#stale = true;
    this.#frame();
    this.#settle();
  }

  /** @param {boolean} on */
  #hold(on) {
    this.#held = on;
    if (!on) this.#settle();
  }

  #ask() {
    if (!this.#report) return;
    this.#test = { asked: true, revealed: true };
    this.#showWords();
    this.#face?.announce(this.#state, this.#report, this.#test);
    this.#reachedOrNot();
  }

  #showBest() {
    const best = viewOf(this.#report, this.#state.view)?.best;
    if (!best) return;
    const { oblique_deg, tilt_deg, ownView } = this.#state;
    const { revealed } = this.#test;
    this.#store.set({ ...placeOf(best), ownView: ownView ?? { oblique_deg, tilt_deg } });
    this.#test.revealed = revealed;
  }

  // --- Engine ---

  /** Resolves once there is a picture; rejects with the sentence that the element shows. */
  async #start() {
    if (this.isConnected) await this.#coming;
    if (!this.#awake) throw new Error(this.#words().problem.notHere);
    if (!this.#report || this.#stand?.name !== this.#state.patient) {
      await this.#bring();
      this.#stale = true;
    }
    if (this.#stale) this.#draw();
    if (!this.#report) throw new Error(this.#problems.get('engine')?.sentence ?? this.#words().loading.failedHeading);
    return this.#report;
  }

  /** Brings engine and patient to what the state asks for, one at a time; a later wish is met before it ends. */
  async #bring() {
    this.#bringing ??= this.#bringAll().finally(() => void (this.#bringing = null));
    return this.#bringing;
  }

  async #bringAll() {
    const state = this.#state;
    const { cover, film } = this.#shown();
    const texts = this.#words();
    this.#failed = false;
    this.#problems.solved('engine');
    try {
      const bad = this.#problems.get('integrity');
      if (bad) throw new IntegrityError(bad.sentence);
      if (!this.#stand) cover.loading(null);
      const engine = await sharedEngine(state.integrity, texts.loading, (percent) => cover.loading(percent));
      while (this.#awake && this.#stand?.name !== state.patient) await this.#bringPatient(engine);
    } catch (error) {
      return this.#fail(error instanceof IntegrityError ? 'integrity' : 'engine', error instanceof Error ? error.message : String(error));
    }
    if (!this.#awake) return this.#leave();
    cover.clear();
    film.fit();
    this.#frame();
  }

  /** @param {Engine} engine */
  async #bringPatient(engine) {
    const state = this.#state;
    const wanted = state.patient;
    this.#face?.cover.shaping(wanted);
    this.#report = null;
    try {
      this.#stand = await takePatient(engine, wanted, this.#stand);
    } catch (error) {
      const kept = this.#stand?.name ?? String(attributeOf('patient').fallback);
      if (wanted === kept) throw new Error(this.#words().loading.failedRun(reason(error)), { cause: error });
      this.#problems.add('patient', { about: 'attribute', attribute: 'patient', value: wanted, sentence: this.#words().problem.patient(reason(error), kept) });
      // Taken back without a word to those who listen: nothing that they show has changed.
      if (state.patient === wanted) state.patient = kept;
    }
  }

  /** Puts the state on screen. */
  #draw() {
    if (!this.#awake) return;
    const state = this.#state;
    if (this.#stand && this.#stand.name !== state.patient && !this.#failed) this.#bring();
    if (this.#stand && !this.#bringing && !this.#failed) {
      try {
        this.#picture(this.#stand);
      } catch (error) {
        forgetEngine(this.#stand.engine);
        return this.#fail('engine', this.#words().loading.failedRun(reason(error)));
      }
    }
    this.#showWords();
  }

  /** @param {Stand} stand */
  #picture(stand) {
    const state = this.#state;
    const { room } = stand;
    const face = this.#face;
    if (!room || !face) return;
    this.#stale = false;
    aim(stand, state);
    let report = (this.#report = room.report());
    if (this.#toBest) {
      this.#toBest = false;
      this.#showBest();
      aim(stand, state);
      report = this.#report = room.report();
    }
    face.film.expose(stand, state);
    face.film.mark(stand, state, report);
    face.bones(stand, state, report);
    if (!this.#hasShown) this.#isReady();
    else if (this.#moved) this.#tell('downbeam-change', stateOf(state, report, false));
  }

  #isReady() {
    this.#hasShown = true;
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
    this.#face?.announce(this.#state, this.#report, this.#test);
    if (this.#state.checks !== 'ask' || this.#test.revealed) this.#reachedOrNot();
  }

  #reachedOrNot() {
    const now = stateOf(this.#state, this.#report, true);
    if (now.reached && !this.#wasReached) this.#tell('downbeam-reached', now);
    this.#wasReached = now.reached;
  }

  /**
   * @param {'engine' | 'integrity'} about
   * @param {string} sentence
   */
  #fail(about, sentence) {
    this.#leave();
    this.#failed = true;
    if (!this.#awake) return;
    this.#face?.cover.failed(sentence);
    this.#problems.add('engine', { about, attribute: about === 'integrity' ? 'integrity' : null, value: null, sentence });
    this.#showWords();
  }

  /**
   * @param {string} type
   * @param {ReturnType<typeof stateOf> | Problem} detail
   */
  #tell(type, detail) {
    this.dispatchEvent(new CustomEvent(type, { detail, bubbles: true, composed: true }));
  }
}

if (!customElements.get(TAG)) customElements.define(TAG, DownbeamView);
