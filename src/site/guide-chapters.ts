/** Chapters of the guide in reading order: name of the file in `src/pages/guide/`, and what it is called in the list. */
export const guideChapters = [
  ['index', 'The guide'],
  ['first-board', 'A first board'],
  ['spec', 'The spec language'],
  ['tolerance', 'Tolerance and spread'],
  ['worst-case', 'How a worst case is proven'],
  ['reading', 'Reading the packet'],
  ['review', 'From draft to released'],
  ['archive', 'Two years later'],
  ['pipeline', 'In your own repository'],
] as const;

export const guideAddress = (chapter: string): string => `/guide/${chapter === 'index' ? '' : chapter}`;
