import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { guideChapters } from '../../src/site/guide-chapters.ts';

export interface GuidePage {
  readonly chapter: string;
  readonly text: string;
}

export const guidePages: readonly GuidePage[] = guideChapters.map(([chapter]) => ({
  chapter,
  text: readFileSync(fileURLToPath(new URL(`../../src/pages/guide/${chapter}.mdx`, import.meta.url)), 'utf8'),
}));

/** What stands between fences of a language, in the order of the page. */
export const fenced = (text: string, language: string): string[] =>
  [...text.matchAll(/^```(\w*)\n([\s\S]*?)^```$/gm)]
    .filter(([, found]) => found === language)
    .map(([, , body]) => body!);

/** Every language that some fence of a page names. */
export const languages = (text: string): string[] =>
  [...text.matchAll(/^```(\w*)\n[\s\S]*?^```$/gm)].map(([, found]) => found!);

/** Commands in the listings for a shell: the script of package.json, and the words behind it. */
export const commandsIn = (text: string): { script: string; words: string[] }[] =>
  fenced(text, 'sh').flatMap((body) =>
    body
      .trim()
      .split('\n')
      .map((line) => {
        const [, script, rest = ''] = /^npm run ([a-z]+)(?: -- (.+))?$/.exec(line) ?? [];
        if (!script) throw new Error(`A listing of the guide holds "${line}".`);
        return { script, words: rest.split(' ').filter((word) => word !== '') };
      }),
  );
