import { expect, test } from 'vitest';
import { fillPages, pageText } from '../../src/archive/fill-pages.ts';

const pages = { loads: 31, 'stage.T_j': 7, 'loads-end': 33 };

test.each([
  ['<b data-page-of="loads"></b>', '<b data-page-of="loads">31</b>'],
  ['<span class="p" data-page-of="stage.T_j">?</span>', '<span class="p" data-page-of="stage.T_j">7</span>'],
  ['<i data-page-range="loads loads-end"></i>', '<i data-page-range="loads loads-end">31–33</i>'],
  ['<i data-page-range="loads loads"></i>', '<i data-page-range="loads loads">31</i>'],
  ['<i data-page-of="lost"></i>', '<i data-page-of="lost">–</i>'],
  ['<i data-page-of="toString"></i>', '<i data-page-of="toString">–</i>'],
  ['<i data-page-of="loads"><b>old</b> <b>text</b></i>x', '<i data-page-of="loads">31</i>x'],
  ['<i title="a > b" data-page-of=loads></i>', '<i title="a > b" data-page-of=loads>31</i>'],
  ['<!-- <i data-page-of="loads"></i> -->', '<!-- <i data-page-of="loads"></i> -->'],
  ['<p>no page &amp; <br> no change', '<p>no page &amp; <br> no change'],
])('%s', (html, filled) => {
  expect(fillPages(html, pages)).toBe(filled);
});

test('everything round the numbers keeps its bytes, and filling again changes nothing', () => {
  const html = '<!DOCTYPE html>\r\n<P>Ω&nbsp;<i data-page-of="loads"> </i>\t<i data-page-of="stage.T_j"/></i></P  >';
  const once = fillPages(html, pages);
  expect(once).toBe(
    '<!DOCTYPE html>\r\n<P>Ω&nbsp;<i data-page-of="loads">31</i>\t<i data-page-of="stage.T_j"/>7</i></P  >',
  );
  expect(fillPages(once, pages)).toBe(once);
});

test('a range with one end unknown is not half a range', () => {
  expect(pageText({ range: 'loads lost' }, pages)).toBe('–');
  expect(pageText({ range: ' ' }, pages)).toBe('–');
});
