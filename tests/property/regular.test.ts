import { constantFrom, assert as holds, property, tuple } from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readRegular } from '../../server/src/phonics/regular.ts';
import { placed } from '../../server/src/phonics/spans.ts';

/** A piece of a word: graphemes with their sounds, `sh=SH r=R`. */
function pieces(text: string) {
  const items = text.trim().split(/\s*,\s*/);
  return constantFrom(...items.map((item) => item.split(' ').map((grapheme) => grapheme.split('='))));
}

const start =
  pieces(`b=B, d=D, f=F, h=HH, j=JH, k=K, l=L, m=M, n=N, p=P, r=R, s=S, t=T, v=V, y=Y, z=Z, sh=SH, ch=CH, th=TH,
  b=B l=L, b=B r=R, d=D r=R, f=F l=L, f=F r=R, p=P l=L, p=P r=R, s=S k=K, s=S l=L, s=S m=M, s=S n=N, s=S p=P, s=S t=T,
  t=T r=R, sh=SH r=R, th=TH r=R, s=S p=P l=L, s=S p=P r=R, s=S t=T r=R`);
const short = pieces('a=AE, e=EH, i=IH, o=AA, u=AH');
const end =
  pieces(`b=B, d=D, f=F, g=G, m=M, n=N, p=P, t=T, x=K_S, ff=F, zz=Z, ck=K, tch=CH, dge=JH, f=F t=T, m=M p=P, n=N t=T,
  n=N ch=CH, s=S k=K, s=S p=P, n=NG k=K, l=L p=P, c=K t=T, p=P t=T`);
const long = pieces('a_e=EY, i_e=AY, o_e=OW');
const single = pieces('b=B, d=D, k=K, l=L, m=M, n=N, p=P, t=T');
const team = pieces('ai=EY, ee=IY, oa=OW, oi=OY, ar=AA_R');
const afterTeam = pieces('d=D, k=K, m=M, n=N, p=P, t=T');

function expectRead(parts: readonly (readonly string[])[]): void {
  const names = parts.map(([letters = '']) => letters);
  const split = names.some((name) => name.endsWith('_e'));
  const word = `${names.join('').replace('_e', '')}${split ? 'e' : ''}`;
  const read = readRegular(word) ?? [];
  expect([word, read.map((part) => part.letters)]).toEqual([word, names]);
  expect([word, read.map((part) => part.sounds.join('_'))]).toEqual([
    word,
    parts.map(([, sounds]) => sounds),
  ]);
  const spans = placed(word, read).flatMap((part) => part.spans.map(([from, to]) => to - from));
  expect(spans.reduce((sum, length) => sum + length, 0)).toBe(word.length);
}

describe('a word made of regular pieces is read by its pieces', () => {
  it.each([
    // Not pull, push, butch: after b, f and p a u before these is as often UH.
    [
      'a short vowel',
      tuple(start, short, end).filter(
        ([a, b, c]) => !(/[bfp]$/.test(a.at(-1)?.[0] ?? '') && b[0]?.[0] === 'u' && c[0]?.[0] === 'tch'),
      ),
    ],
    ['a split vowel', tuple(start, long, single)],
    ['a vowel team', tuple(start, team, afterTeam)],
  ])('with %s', (_, words) => {
    holds(
      property(words, ([first, vowel, last]) => expectRead([...first, ...vowel, ...last])),
      { numRuns: 1000 },
    );
  });
});
