/** The look of the report: legible in black and white, quiet on a screen, cut sensibly on paper. */
export const reportStyle = `
:root { color-scheme: light; --ink: #1c2733; --soft: #52606d; --line: #c9d1d9; --paper: #fff; --fill: #3f6f8f; --short: #9a3b26; --pale: #eef3f6 }
* { box-sizing: border-box }
body { margin: 0 auto; max-width: 66rem; padding: 2rem 1.5rem 4rem; background: var(--paper); color: var(--ink); font: 15px/1.45 "Segoe UI", Roboto, "Helvetica Neue", Arial, sans-serif }
h1 { margin: 0 0 .2rem; font-size: 1.75rem; line-height: 1.2 }
h2 { margin: 2.4rem 0 .6rem; padding-top: .5rem; border-top: 2px solid var(--ink); font-size: 1.2rem }
h3 { margin: 1.3rem 0 .3rem; font-size: 1rem }
p { margin: .4rem 0; max-width: 48rem }
a { color: #1d5c85 }
.under { color: var(--soft) }
nav ul { display: flex; flex-wrap: wrap; gap: .2rem 1.2rem; margin: .8rem 0 0; padding: 0; list-style: none }
dl.figures { display: grid; grid-template-columns: repeat(auto-fit, minmax(8rem, 1fr)); gap: .8rem; margin: 1.2rem 0 0 }
dl.figures div { display: flex; flex-direction: column-reverse; justify-content: flex-end; padding: .6rem .8rem; border: 1px solid var(--line); border-radius: 4px }
dl.figures dt { color: var(--soft); font-size: .85rem }
dl.figures dd { margin: 0; font-size: 1.5rem; font-variant-numeric: tabular-nums }
dl.figures small { color: var(--soft); font-size: .85rem }
figure { margin: 1rem 0; break-inside: avoid }
figcaption { margin-bottom: .3rem; font-weight: 600 }
figcaption span { color: var(--soft); font-weight: 400 }
svg { display: block; width: 100%; height: auto }
svg text { fill: var(--soft); font: 11px "Segoe UI", Roboto, Arial, sans-serif }
svg .sign { fill: var(--short); font-weight: 700 }
svg .grid { stroke: var(--line); stroke-width: 1 }
svg .axis { stroke: var(--ink); stroke-width: 1 }
svg .bar { fill: var(--fill) }
svg .bar.short { fill: #fff; stroke: var(--short); stroke-width: 2 }
svg .mark { stroke: var(--ink); stroke-width: 2 }
.scroll { overflow-x: auto }
table { border-collapse: collapse; font-variant-numeric: tabular-nums }
caption { padding: .3rem 0; color: var(--soft); text-align: left }
th, td { padding: .22rem .5rem; border-bottom: 1px solid var(--line); text-align: left; vertical-align: top }
thead th { border-bottom: 1px solid var(--ink); font-size: .85rem; vertical-align: bottom }
td.figure, th.figure { text-align: right; white-space: nowrap }
tbody th { font-weight: 600 }
.short { color: var(--short); font-weight: 600 }
table.stories { width: 100%; font-size: .9rem }
table.stories small { color: var(--soft); font-weight: 400 }
table.stories tbody th { min-width: 15rem }
table.stories td:last-child { max-width: 22rem }
table.uses { font-size: .8rem }
table.uses th, table.uses td { padding: .12rem .3rem }
table.uses td { min-width: 1.7rem; border-left: 1px solid var(--pale); text-align: center }
table.uses thead th { text-align: center }
table.uses thead th:first-child, table.uses tbody th { white-space: nowrap; text-align: left }
table.uses .own { outline: 2px solid var(--ink); outline-offset: -2px }
table.uses .none { color: var(--short); font-weight: 700 }
table.uses .early { color: #6b7785 }
table.uses .u1 { background: #e3edf3 } table.uses .u2 { background: #c4dae6 } table.uses .u3 { background: #9dc1d4 }
ul.gaps { columns: 2 24rem; column-gap: 2rem; margin: .3rem 0; padding-left: 1.1rem }
ul.gaps li { padding: .15rem 0; break-inside: avoid }
p.list { max-width: none }
p.list span { white-space: nowrap }
.good { padding: .6rem .8rem; border: 1px solid var(--line); border-left: 5px solid #3b7a4b }
@media print {
  @page { size: auto; margin: 14mm }
  body { max-width: none; padding: 0; font-size: 10pt }
  nav { display: none }
  h2 { break-after: avoid } h3 { break-after: avoid }
  h2.sheet { break-before: page; border-top: 0 }
  a { color: inherit; text-decoration: none }
  thead { display: table-header-group }
  tr { break-inside: avoid }
  .scroll { overflow: visible }
  dl.figures { grid-template-columns: repeat(6, 1fr); gap: .4rem } dl.figures div { padding: .3rem .5rem } dl.figures dd { font-size: 1.2rem }
  figure { margin: .5rem 0 }
  table.stories { font-size: 8.5pt } table.stories tbody th { min-width: 9rem } table.stories td:last-child { min-width: 10rem } table.stories th small { display: none } table.stories tbody br { display: none } table.uses { font-size: 7.5pt }
  * { print-color-adjust: exact; -webkit-print-color-adjust: exact }
}
@media (forced-colors: active) { svg .bar { fill: CanvasText } svg text { fill: CanvasText } }
`;
