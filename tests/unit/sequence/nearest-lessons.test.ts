import { describe, expect, test } from 'vitest';
import { lessonMeant, nearestLessons } from '../../../server/src/sequence/nearest-lessons.ts';

describe('the lessons nearest to a mistaken name', () => {
  test.each([
    ['12', ['1', '2', '10', '11', '13', '20'], ['11', '13', '10']],
    ['Lesson 12', ['1', '2', '10', '11', '13', '20'], ['11', '13', '10']],
    ['Unit 3b', ['Unit 2', 'Unit 3a', 'Unit 3', 'Review'], ['Unit 3a', 'Unit 3', 'Unit 2']],
    ['autum', ['spring', 'Autumn'], ['Autumn', 'spring']],
    ['1', [], []],
  ])('for %s of %j: %j', (mistaken, names, nearest) => {
    expect(nearestLessons(mistaken, names)).toEqual(nearest);
  });
});

describe('the lesson that is surely meant', () => {
  test.each([
    ['Lesson 5', ['1', '5', '15'], '5'],
    ['lesson: 5', ['1', '5', '15'], '5'],
    ['05', ['1', '5', '15'], '5'],
    ['5', ['Lesson 1', 'Lesson 5'], 'Lesson 5'],
    ['autum', ['Spring', 'Autumn'], 'Autumn'],
    ['REVIEW', ['Unit 1', 'Review'], 'Review'],
  ])('%s of %j: %s', (asked, names, meant) => {
    expect(lessonMeant(asked, names)).toBe(meant);
  });

  test.each([
    ['13', ['1', '3']],
    ['Lesson 13', ['1', '3']],
    ['x', ['1', '2']],
    ['June', ['1', '2']],
  ])('%s of %j: none', (asked, names) => {
    expect(lessonMeant(asked, names)).toBeUndefined();
  });
});
