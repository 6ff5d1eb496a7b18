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

function questions(review: Review, body: readonly Chapter[]): Legend {
  const mark = review.previous?.board.identity.mark;
  const asked: [Slug, string, string?][] = [
    ['summary', 'What is the worst one?', '3.1'],
    ['margins', 'At which corner, and by how much?'],
    ['calculations', 'Where does that number come from?'],
    ['changes', mark ? `What changed since revision ${mark}?` : 'What changed?'],
    ['conditions', 'What was taken for granted?', '6.3'],
    ['parts', 'May I fit another part?'],
    ['test-points', 'What should the meter show?'],
    ['firmware', 'Which scale factors go into firmware?'],
    ['colophon', 'Is this the packet that was signed?'],
  ];
  const there = asked.filter(([slug]) => body.some((chapter) => chapter.slug === slug));
  return {
    kind: 'legend',
    part: 'questions',
    items: there.map(([slug, question, place]) => ({ question, answer: answer(slug, place) })),
  };
}

function answer(slug: Slug, place: string | undefined): Text {
  const anchor = place ? `${slug}-${place}` : chapterAnchor({ slug });
  return [link(place ?? `chapter ${chapterHeads[slug].number}`, anchor), ', ', page(anchor)];
}
