import type { APIRoute, GetStaticPaths } from 'astro';
import { builtRevisions } from './built-revisions.ts';

/** Route of the files with one ending that stand beside a packet's pages; their content was made with the packet. */
export function fileRoute(ending: string): { getStaticPaths: GetStaticPaths; GET: APIRoute } {
  return {
    getStaticPaths: async () => {
      const revisions = await builtRevisions();
      return revisions.flatMap(({ board, revision, files }) =>
        Object.entries(files)
          .filter(([name]) => name.endsWith(ending))
          .map(([name, content]) => ({
            params: { board, revision, file: name.slice(0, -ending.length) },
            props: { content },
          })),
      );
    },
    GET: ({ props }) => new Response(props.content as string),
  };
}
