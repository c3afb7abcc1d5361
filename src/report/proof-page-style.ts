// How the proof page looks: on a screen, in the dark, on paper, and without script.

/** Room around the sheet on the board, px. */
const EDGE = 16;

/** Which controls show and hide what, for so many passes: no script is needed for it. */
function switchPasses(count: number): string {
  return Array.from({ length: count }, (_, i) => {
    const at = i + 1;
    return `#show-${at}:not(:checked)~.board .pass-${at}{visibility:hidden}`;
  }).join('\n');
}

/**
 * The style sheet of the proof page.
 *
 * @param passes - How many there are.
 * @param widthMm - Of the sheet, as `heightMm`.
 */
export function styleProofPage(passes: number, widthMm: number, heightMm: number): string {
  const fitting = `min(100%,calc((85vh - ${2 * EDGE + 2}px)*${widthMm / heightMm}))`;
  const width = `${Math.round(widthMm * 1000) / 1000}mm`;
  return `:root{color-scheme:light dark;--ground:#f4f3ef;--text:#1d2226;--quiet:#50585f;--line:#c9c5ba;--good:#1d5c3a;--bad:#8f1d1d;--field:#fff}
@media (prefers-color-scheme:dark){:root{--ground:#1f2326;--text:#eceae4;--quiet:#b3b8bb;--line:#484e52;--good:#8fd3ad;--bad:#ffaaa3;--field:#2a2f33}}
*{box-sizing:border-box}
body{margin:0;padding:24px max(16px,calc(50vw - 600px)) 64px;background:var(--ground);color:var(--text);font:16px/1.5 system-ui,sans-serif}
h1{font-size:1.7rem;line-height:1.2;margin:0 0 4px;overflow-wrap:anywhere}
h2{font-size:1.1rem;margin:32px 0 8px}
p{margin:4px 0}
.good{color:var(--good);font-weight:700}.bad{color:var(--bad);font-weight:700}
.quiet{color:var(--quiet)}
.sheets{display:flex;flex-wrap:wrap;align-items:center;gap:4px 6px;margin-top:20px}
.sheets .break{flex-basis:100%;height:0}
.sheets>input{position:absolute;opacity:0;pointer-events:none}
.sheets>label{padding:4px 14px 4px 0;cursor:pointer;white-space:nowrap}
.sheets>label::before{content:'';display:inline-block;width:18px;height:18px;margin-right:8px;vertical-align:middle;border:2px solid var(--text);border-radius:3px;text-align:center;font:700 14px/14px system-ui,sans-serif}
.sheets>[type=radio]+label::before{border-radius:50%}
.sheets>[type=checkbox]:checked+label::before{content:'\\2713'}
.sheets>[type=radio]:checked+label::before{background:radial-gradient(circle,var(--text) 45%,transparent 50%)}
.sheets>input:focus-visible+label,.board:focus-visible{outline:3px solid #2f6fb3;outline-offset:2px}
.board{flex-basis:100%;overflow:auto;max-height:85vh;margin-top:8px;padding:${EDGE}px;border:1px solid var(--line);background:#dcd9d0}
.sheet{position:relative;width:${fitting};margin:0 auto;background:#fff;box-shadow:0 0 0 1px #8b877c}
.sheet img{position:absolute;inset:0;width:100%;height:100%;display:block}
.sheet svg{position:absolute;inset:0;width:100%;height:100%;overflow:visible;pointer-events:none}
#size-true:checked~.board .sheet{width:${width}}
#size-large:checked~.board .sheet{width:calc(4*${width})}
${switchPasses(passes)}
.measure{flex-basis:100%;min-height:3em;font-variant-numeric:tabular-nums}
table{border-collapse:collapse;width:100%;min-width:760px}
th,td{text-align:left;vertical-align:top;padding:6px 12px 6px 0;border-bottom:1px solid var(--line)}
td.code{font:13px/1.5 ui-monospace,monospace;overflow-wrap:anywhere;min-width:9em}
.wide{overflow-x:auto}
ol,ul{padding-left:1.4em;margin:4px 0}li{margin:4px 0;overflow-wrap:anywhere}
.blank{display:flex;flex-wrap:wrap;gap:16px 32px;align-items:flex-start}
.blank svg{background:#fff;color:#1d2226;max-width:100%;height:auto;flex:1 1 320px;max-height:70vh}
.blank ul{list-style:none;padding:0;flex:1 1 260px}
@media print{body{padding:0;background:#fff;color:#000}.sheets>input,.sheets>label,.measure,.sheets>.break{display:none}.board{max-height:none;overflow:visible;padding:0;border:0;background:none}
.sheet,#size-true:checked~.board .sheet,#size-large:checked~.board .sheet{width:100%;break-inside:avoid}h2{break-after:avoid}tr,li{break-inside:avoid}}`;
}
