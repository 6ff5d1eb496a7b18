import { chapterAnchor } from '../anchors.ts';
import type { Block, Legend } from '../block.ts';
import { chapterHeads, type Slug } from '../chapter-list.ts';
import { link, page } from '../inline.ts';
import type { Chapter } from '../packet.ts';
import type { Review } from '../review.ts';
import type { Text } from '../text.ts';
import { chapter } from './chapter.ts';

/** Where to turn. Chapters with nothing to say are named, so that nobody looks for them. */
export function contents(review: Review, body: readonly Chapter[]): Chapter {
  const blocks: Block[] = [
    { kind: 'contents' },
    ...leftOut(body),
    questions(review, body),
    { kind: 'legend', part: 'marks' },
    { kind: 'legend', part: 'range-rule' },
  ];
  return chapter('contents', blocks);
}

function leftOut(body: readonly Chapter[]): Block[] {
  const missing = Object.values(chapterHeads).filter(
    ({ number }) => number > 2 && !body.some((chapter) => chapter.number === number),
  );
  if (!missing.length) return [];
  const names = missing.map(({ number, title }) => `${number} ${title}`).join('; ');
  return [{ kind: 'paragraph', text: [`Left out, as this board gives them nothing to say: ${names}.`] }];
}

/** What a reviewer asks, and the chapter, or the section of it, that answers. */
function questions(review: Review, body: readonly Chapter[]): Legend {
  const mark = review.previous?.board.identity.mark;
  const asked: readonly [Slug, string, section?: string][] = [
    ['summary', 'What is the worst one?', 'summary-thinnest'],
    ['margins', 'At which corner, and by how much?'],
    ['calculations', 'Where does that number come from?'],
    ['changes', `What changed since revision ${mark}?`],
    ['conditions', 'What was taken for granted?', 'conditions-assumptions'],
    ['parts', 'May I fit another part?'],
    ['test-points', 'What should the meter show?'],
    ['firmware', 'Which scale factors go into firmware?'],
    ['colophon', 'Is this the packet that was signed?'],
  ];
  const items = asked.flatMap(([slug, question, section]) => {
    const chapter = body.find((one) => one.slug === slug);
    return chapter ? [{ question, answer: answer(chapter, section) }] : [];
  });
  return { kind: 'legend', part: 'questions', items };
}

function answer(chapter: Chapter, id: string | undefined): Text {
  const section = chapter.sections.find((one) => one.id === id);
  const anchor = section?.id ?? chapterAnchor(chapter);
  return [link(section?.number ?? `chapter ${chapter.number}`, anchor), ', ', page(anchor)];
}
