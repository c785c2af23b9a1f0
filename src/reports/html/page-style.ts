import { FIGURE_STYLE } from './figure-style.ts';

/** Colours of text and marks keep 4.5:1 on their grounds, lines 3:1, light and dark. @see WCAG 2.2, 1.4.3 and 1.4.11 */
export const BASE_STYLE = `
:root{--ground:#fff;--text:#1b1b1b;--quiet:#565656;--rule:#c9c9c9;--panel:#f4f4f2;--link:#0b4f8a;--stop:#a3001b;--look:#7a4a00;--ready:#1b6231;--note:#0b4f8a;--void:#e4e4e0;color-scheme:light dark}
@media (prefers-color-scheme:dark){:root{--ground:#161718;--text:#ececea;--quiet:#b3b3b0;--rule:#4b4d50;--panel:#212325;--link:#8fc6f5;--stop:#ff9a9a;--look:#f2bd5c;--ready:#85d69b;--note:#8fc6f5;--void:#303336}}
*{box-sizing:border-box}
body{margin:0 auto;max-width:80rem;padding:1rem clamp(.75rem,3vw,2rem);background:var(--ground);color:var(--text);font:1rem/1.5 system-ui,sans-serif;overflow-wrap:anywhere}
h1{font-size:1.5rem;margin:0 0 .25rem}
h2{font-size:1.2rem;line-height:1.3;margin:0}
h3{font-size:1rem;margin:1rem 0 .25rem}
p{margin:.25rem 0}
ul,ol{margin:.25rem 0;padding-left:1.4rem}
a{color:var(--link)}
:focus-visible{outline:3px solid var(--link);outline-offset:2px}
.origin,figcaption,footer{color:var(--quiet);font-size:.875rem}
dl{margin:.25rem 0}
dl div{display:flex;flex-wrap:wrap;gap:0 1rem;border-top:1px solid var(--rule);padding:.2rem 0}
dt{flex:0 0 7rem;color:var(--quiet)}
dd{flex:1 1 12rem;margin:0}
@media print{:root{--ground:#fff;--text:#000;--quiet:#444;--rule:#999;--panel:#fff;--link:#000;--stop:#a3001b;--look:#6b4000;--ready:#1b6231;--note:#0b4f8a;--void:#eee;color-scheme:light}
body{max-width:none;padding:0;font-size:10pt}
a{text-decoration:none}
h2,h3{break-after:avoid}
li,dl div,figure{break-inside:avoid}}
@page{margin:12mm}
`;

export const REPORT_STYLE = `${BASE_STYLE}
.tools{position:sticky;top:0;z-index:2;display:flex;flex-wrap:wrap;gap:.25rem 2rem;margin:.75rem 0;padding:.5rem .75rem;background:var(--panel);border:1px solid var(--rule)}
fieldset{display:flex;flex-wrap:wrap;gap:.1rem 1rem;margin:0;padding:0;border:0;min-width:0}
legend{padding:0;font-weight:600;font-size:.875rem}
label{display:inline-flex;align-items:center;gap:.4rem;min-height:1.75rem;font-size:.9375rem}
input{width:1.1rem;height:1.1rem;margin:0;accent-color:var(--link)}
.key{display:inline-block;width:1.5rem;height:1rem;border:1px solid var(--rule)}
.key-findings .key{border:2px solid var(--stop)}
code,.option{white-space:nowrap}
.key-lines .key{border:0;border-top:2px dashed var(--text);height:0}
.key-gamut .key{background:repeating-linear-gradient(135deg,#000 0 3px,#fff 3px 6px)}
.key-dark .key{background:repeating-linear-gradient(45deg,#003b8e 0 3px,#ffd84a 3px 6px)}
.contact ul{list-style:none;padding:0;display:grid;grid-template-columns:repeat(auto-fill,minmax(9.5rem,1fr));gap:.75rem}
.contact li{border:1px solid var(--rule);padding:.5rem;background:var(--panel);content-visibility:auto;contain-intrinsic-size:auto 15rem}
.contact a{display:block}
.contact .name{display:block;font-size:.875rem}
.contact .facts{font-size:.8125rem;color:var(--quiet)}
.contact .facts span{display:block}
.thumb{display:block;width:100%;height:8rem}
.verdict{display:inline-flex;align-items:center;gap:.4rem;font-weight:700;font-size:.9375rem}
.verdict svg{width:1.15rem;height:1.15rem;flex:none;stroke:var(--ground);stroke-width:1.8;fill:none}
.verdict :is(circle,rect,.body){fill:currentColor;stroke:none}
.verdict:is(.stop,.unreadable,.not-written){color:var(--stop)}
.verdict.look{color:var(--look)}
.verdict.ready{color:var(--ready)}
.shown{border-top:3px solid var(--rule);margin-top:1.5rem;padding-top:1rem;content-visibility:auto;contain-intrinsic-size:auto 60rem;scroll-margin-top:8rem}
.piece{scroll-margin-top:8rem}
.piece header{display:flex;flex-wrap:wrap;gap:.25rem 1rem;align-items:baseline}
.work{color:var(--quiet)}
.figures{display:grid;grid-template-columns:repeat(2,minmax(0,1fr));gap:1rem;margin:.75rem 0}
.figures.round{grid-template-columns:minmax(0,1fr)}
.figures.bare .figure{max-height:14rem}
figure{margin:0;min-width:0}
${FIGURE_STYLE}.told{max-width:52rem}
ol.findings>li{margin:.4rem 0;padding-left:.5rem;border-left:4px solid var(--note)}
ol.findings>li.error{border-left-color:var(--stop)}
ol.findings>li.warning{border-left:4px dashed var(--look)}
ol.findings>li.advice{border-left:4px dotted var(--note)}
.label{color:var(--note)}
.error .label{color:var(--stop)}
.warning .label{color:var(--look)}
.unknown{border:1px dashed var(--text);padding:.25rem .75rem .5rem;margin:1rem 0}
.unknown h3{margin-top:.25rem}
.reason{font-weight:600}
h4{font-size:.9375rem;margin:.75rem 0 .15rem}
.about{border-top:3px solid var(--rule);margin-top:1.5rem;padding-top:1rem;max-width:52rem}
.about section{scroll-margin-top:8rem}
.about section:target{outline:3px solid var(--link);outline-offset:.5rem}
summary{min-height:1.75rem;margin-top:1rem;font-weight:600;cursor:pointer}
@media (max-width:40rem){.figures{grid-template-columns:minmax(0,1fr)}.tools{position:static}.contact ul{grid-template-columns:repeat(2,minmax(0,1fr))}}
@media print{.tools,details,.about{display:none}.contact li,.shown{content-visibility:visible}
body{font-size:8.5pt;line-height:1.35}
h1{font-size:14pt}.origin,figcaption,footer,.work{font-size:7pt}h2{font-size:11pt}h3{font-size:9pt;margin:.5rem 0 .15rem}
.shown{break-inside:avoid;margin-top:4mm;padding-top:2mm;border-top-width:1px}
.contact ul{grid-template-columns:repeat(6,minmax(0,1fr));gap:2mm}
.contact li{padding:1mm}.contact :is(.name,.facts,.verdict){font-size:7.5pt}.thumb{height:20mm}
.figures{grid-template-columns:1fr 1fr;gap:3mm;margin:1mm 0}.figure{max-height:72mm}
.figures.round .figure{max-height:55mm}.figures.bare{grid-template-columns:40mm}
.told{max-width:none;columns:2;column-gap:5mm}.told>:first-child{margin-top:0}
.unknown{margin:.5rem 0;padding:0 .4rem .2rem;break-inside:avoid}
dt{flex-basis:5rem}
.figure,.thumb,.verdict svg,.badge,.key{print-color-adjust:exact;-webkit-print-color-adjust:exact}}
`;
