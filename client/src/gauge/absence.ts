import type { GaugeState } from './messages.ts';

/** What the view says when there is no gauge: what is the matter and what to do. */
export interface AbsenceModel {
  readonly title: string;
  readonly paragraphs: readonly string[];
  /** Lines to write into the file; empty when that would not help. */
  readonly example: string;
  /** What to do, the likeliest first. */
  readonly buttons: readonly { readonly label: string; readonly message: AbsenceButton }[];
}

/** What a button of the page asks for. */
export type AbsenceButton =
  | 'settings'
  | 'restart'
  | 'sequence-problem'
  | 'new-story'
  | 'new-sequence'
  | 'samples';

/** The page without a gauge; nothing when there is one. */
export function absenceModel(state: GaugeState): AbsenceModel | undefined {
  switch (state.kind) {
    case 'gauge':
      return undefined;
    case 'starting':
      return {
        title: 'Reading the story',
        paragraphs: ['The gauge comes in a moment.'],
        example: '',
        buttons: [],
      };
    case 'stopped':
      return {
        title: 'Battledore stopped',
        paragraphs: ['Your text is safe; only the checking stopped.'],
        example: '',
        buttons: [{ label: 'Start Again', message: 'restart' }],
      };
    case 'no-file':
      return {
        title: 'No story open',
        paragraphs: [
          'Open a story to see which words the children can read.',
          'A story is a markdown file that names its lesson at the top:',
        ],
        example: storyHead,
        buttons: [newStory, newSequence, { label: 'Open the Sample Stories', message: 'samples' }],
      };
    case 'no-gauge':
      return withReason(state);
  }
}

const newStory = { label: 'New Story', message: 'new-story' } as const;
const newSequence = { label: 'New Sequence', message: 'new-sequence' } as const;
const storyHead = '---\ntitle: My Story\nlesson: "1"\n---';

function withReason({ reason, message, sequenceProblems }: GaugeState & { kind: 'no-gauge' }): AbsenceModel {
  switch (reason) {
    case 'not-a-story':
      return {
        title: 'Not a story yet',
        paragraphs: [message, 'A story names its lesson at its top:'],
        example: storyHead,
        buttons: [newStory],
      };
    case 'no-sequence':
      return {
        title: 'No sequence found',
        paragraphs: [
          message,
          'Lay a file named sequence.yaml beside the story or in a folder above it, with the lessons in their order:',
        ],
        example:
          'title: Our year\nlessons:\n  - name: "1"\n    spellings: [m as in mud, a as in map]\n    high-frequency words: [the]',
        buttons: [newSequence],
      };
    case 'no-such-lesson':
      return {
        title: 'No such lesson',
        paragraphs: [message],
        example: '',
        buttons: sequenceProblems ? [{ label: 'Open the Sequence', message: 'sequence-problem' }] : [],
      };
    case 'too-large':
      return {
        title: 'Too large to check',
        paragraphs: [message],
        example: '',
        buttons: [{ label: 'Open Settings', message: 'settings' }],
      };
  }
}
