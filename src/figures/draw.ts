import { Error as ErrorLevel, parse, textMetrics, View } from 'vega';
import { compile, type TopLevelSpec } from 'vega-lite';
import { escapeXml } from './escape.ts';
import { textWidth } from './text-width.ts';
import { theme, withTokens } from './theme.ts';

// Vega's types leave this export out.
declare module 'vega' {
  const textMetrics: { width(item: { fontSize?: number; fontWeight?: number | string }, text: unknown): number };
}

// Without a canvas Vega guesses 0.8 em a character and cuts labels that would fit.
textMetrics.width = (item, text) =>
  textWidth(String(text ?? ''), item.fontSize ?? 10, Number(item.fontWeight) >= 600 ? 600 : 400);

/**
 * SVG of a Vega-Lite specification in the packet's theme. Colours are tokens of the page, so one picture serves light, dark and
 * paper. `id` keeps the names inside it apart from those of other plots; `says` is read to those who cannot see it.
 * @throws what Vega throws on a specification it cannot draw
 */
export async function draw(spec: object, id: string, says: string): Promise<string> {
  const themed = { ...spec, config: theme } as unknown as TopLevelSpec;
  const view = new View(parse(compile(themed).spec), { renderer: 'none', logLevel: ErrorLevel });
  const svg = await view.toSVG();
  view.finalize();
  return named(withTokens(svg), id, says);
}

function named(svg: string, id: string, says: string): string {
  const renamed = new Map<string, string>();
  for (const [, name] of svg.matchAll(/ id="([^"]+)"/g)) renamed.set(name!, `${id}-${renamed.size + 1}`);
  const own = [...renamed].reduce(
    (text, [from, to]) => text.replaceAll(` id="${from}"`, ` id="${to}"`).replaceAll(`url(#${from})`, `url(#${to})`),
    svg,
  );
  // Screen readers get one sentence in place of Vega's tree of axes and groups.
  const quiet = own.replace(/ (role|aria-[a-z]+)="[^"]*"| opacity="1"| pointer-events="none"/g, '');
  const open = `<svg class="plot" role="img" aria-label="${escapeXml(says)}" `;
  return quiet.replace(/^<svg [^>]*?(?=viewBox=)/, open);
}
