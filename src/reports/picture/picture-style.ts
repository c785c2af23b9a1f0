/** Of a picture for a phone, where a line of the page would be too thin: colours as on the page, on white. */
export const PICTURE_STYLE = `
.ground{fill:#fff}.void{fill:#e4e4e0}
.outline,.edge,.safe,.bleed,.found{fill:none;stroke:#111;stroke-width:3px;vector-effect:non-scaling-stroke}
.hole{fill:#e4e4e0;stroke:#444;stroke-width:2px;vector-effect:non-scaling-stroke}
.under{stroke:#fff;stroke-width:7px}
.edge{stroke-dasharray:18 6 4 6}.safe{stroke-dasharray:14 10}.bleed{stroke-dasharray:3 8}
.under{stroke-dasharray:none}
.found{stroke-width:5px}.found.under{stroke-width:10px}
.found.error{stroke:#a3001b}.found.warning{stroke:#7a4a00;stroke-dasharray:18 8}.found.advice{stroke:#0b4f8a;stroke-dasharray:12 6 3 6}
.found.under{stroke:#fff;stroke-dasharray:none;stroke-opacity:.6}
.badge polygon,.badge circle{stroke:#fff;stroke-width:3px;vector-effect:non-scaling-stroke}
.error polygon,.label.error{fill:#a3001b}.warning polygon,.label.warning{fill:#7a4a00}.advice circle,.label.advice{fill:#0b4f8a}
.badge path{fill:#fff}
.text{fill:#1b1b1b}.quiet{fill:#565656}
.verdict{stroke:#fff;stroke-width:1.8;fill:none}
.verdict .body,.verdict circle,.verdict rect{stroke:none}
.stop .body,.unreadable rect,.not-written rect,.words.stop,.words.unreadable,.words.not-written{fill:#a3001b}
.look .body,.words.look{fill:#7a4a00}
.ready circle,.words.ready{fill:#1b6231}
`;
