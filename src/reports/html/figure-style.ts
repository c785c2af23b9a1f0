/** Lines and marks of a figure, on any art: a light line under each dark one. */
export const FIGURE_STYLE = `
.figure{display:block;width:100%;max-height:80vh;background:var(--void)}
.figures.round .figure.proof{background:#e4e4e0}
:is(.outline,.edge,.safe,.bleed,.found){fill:none;stroke:#111;stroke-width:1.25px;vector-effect:non-scaling-stroke}
.hole{fill:#e4e4e0;stroke:#444;stroke-width:1px;vector-effect:non-scaling-stroke}
.outline{stroke-width:1.75px}
.lines .under{stroke:#fff;stroke-width:3.5px}
.edge:not(.under){stroke-dasharray:9 3 2 3}
.safe:not(.under){stroke-dasharray:7 5}
.bleed:not(.under){stroke-dasharray:1.5 4}
.found{stroke-width:2.5px}
.found.under{stroke:#fff;stroke-width:5px}
.found.error:not(.under){stroke:#a3001b}
.found.warning:not(.under){stroke:#7a4a00;stroke-dasharray:9 4}
.found.advice:not(.under){stroke:#0b4f8a;stroke-dasharray:2.5 3.5}
.badge :is(polygon,circle){stroke:#fff;stroke-width:1.5px;vector-effect:non-scaling-stroke}
.badge.error :is(polygon,circle){fill:#a3001b}
.badge.warning :is(polygon,circle){fill:#7a4a00}
.badge.advice :is(polygon,circle){fill:#0b4f8a}
.badge text{fill:#fff;font-weight:700;font-family:system-ui,sans-serif;text-anchor:middle}
.gamut .one{fill:#000}.gamut .other{fill:#fff}
.dark .one{fill:#003b8e}.dark .other{fill:#ffd84a}
`;
