import type { Chapter, Packet, Section } from '../packet/packet.ts';
import { sectionGroups } from './section-groups.ts';

/**
 * Rules for the printed pages of one packet: paper, running heads and feet. Browsers take the words of a page margin from the
 * style sheet only, so each chapter, and each group of sections that starts a page, is a kind of page with a name. The sizes stand here
 * too, before those of named pages: of two sizes Chromium takes the later one, not the one for the named page. The area is 1 mm
 * wider than the text block: a subscript hangs over the end of its line by two pixels, and whatever leaves the area makes the
 * browser shrink every page.
 */
export function pageRules(packet: Packet): string {
  const head = `${packet.document} · revision ${packet.revisionMark}    ${packet.title}`;
  const base = `@page{size:A4;margin:23mm 15mm 21mm 18mm;@top-left{content:${cssString(head)}}@bottom-left{content:${cssString(packet.foot.status)}}@bottom-center{content:${cssString(packet.foot.origin)}}}`;
  return base + packet.chapters.flatMap(chapterRules).join('');
}

/** Rules for the sheets of a page that belongs to no packet, for whoever prints it from the browser. */
export function sitePageRules(part: string, title: string): string {
  const heads = `@top-left{content:${cssString(`Copperplate · ${part}`)}}@top-right{content:${cssString(title)}}`;
  return `@page{size:A4;margin:23mm 15mm 21mm 18mm;${heads}}`;
}

/** What differs on US Letter; the page's style sheet has the rest. */
export function letterRules(packet: Packet): string {
  const turned = packet.chapters.filter((chapter) => chapter.landscape);
  const portrait = '@page{size:letter;margin:17mm 19mm 16mm 19.9mm}:root[data-paper="letter"]{--page-h:246mm}';
  return `${portrait}${turned.map((chapter) => `@page ${chapterPage(chapter)}{size:letter landscape;margin:24mm 6mm 22mm 11.4mm}`).join('')}`;
}

/** Name of a chapter's printed pages; its head stands on the first page of its first section where sections have pages of their own. */
export function chapterPage(chapter: Chapter): string {
  return chapter.sectionPages && chapter.sections[0] ? sectionPage(chapter, chapter.sections[0]) : `c${chapter.number}`;
}

/** Name of a section's printed pages, which it shares with its group. */
export function sectionPage(chapter: Chapter, section: Section): string {
  const group = sectionGroups(chapter).find((one) => one.includes(section))!;
  return `s${group[0]!.number.replaceAll('.', '-')}`;
}

function chapterRules(chapter: Chapter): string[] {
  if (chapter.slug === 'cover') return [`@page ${chapterPage(chapter)}{@top-left{content:none}}`];
  if (chapter.sectionPages && chapter.sections.length > 0) {
    return sectionGroups(chapter).map((group) => {
      const [first, last] = [group[0]!, group.at(-1)!];
      const title = (first === last ? first.title : chapter.title) + equationsIn(group);
      const numbers = first === last ? first.number : `${first.number} to ${last.number}`;
      return rule(sectionPage(chapter, first), numbers, title);
    });
  }
  return [rule(chapterPage(chapter), chapter.number, chapter.title, chapter.landscape)];
}

/** The equations of a group, by whose numbers a reader on paper leafs. */
function equationsIn(group: readonly Section[]): string {
  const all = group.flatMap(({ equations }) => equations ?? []);
  return all.length ? `, equations (${all[0]}) to (${all.at(-1)})` : '';
}

function rule(name: string, number: string | number, title: string, landscape = false): string {
  const size = landscape ? 'size:A4 landscape;margin:22mm 17mm 19mm 18mm;' : '';
  return `@page ${name}{${size}@top-right{content:${cssString(`${number} ${title}`)}}}`;
}

/** A CSS string that can hold any text: all but plain letters, digits and spaces as code points. */
export function cssString(text: string): string {
  const safe = [...text].map((character) =>
    /[A-Za-z0-9 .,]/.test(character) ? character : `\\${character.codePointAt(0)!.toString(16)} `,
  );
  return `"${safe.join('')}"`;
}
