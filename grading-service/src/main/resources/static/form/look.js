// How the form looks. A shop sets the variables that begin with --sleeve; light and dark follow the color-scheme of its page.

export default `
:host { display: block; container-type: inline-size; color: var(--ink);
  --ink: var(--sleeve-ink, light-dark(#1f2e2c, #ebe6d9));
  --soft: var(--sleeve-soft-ink, light-dark(#4f5c58, #b9beb2));
  --ground: var(--sleeve-ground, light-dark(#ffffff, #1a211f));
  --field: var(--sleeve-field, light-dark(#ffffff, #252e2b));
  --edge: var(--sleeve-edge, light-dark(#77705f, #93a098));
  --accent: var(--sleeve-accent, light-dark(#1c5877, #93cbe8));
  --on-accent: var(--sleeve-on-accent, light-dark(#ffffff, #10242f));
  --doubt: var(--sleeve-doubt, light-dark(#7a5200, #e9bd6d));
  --wrong: var(--sleeve-wrong, light-dark(#9d2c25, #f2a097));
  --paper: var(--sleeve-paper, #fffef9);
  --radius: var(--sleeve-radius, 0.5rem);
  font: var(--sleeve-font, inherit); line-height: 1.45; }
:host([hidden]) { display: none; }
* { box-sizing: border-box; }
[hidden] { display: none !important; }
.form { background: var(--ground); border-radius: var(--radius); padding: 1rem; }
.title, p { margin: 0 0 0.6rem; }
.title { font-size: 1.35em; line-height: 1.2; }
.title:focus { outline: none; }
.how, .small { font-size: 0.875em; color: var(--soft); }
.bench { display: grid; gap: 1rem; }
.measures { display: grid; gap: 1rem 1.4rem; grid-template-columns: repeat(auto-fill, minmax(min(100%, 16rem), 1fr)); align-content: start; }
.measure { display: flex; gap: 0.8rem; align-items: flex-start; }
.measure > div { flex: 1; min-width: 0; }
label { display: block; font-weight: 600; }
.box { display: flex; align-items: center; gap: 0.4rem; margin: 0.15rem 0 0.3rem; }
input { font: inherit; color: inherit; width: 100%; max-width: 9rem; min-height: 2.75rem; padding: 0.3rem 0.6rem; border: 1px solid var(--edge); border-radius: var(--radius); background: var(--field); }
input::placeholder { color: var(--soft); opacity: 1; }
input[aria-invalid] { border-color: var(--wrong); box-shadow: 0 0 0 1px var(--wrong); }
.unit { color: var(--soft); }
.says { margin: 0 0 0.3rem; font-size: 0.925em; }
.says:empty { display: none; }
.says.doubtful { color: var(--doubt); font-weight: 600; }
.says.wrong { color: var(--wrong); font-weight: 600; }
.says.estimated { color: var(--soft); }
.measure[data-judged="doubtful"] input { border-color: var(--doubt); box-shadow: 0 0 0 1px var(--doubt); }
button { font: inherit; font-weight: 600; cursor: pointer; min-height: 2.75rem; padding: 0.5rem 1.4rem; border: 1px solid var(--accent); border-radius: var(--radius); background: var(--accent); color: var(--on-accent); }
:focus-visible { outline: 3px solid var(--accent); outline-offset: 2px; }
.preview { min-width: 0; }
.preview figure { margin: 0; }
.preview .room { min-height: 14rem; display: grid; place-items: center; background: var(--paper); color: #4f5c58; border-radius: var(--radius); padding: 0.6rem; text-align: center; }
.behind svg { opacity: 0.55; }
.status { min-height: 1.5em; margin-top: 0.6rem; }
.foot { margin-top: 1rem; }
@container (min-width: 46rem) { .bench { grid-template-columns: minmax(0, 1fr) minmax(15rem, 22rem); } .preview { position: sticky; top: 1rem; align-self: start; } }
.figure { display: block; width: 5.2rem; flex: none; background: var(--paper); border-radius: var(--radius); }
.figure path, .figure ellipse { vector-effect: non-scaling-stroke; fill: none; stroke-linecap: round; stroke-linejoin: round; }
.figure .skin { fill: #efe5d2; stroke: #5d5546; stroke-width: 1.3px; }
.figure .detail { stroke: #b3a78f; stroke-width: 1.2px; }
.figure .far { stroke: #7a5f14; stroke-width: 1.2px; stroke-dasharray: 2.5 3; }
.figure .tape-edge { stroke: #6b520c; stroke-width: 5.5px; stroke-linecap: butt; }
.figure .tape { stroke: var(--sleeve-tape, #f1c84b); stroke-width: 3.5px; stroke-linecap: butt; }
.worn { display: block; width: 100%; max-height: 26rem; }
.worn path, .worn ellipse { fill: none; stroke-width: 2; stroke-linejoin: round; }
.worn .worn-body { fill: #f6f1e4; stroke: #d8cfb8; }
.worn .worn-skin { fill: #efe0cd; stroke: #8d7c62; }
.worn .worn-sleeve { fill: var(--sleeve-cloth, #fbf8ef); stroke: #1f2e2c; }
.worn .worn-line { stroke: #1f2e2c; stroke-width: 1.4; }
.worn .worn-overlay path { fill: var(--sleeve-overlay, #d5e4ea); stroke: #1c5877; stroke-width: 2.4; }
.worn .worn-fold { stroke: #1c5877; stroke-width: 1.5; stroke-opacity: 0.75; }
.worn .worn-measure { stroke: #9d2c25; stroke-width: 1.2; }
.worn text { font-size: 15px; fill: #1f2e2c; }
`;
