import type { Published } from '../../published/check.ts';
import type { SafetyData } from '../../safety/safety-data.ts';
import type { Handbook } from '../../spec/method-schema.ts';
import { deratingPage } from './derating-page.ts';
import { indexPage } from './index-page.ts';
import { methodPage } from './method-page.ts';
import type { HandbookPage } from './page.ts';
import { publishedPage } from './published-page.ts';
import { symbolIndex } from './symbol-index.ts';

/** The whole handbook as pages: its index, the index of symbols, the derating policies, the published checks, and a page for every method. */
export function handbookPages(book: Handbook, safety: SafetyData, published: Published): HandbookPage[] {
  const methods = [...book.methods.values()];
  return [
    indexPage(methods),
    symbolIndex(methods),
    deratingPage([...book.policies.values()]),
    publishedPage(published, { book, sets: published.sets }),
    ...methods.map((method) => methodPage(method, book, safety)),
  ];
}
