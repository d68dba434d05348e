import { describe, expect, it } from 'vitest';
import { terminal } from '../support/memory-host.ts';
import { pondPhonics, pondSequence } from '../support/pond-phonics.ts';

const call = terminal(
  {
    'sequence.yaml': pondSequence,
    'page.txt': 'The top. The night, the mud.\n',
    'cake.md': 'The cake. Kim and a cake.\n',
    'story.md': '---\nlesson: "1"\nsequence: gone.yaml\n---\nThe map.\n',
    'empty.md': '\n',
    'folder/a.md': 'The map.\n',
    'folder/b.md': 'The map.\n',
  },
  pondPhonics,
);

describe('fit', () => {
  it('says first what it does not read', () => {
    const files = {
      'sequence.yaml': pondSequence,
      'long.txt': 'The top.\n'.repeat(20_001),
      'code.md': 'The top.\n\n\tThe night.\n',
    };
    const long = terminal(files, pondPhonics)('fit', 'long.txt');
    expect(long.errors).toMatch(/^long\.txt:20001:1 {2}The text is too long: from here on it is not read\./);
    const code = terminal(files, pondPhonics)('fit', 'code.md');
    expect(code.errors).toMatch(/^code\.md:3:2 {2}This line begins with a tab/);
  });

  it('shows for people every lesson, the first that fits, and what holds the text back', () => {
    expect(call('fit', 'page.txt')).toEqual({
      exitCode: 0,
      output: `page.txt  6 words, 4 different

  lesson 1   50.0 %  ████████████████████····················
  lesson 2   83.3 %  █████████████████████████████████·······  fits
  lesson 3  100.0 %  ████████████████████████████████████████  fits

It first fits lesson 2: 83.3 % of its words are readable; the target is 75 %.

What holds it back at lesson 1, 50.0 % readable
  o as in top      lesson 2    +16.6 %  top
  igh as in light  lesson 3    +16.6 %  night
  u as in sun      lesson 2  with more  mud
  d as in mud      lesson 2  with more  mud
`,
      errors: '',
    });
  });

  it('shows what holds the text back at a lesson that is asked for', () => {
    expect(call('fit', 'page.txt', '--lesson', '2').output).toContain(
      'What holds it back at lesson 2, 83.3 % readable\n  igh as in light  lesson 3  +16.6 %  night\n',
    );
  });

  it('names the names and story words, which no lesson makes readable', () => {
    const text =
      '---\nlesson: "1"\nnames: [Kim]\nstory words: { cake: sweet bread }\n---\nThe map. Kim ate cake. Kim!\n';
    const call = terminal({ 'sequence.yaml': pondSequence, 'kim.md': text }, pondPhonics);
    const { output } = call('fit', 'kim.md', '--lesson', '1');
    expect(output).toContain('Names and story words count in the whole only: Kim ×2, cake.\n');
    expect(output).toContain('Readable at no lesson: ate.');
  });

  it('falls short when no lesson fits', () => {
    const { output, exitCode } = call('fit', 'cake.md');
    expect(exitCode).toBe(1);
    expect(output).toContain('It fits no lesson: even at lesson 3 only 16.6 % of its words are readable');
    expect(output).toContain('Readable at no lesson: cake ×2, Kim, and, a.');
  });

  it('is a report with a version as JSON', () => {
    const report = JSON.parse(call('fit', 'page.txt', '--format', 'json').output);
    expect(report).toMatchObject({
      version: 1,
      path: 'page.txt',
      words: 6,
      differentWords: 4,
      first: '2',
      lasting: '2',
      heldBack: {
        lesson: '1',
        things: [
          { label: 'o as in top', lesson: '2', rise: 1 / 6, words: ['top'] },
          { label: 'igh as in light', lesson: '3' },
          { rise: 0 },
          { rise: 0 },
        ],
        words: [
          { text: 'top', count: 1, kind: 'not-taught', lesson: '2' },
          { text: 'night' },
          { text: 'mud' },
        ],
      },
    });
    expect(report.lessons[1]).toEqual({
      lesson: '2',
      readable: 5 / 6,
      target: 0.75,
      reaches: true,
      counts: { words: 6, decodable: 2, 'high-frequency': 3, name: 0, 'story-word': 0, 'not-taught': 1 },
    });
  });

  it.each([
    [['gone.txt'], 'gone.txt  There is no such file or folder.'],
    [['folder'], 'folder  This is a folder; name one file.'],
    [['empty.md'], 'empty.md  There is no word in this text.'],
    [['story.md'], 'story.md:3:11  The sequence “gone.yaml” is not there.'],
    [['page.txt', '--lesson', '9'], 'sequence.yaml has no lesson “9”.'],
    [['page.txt', 'cake.md'], 'fit needs exactly one FILE.'],
    [[], 'fit needs exactly one FILE.'],
  ])('%j cannot be used', (given, message) => {
    const { errors, exitCode, output } = call('fit', ...given);
    expect(errors).toContain(message);
    expect({ exitCode, output }).toEqual({ exitCode: 2, output: '' });
  });
});
