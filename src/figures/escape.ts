/** Text made safe between tags and inside quoted attributes of SVG. `escapeXml('a < "b"')` → `a &lt; &quot;b&quot;` */
export function escapeXml(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
}
