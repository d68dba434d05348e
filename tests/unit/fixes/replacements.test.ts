import { describe, expect, test } from 'vitest';
import { offersFor, put } from '../../support/fixes.ts';

/** Says what is offered for a word in brackets: `fix('Kim [jumped].').at('17').offers('Kim hopped.')`. */
function fix(marked: string) {
  return {
    at: (lesson: string) => {
      const texts = offersFor(marked, lesson).map((offer) => put(marked, offer));
      return {
        /** Among the first so many. */
        offers: (text: string, within = 3) => expect(texts.slice(0, within)).toContain(text),
        offersNothing: () => expect(texts).toEqual([]),
        neverOffers: (text: string) => expect(texts).not.toContain(text),
      };
    },
  };
}

describe('a word of near meaning takes its form', () => {
  test.each([
    ['Kim [jumped] on the rug.', '17', 'Kim hopped on the rug.'],
    ['Kim [jumps] on the rug.', '14', 'Kim hops on the rug.'],
    ['Kim is [jumping].', '17', 'Kim is hopping.'],
    ['The [children] ran.', '12', 'The kids ran.'],
    ['The [child] ran.', '12', 'The kid ran.'],
    ['He has [thrown] it.', '17', 'He has flung it.'],
    ['He [threw] it.', '17', 'He flung it.'],
    ['The [larger] pig ran.', '27', 'The bigger pig ran.'],
    ['The [largest] pig ran.', '27', 'The biggest pig ran.'],
    ['The [rabbit’s] leg is wet.', '12', 'The pet’s leg is wet.'],
    ['[Children] ran.', '12', 'Kids ran.'],
    ['THE [CHILDREN] RAN.', '12', 'THE KIDS RAN.'],
    ['The cat [slept].', '14', 'The cat had a nap.'],
    ['It is [beneath] the rug.', '27', 'It is under the rug.'],
  ])('%s at lesson %s: %s', (marked, lesson, text) => {
    fix(marked).at(lesson).offers(text);
  });

  test('an ending that is closed leaves it out', () => {
    fix('Kim [jumped].').at('12').offersNothing();
    fix('Kim has a [larger] hat.').at('12').offersNothing();
  });
});

describe('the article goes with it', () => {
  test.each([
    ['Tam had an [apple].', 'Tam had a plum.'],
    ['A [beetle] sat.', 'An ant sat.'],
    ['It is an [enormous] pig.', 'It is a big pig.'],
  ])('%s', (marked, text) => {
    fix(marked).at('25').offers(text);
  });
});

describe('its place decides what it is', () => {
  test('a verb with an object wants one that takes an object', () => {
    fix('She [carried] the box.').at('25').neverOffers('She went the box.');
    fix('He [watched] the cat.').at('25').neverOffers('He gazed the cat.');
  });

  test('what is not counted has no a, and what is counted has one', () => {
    fix('He ate some [bread].').at('25').neverOffers('He ate some bun.');
    fix('He had a [cake].').at('25').neverOffers('He had a food.');
    fix('Put on a [coat].').at('25').neverOffers('Put on a pants.');
  });

  test('a noun is not taken for a verb', () => {
    fix('The [walk] was fun.').at('25').neverOffers('The step was fun.');
    fix('They [walk] up.').at('25').offers('They go up.');
  });
});

describe('nothing is offered', () => {
  test.each([
    ['for digits', 'He had [12].'],
    ['for a word in no list', 'He had a [zibbet].'],
    ['for a part of a word with a hyphen', 'He is well-[liked] here.'],
  ])('%s', (_, marked) => {
    fix(marked).at('25').offersNothing();
  });
});
