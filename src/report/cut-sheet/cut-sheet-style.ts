/**
 * Black on white, for a printer and for a room with one lamp. A side is one sheet of A4: what could
 * grow is limited where it is made, names are cut at one line.
 */
export const CUT_SHEET_STYLE = `
@page { size: A4; margin: 9mm 12mm; }
:root { color-scheme: light; }
* { box-sizing: border-box; margin: 0; }
body { background: #fff; color: #000; font: 9.5pt/1.25 "Helvetica Neue", "DejaVu Sans", sans-serif; }
.sheet { width: 186mm; height: 278mm; margin: 0 auto; display: flex; flex-direction: column; gap: 2.3mm; overflow: hidden; }
.sheet + .sheet { break-before: page; }
footer { display: none; }
h1 { font-size: 19pt; line-height: 1.15; overflow: hidden; text-overflow: ellipsis; white-space: nowrap; }
h2 { font-size: 9.5pt; padding-bottom: 0.6mm; border-bottom: 0.6mm solid #000; }
header { display: grid; grid-template-columns: minmax(0, 1fr) auto; column-gap: 4mm; border-top: 2mm solid #000; padding-top: 1.4mm; }
.kind { grid-column: 1 / -1; font-size: 8.5pt; }
.verdict { align-self: center; padding: 0.4mm 2.5mm; border: 0.5mm solid #000; font-weight: 700; text-transform: uppercase; }
.facts { grid-column: 1 / -1; padding: 0.6mm 0 1mm; }
.record, .signed { display: grid; grid-auto-flow: column; grid-auto-columns: 1fr; column-gap: 4mm; }
.record { grid-column: 1 / -1; }
.field { height: 8mm; border-bottom: 0.25mm solid #000; }
.field span { font-size: 7.5pt; }
.signed { margin-top: auto; }
.signed .field { height: 10mm; }
dl { display: grid; grid-template-columns: repeat(5, minmax(0, 1fr)); gap: 1.4mm 3mm; padding-top: 1.2mm; }
.dial { display: grid; grid-template-columns: auto minmax(0, 1fr); column-gap: 2mm; grid-template-areas: "name blank" "value value"; }
dt { grid-area: name; font-size: 7.5pt; }
dd { grid-area: value; font-weight: 700; white-space: nowrap; font-size: 8.5pt; }
dd.blank { grid-area: blank; align-self: stretch; border-bottom: 0.25mm solid #000; }
.note, .more { padding-top: 0.8mm; font-size: 7.5pt; }
table { width: 100%; border-collapse: collapse; font-variant-numeric: tabular-nums; }
th { font-weight: 400; font-size: 7.5pt; text-align: left; padding: 0.5mm 2mm 0.3mm 0; }
td { height: 4.9mm; padding: 0 2mm 0 0; border-bottom: 0.15mm solid #999; white-space: nowrap; }
.dense td { height: 3.7mm; font-size: 8.2pt; }
.dense.full td { height: 3mm; font-size: 7pt; line-height: 1; }
.dense.full td.tick span { width: 2.2mm; height: 2.2mm; }
.figure { text-align: right; }
.number { width: 7mm; text-align: right; }
.running table { table-layout: fixed; }
.running th:first-child { width: 7mm; }
.running th.figure { width: 25mm; }
.running th.tick { width: 12mm; }
.running .what { overflow: hidden; text-overflow: ellipsis; }
.tick { text-align: center; padding-right: 0; }
td.tick span { display: inline-block; width: 3mm; height: 3mm; border: 0.25mm solid #000; vertical-align: middle; }
.track td { font-weight: 700; }
.marker .what::before { content: "\\2015\\2015  "; }
.microscope td { height: 6.6mm; font-size: 8.8pt; }
.microscope td.blank { border: 0.35mm solid #000; width: 19mm; }
.microscope td.blank + td { padding-left: 1.5mm; }
.microscope th.blank { width: 19mm; padding-left: 2mm; }
.microscope td:nth-child(6), .microscope td:nth-child(8) { font-weight: 700; }
ul { list-style: none; padding: 0.8mm 0 0; }
li { display: -webkit-box; -webkit-box-orient: vertical; -webkit-line-clamp: 2; overflow: hidden; padding-left: 4mm; text-indent: -4mm; font-size: 8.5pt; }
li b { text-transform: uppercase; }
.cautions { font-size: 7.5pt; border: 0.25mm solid #000; padding: 1mm 1.6mm; }
@media screen { body { padding: 6mm; } .sheet { margin-bottom: 10mm; } }
`;
