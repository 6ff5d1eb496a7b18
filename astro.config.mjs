import mdx from '@astrojs/mdx';
import { defineConfig } from 'astro/config';
import { katexFonts } from './src/site/katex-fonts.ts';
import { relativeLinks } from './src/site/relative-links.ts';

export default defineConfig({
  // Files named as people open them: `summary.html`, and `index.html` in a folder.
  build: { format: 'preserve', inlineStylesheets: 'never' },
  integrations: [mdx(), relativeLinks((path) => /\.(?:pdf|zip)$/.test(path))],
  // Plain listings: the page's own style sheet sets them, for light, dark and paper alike.
  markdown: { syntaxHighlight: false },
  devToolbar: { enabled: false },
  vite: {
    plugins: [katexFonts()],
    // A font that is put into the style sheet as text would be there twice.
    build: { assetsInlineLimit: 0 },
  },
});
