// The look of the linked drawings, adopted when they are: the page's first style sheets hold only the room that they take.
// As text in a module, since a style sheet of its own would be missing where the page is a single file.

const LOOK = `
.gantry h2 { align-self: center; }
.gantry-parts select { width: 100%; }
.gantry-parts .quiet { margin-top: 4px; }
.gantry-svg { touch-action: pan-y; cursor: grab; user-select: none; -webkit-user-select: none; }
.gantry-svg:active { cursor: grabbing; }
.gantry-svg .g-receptor, .gantry-svg .g-face, .gantry-svg .g-grip { touch-action: none; }
.gantry-svg .g-grip { stroke: var(--accent); stroke-width: 2; pointer-events: none; }
.gantry-svg .g-bones { stroke: var(--text); stroke-width: .7; }
.gantry-svg .g-aim, .near .n-aim { stroke: var(--text); stroke-width: 1.6; stroke-dasharray: 6 3; }
.gantry-svg .g-landing, .near .n-target { fill: var(--text); stroke: var(--bg); stroke-width: 1.5; vector-effect: non-scaling-stroke; }
.gantry-svg .g-lit { stroke: var(--accent); stroke-width: 3.5; }
.near.gantry-svg text { font-size: 6.4px; }
.near .n-neighbours { stroke: var(--edge); stroke-width: .9; }
.near .n-bone { stroke: var(--text); stroke-width: 1.5; }
.near .n-below { stroke: var(--text); stroke-width: 2.4; stroke-dasharray: 6 3; }
.near .n-ray { stroke: var(--accent); stroke-width: 2; }
.near .n-lit-halo { stroke: var(--bg); stroke-width: 8; }
.near .n-lit { stroke: var(--accent); stroke-width: 5; }
.near .n-needle { stroke: var(--text); stroke-width: 3; }
.near .n-target, .near .n-tip { r: 2px; }
.near .n-tip { fill: var(--bg); stroke: var(--text); stroke-width: 2; vector-effect: non-scaling-stroke; }
.lit-name { position: absolute; left: 50%; bottom: 8px; translate: -50% 0; max-width: calc(100% - 16px); padding: 3px 10px; border-radius: 6px; background: rgb(5 7 10 / 86%); color: #f4f7f8; border: 1px solid #f4f7f8; font-size: var(--size-small); font-weight: 600; pointer-events: none; }
@media (forced-colors: active) { .lit-name { background: Canvas; color: CanvasText; border-color: CanvasText; } }
`;

/** Gives the page this look. */
export function adoptLook() {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(LOOK);
  document.adoptedStyleSheets.push(sheet);
}
