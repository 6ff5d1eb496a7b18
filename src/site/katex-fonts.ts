import type { Plugin } from 'vite';

/** Leaves only the woff2 files of KaTeX's fonts in its style sheet: every browser that can show the pages reads them. */
export function katexFonts(): Plugin {
  return {
    name: 'copperplate-katex-fonts',
    enforce: 'pre',
    transform(code, id) {
      if (!/katex[\\/]dist[\\/]katex(\.min)?\.css/.test(id)) return undefined;
      return woff2Only(code);
    },
  };
}

/** `woff2Only('src:url(a.woff2) format("woff2"),url(a.woff) format("woff")')` → `src:url(a.woff2) format("woff2")` */
export function woff2Only(css: string): string {
  return css.replaceAll(/,\s*url\([^)]*\.(?:woff|ttf)\)\s*format\(["'](?:woff|truetype)["']\)/g, '');
}
