import { create } from 'qrcode';
import { escapeXml } from './escape.ts';

/**
 * QR code of `text` as one SVG path, a run of dark modules a stroke, with the quiet zone of four modules that scanners ask for
 * left to the page. `says` is read to those who cannot see it.
 */
export function qrSvg(text: string, says: string): string {
  const { modules } = create(text, { errorCorrectionLevel: 'M' });
  const runs: string[] = [];
  for (let row = 0; row < modules.size; row++) {
    for (let column = 0; column < modules.size; column++) {
      let length = 0;
      while (column + length < modules.size && modules.get(row, column + length)) length++;
      if (length > 0) runs.push(`M${column} ${row}h${length}v1h-${length}z`);
      column += length;
    }
  }
  return `<svg class="qr" viewBox="0 0 ${modules.size} ${modules.size}" role="img" aria-label="${escapeXml(says)}" shape-rendering="crispEdges"><path fill="currentColor" d="${runs.join('')}"/></svg>`;
}
