/** The range rule with its parts named, as it is learnt once on the contents page. Drawn 181 px wide, the margin column on paper. */
export function legendStrip(): string {
  return `<svg class="legend-strip" viewBox="0 0 181 54" role="img" aria-label="A line with end strokes from left to middle, a bar on its right half, a ring on its left half, and a hatched wall at the right.">
<text class="strip-word" x="55" y="12" text-anchor="middle">typical</text><line class="strip-lead" x1="55" x2="55" y1="15" y2="24"/>
<line class="strip-worst" x1="8" x2="143" y1="28" y2="28"/><line class="strip-worst-end" x1="8" x2="8" y1="23.5" y2="32.5"/><line class="strip-worst-end" x1="143" x2="143" y1="23.5" y2="32.5"/>
<rect class="strip-spread" x="78" y="25.5" width="47" height="5"/><line class="strip-median" x1="102" x2="102" y1="25.5" y2="30.5"/><circle class="strip-typical" cx="55" cy="28" r="2.7"/>
<line class="strip-wall" x1="170" x2="170" y1="14" y2="42"/><svg x="170" y="14" width="4.5" height="28"><line class="strip-hatch" x1="2.25" x2="2.25" y1="-6" y2="150%" transform="skewY(-45)"/></svg>
<text class="strip-word" x="168" y="9" text-anchor="middle">limit</text><text class="strip-word strip-word-worst" x="0" y="47">worst case</text><text class="strip-word strip-word-spread" x="101" y="47" text-anchor="middle">spread</text>
</svg>`;
}
