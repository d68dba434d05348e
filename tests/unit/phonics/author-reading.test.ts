import { describe, expect, it } from 'vitest';
import { readAuthor } from '../../../server/src/phonics/author-reading.ts';
import { cut, phonics, said } from '../../support/reads.ts';

describe('a writer’s own pronunciation', () => {
  it.each([
    ['Plim', 'p-l-i-m', 'P L IH M'],
    ['read', 'r-ea(bread)-d', 'R EH D'],
    ['read', 'r-ea-d', 'R IY D'],
    ['Zaim', 'z-ai(said)-m', 'Z EH M'],
    ['Kome', 'k-o_e-m', 'K OW M'],
    ['Kome', 'k-o_e(come)-m', 'K AH M'],
    ['Thorn', 'th(this)-or-n', 'DH AO R N'],
    ["Zib's", "z-i-b-'s", 'Z IH B Z'],
  ])('%s as %s says %s', (word, graphemes, sounds) => {
    const read = readAuthor(word, graphemes, phonics);
    if (!('reading' in read)) throw new Error(read.message);
    expect(read.reading.source).toBe('author');
    expect(said(read.reading)).toBe(sounds);
    expect(cut(read.reading).replaceAll(/\(.*?\)/g, '')).toBe(graphemes.replaceAll(/\(.*?\)/g, ''));
  });

  it.each([
    ['Plim', 'p-l-a-m', 'do not spell', 'p-l-a-m'],
    ['Plim', 'p-qz-i-m', 'no grapheme', 'qz'],
    ['Plim', 'p-l-i(cat)-m', 'c-a-t', 'i(cat)'],
    ['Plim', '', 'grapheme by grapheme', ''],
  ])('%s as %s cannot be right', (word, graphemes, message, place) => {
    const read = readAuthor(word, graphemes, phonics);
    if ('reading' in read) throw new Error('It was read.');
    expect(read.message).toContain(message);
    expect(graphemes.slice(read.start, read.end)).toBe(place);
  });
});
