import { describe, expect, test } from 'vitest';
import { splitsAt } from '../../support/fixes.ts';

describe('a sentence becomes two', () => {
  test.each([
    ['Kim ran up the hill and she sat on a rock.', 'Kim ran up the hill. She sat on a rock.'],
    ['Kim ran up the hill, and Tam sat on a rock.', 'Kim ran up the hill. Tam sat on a rock.'],
    ['The dog barked and the cat ran.', 'The dog barked. The cat ran.'],
    ['Kim ran, but the cat sat.', 'Kim ran. But the cat sat.'],
    ['It was hot, so they swam in the pond.', 'It was hot. So they swam in the pond.'],
    ['Kim ran up the hill and then she sat.', 'Kim ran up the hill. Then she sat.'],
    ['Kim ran up the hill, then she sat.', 'Kim ran up the hill. Then she sat.'],
    ['Kim ran up the hill and sat on a rock.', 'Kim ran up the hill. Kim sat on a rock.'],
    ['He ran up the hill and sat.', 'He ran up the hill. He sat.'],
    ['I ran up the hill and sat.', 'I ran up the hill. I sat.'],
    ['A red hen ran up the hill and sat.', 'A red hen ran up the hill. The red hen sat.'],
    ['My cat jumped up and ran to the pond.', 'My cat jumped up. My cat ran to the pond.'],
    ['Kim and Tam ran up the hill and sat.', 'Kim and Tam ran up the hill. They sat.'],
    ['Kim ran but fell.', 'Kim ran. But Kim fell.'],
    ['She sits on a rock and looks at the pond.', 'She sits on a rock. She looks at the pond.'],
    ['Kim was hot and ran to the pond.', 'Kim was hot. Kim ran to the pond.'],
    ['Kim ran up the hill, she was glad!', 'Kim ran up the hill. She was glad!'],
    ['Kim met a man who had a big hat.', 'Kim met a man. The man had a big hat.'],
    ['Kim has a cat that likes fish.', 'Kim has a cat. The cat likes fish.'],
    ['They sat by Tam, who had a nut.', 'They sat by Tam. Tam had a nut.'],
    ['Kim ran up the hill\nand she sat on a rock.', 'Kim ran up the hill.\nShe sat on a rock.'],
  ])('%s', (before, after) => {
    expect(splitsAt(before)[0]).toBe(after);
  });
});

describe('a sentence stays whole where a half would not be one', () => {
  test.each([
    'Kim and Tam ran up the hill.',
    'The cat and the dog ran.',
    'Kim has a cat and a dog.',
    'Kim fed the cats and dogs.',
    'Kim feeds the cats and dogs in the hut.',
    'Kim had chips and baked beans.',
    'Kim was hot and tired.',
    'Kim was fed and put to bed.',
    'Kim had hopped and skipped.',
    'Kim can run and sit.',
    'When Kim ran up the hill, she sat.',
    'If it is hot and the sun shines, we swim.',
    'At night, he ran up the hill.',
    'Kim said the cat and the dog ran.',
    'Kim said that it was hot.',
    'Kim ran so fast that she fell.',
    'Kim saw the man and the dog that ran.',
    'The man who had a hat sat.',
    'Kim had the lid of a box that fell.',
    'Did Kim run and did she sit?',
    '"I ran and I sat," said Kim.',
    'Kim ran, hopped, and sat.',
    'Run up the hill and sit.',
    'Up and up ran the cat.',
    'Kim ran up and down.',
    'He ran and ran and ran.',
    'Kim put the red and blue socks on.',
    'Kim saw him and her.',
    'The cat *ran and she sat* on it.',
  ])('%s', (sentence) => {
    expect(splitsAt(sentence)).toEqual([]);
  });
});
