/** The shed's printer, as its owner wrote it down. */
export const SHED_PRINTER = `// The printer in the potting shed.
{
  "name": "Potting shed", // ours
  "paper": "letter",
  "marginsMm": { "left": 3.4, "right": 3.4, "lead": 3.4, "trail": 5 },
  "ppi": 360,
  /* measured in spring */
  "scaleCorrection": { "scan": 1, "feed": 1.004 },
  "profile": "shed.icc",
  "driverMirrors": true,
}
`;

export const PLAIN_PRINTER = '{ "name": "Stall", "paper": "a4" }\n';
