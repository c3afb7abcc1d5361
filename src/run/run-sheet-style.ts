// The style of the printed run sheet: black on white, nothing said by colour, no step cut by a page.

/** CSS of the page; it fits A4 and Letter, whichever the printer holds. */
export const RUN_SHEET_STYLE: string = `
@page{margin:11mm 12mm 13mm;@bottom-right{content:counter(page) " / " counter(pages);font:8pt sans-serif}}
*{box-sizing:border-box}
html{font:9.5pt/1.35 "Liberation Sans",Arial,Helvetica,sans-serif;color:#000;background:#fff}
body{max-width:190mm;margin:0 auto;padding:0}
@media screen{body{padding:8mm}}
h1{font-size:19pt;line-height:1.1;margin:0 0 1mm}
h2{font-size:12.5pt;margin:6mm 0 1.5mm;padding-bottom:.6mm;border-bottom:.5mm solid #000;break-after:avoid}
h3{font-size:10pt;margin:0}
p{margin:0 0 1.2mm}
table{border-collapse:collapse;width:100%;break-inside:avoid}
th,td{text-align:left;vertical-align:top;padding:.9mm 1.6mm;border:.2mm solid #555}
th{font-weight:700;background:#eee;-webkit-print-color-adjust:exact;print-color-adjust:exact}
td.n,th.n{text-align:right;white-space:nowrap}
.small,.origin{font-size:7.6pt;line-height:1.25}
.origin{display:block}
.hash{font:7pt/1.2 "Liberation Mono",monospace;overflow-wrap:anywhere}
.missing{border:.3mm dashed #000;padding:0 1.2mm;font-weight:700}
.write{display:inline-block;min-width:26mm;border-bottom:.25mm solid #000}
.head{display:grid;grid-template-columns:1fr auto;gap:2mm 6mm;align-items:end;border-bottom:.8mm solid #000;padding-bottom:2mm;margin-bottom:2.5mm}
.head dl{display:grid;grid-template-columns:auto 1fr;gap:.3mm 2.5mm;margin:0;font-size:8.6pt}
.head dt{font-weight:700}.head dd{margin:0}
.box{border:.35mm solid #000;padding:1.6mm 2.4mm;margin:0 0 2mm;break-inside:avoid}
.box ul{margin:.4mm 0 0;padding-left:5mm}
.caution{display:grid;grid-template-columns:13mm 1fr;gap:3mm;align-items:center;border:.35mm solid #000;padding:1.4mm 2.4mm;margin:0 0 1.4mm;break-inside:avoid}
.caution b{letter-spacing:.04em}
.sign{width:13mm;height:auto;display:block}
.beside .sign{width:7mm;float:right;margin-left:2mm}
table+p{margin-top:1.2mm}
.pass{border:.6mm solid #000;margin:0 0 4mm;break-inside:avoid}
.pass>header{display:grid;grid-template-columns:auto 1fr auto;gap:3mm;align-items:center;padding:1.4mm 2.4mm;border-bottom:.35mm solid #000}
.pass .num{font-size:20pt;font-weight:700;line-height:1}
.pass .name{font-size:14pt;font-weight:700;line-height:1.1}
.pass .body{display:grid;grid-template-columns:1fr 62mm;gap:3mm;padding:1.8mm 2.4mm}
.pass figure{margin:0}
.pass figure svg{width:62mm;max-height:74mm;display:block}
.pass figcaption{font-size:7.6pt;line-height:1.25;margin-top:1mm}
ol.steps{list-style:none;margin:0;padding:0}
ol.steps>li{display:grid;grid-template-columns:4.6mm 1fr;gap:2mm;padding:1mm 0;border-bottom:.15mm solid #999;break-inside:avoid}
ol.steps>li:last-child{border-bottom:0}
.tick{width:4.2mm;height:4.2mm;border:.4mm solid #000;margin-top:.2mm}
.settings td,.settings th,.marks td,.marks th{padding:.5mm 1.2mm;font-size:8.6pt}
.settings{margin-top:.8mm}
.settings th{width:17mm}
.settings td.n{width:24mm;font-weight:700}
.marks{margin-top:.8mm}
.marks td{height:5.2mm;min-width:14mm}
.times{border-top:.35mm solid #000;padding:1.4mm 2.4mm}
.sign-off{display:grid;grid-template-columns:repeat(3,1fr);gap:6mm;margin-top:5mm;break-inside:avoid}
.sign-off div{border-top:.25mm solid #000;padding-top:.8mm;font-size:8pt;margin-top:9mm}
`;
