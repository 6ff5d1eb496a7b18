/**
 * Colours of a plot. Vega wants colours, the page has tokens that change between light, dark and paper: these
 * stand in for the tokens until `draw` replaces them.
 */
export const colours = {
  ink: '#010101',
  ink2: '#010102',
  rule: '#010103',
  copper: '#010104',
  copperTint: '#010105',
  verdigris: '#010106',
  verdigrisTint: '#010107',
  paper: '#010108',
} as const;

const tokens: Record<keyof typeof colours, string> = {
  ink: '--ink',
  ink2: '--ink-2',
  rule: '--rule',
  copper: '--copper',
  copperTint: '--copper-tint',
  verdigris: '--verdigris',
  verdigrisTint: '--verdigris-tint',
  paper: '--paper',
};

/** `svg` with every stand-in colour replaced by its token. */
export function withTokens(svg: string): string {
  return Object.entries(colours).reduce(
    (text, [name, colour]) => text.replaceAll(colour, `var(${tokens[name as keyof typeof colours]})`),
    svg,
  );
}

// The quotes belong to the name: Vega passes it on as it is, and an unquoted name may not hold digits.
const serif = "'STIX Two Text'";

/** Vega-Lite configuration of every plot. */
export const theme = {
  font: serif,
  background: null,
  view: { stroke: null },
  axis: {
    labelFontSize: 10,
    labelColor: colours.ink,
    labelOverlap: false,
    titleFontSize: 10,
    titleFontWeight: 400,
    titleColor: colours.ink,
  },
  axisX: {
    domainColor: colours.ink,
    domainWidth: 0.8,
    tickColor: colours.ink,
    tickWidth: 0.8,
    tickSize: 4,
    grid: false,
  },
  axisY: { domain: false, ticks: false, grid: true, gridColor: colours.rule, gridWidth: 0.4, labelPadding: 6 },
  text: { fontSize: 10, fill: colours.ink, baseline: 'middle' },
  rule: { stroke: colours.ink },
} as const;
