import { describe, expect, it } from 'vitest';
import { changeRows, failingRows } from '../../../client/src/stories/story-rows.ts';
import type { StoryStanding } from '../../../server/src/editor/protocol.ts';

const standing = (name: string, readable: number, why = ''): StoryStanding => ({
  uri: `file:///${name}.md`,
  title: name,
  lesson: '12',
  passes: why === '',
  readable,
  target: 0.95,
  why,
});

describe('lists of stories', () => {
  it('has the stories that began to fall short with the last change first', () => {
    const failing = [standing('Net', 0.9, 'little practice'), standing('Pond', 0.8, '80.0 % readable')];
    const turned = [{ uri: 'file:///Pond.md', title: 'Pond', turn: 'loses' as const }];
    expect(failingRows({ stories: 5, leftOut: 0, failing, turned })).toEqual([
      {
        uri: 'file:///Pond.md',
        label: 'Pond',
        description: 'lesson 12, since the last change',
        detail: '80.0 % readable',
      },
      { uri: 'file:///Net.md', label: 'Net', description: 'lesson 12', detail: 'little practice' },
    ]);
  });

  it('has those that would lose first, and says when the lesson is gone', () => {
    const changed = [
      {
        uri: 'a',
        title: 'A',
        turn: 'gains' as const,
        before: standing('A', 0.8, 'x'),
        after: standing('A', 1),
      },
      { uri: 'b', title: 'B', turn: 'loses' as const, before: standing('B', 0.9499) },
    ];
    expect(changeRows({ stories: 2, changed })).toEqual([
      {
        uri: 'b',
        label: 'B: would fall short',
        description: '94.9 → - % readable',
        detail: 'its lesson is not in the sequence',
      },
      { uri: 'a', label: 'A: would pass', description: '80.0 → 100.0 % readable', detail: '' },
    ]);
  });
});
