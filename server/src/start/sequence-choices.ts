/** What somebody says who begins a sequence. */
export interface SequenceChoices {
  readonly title: string;
  readonly vowels: 'apart' | 'usual' | 'alphabet';
  readonly consonants: 'many-words' | 'held-first';
  readonly pace: 'small' | 'large';
  readonly blends: 'after' | 'before' | 'unchecked';
  readonly endings: 'taught' | 'unchecked';
  /** High-frequency words a lesson. */
  readonly words: number;
  /** How many lessons, at most. */
  readonly lessons: number;
}

/** A step of beginning a sequence: what is asked, and the answers, the one to begin with first. */
export interface ChoiceStep<Key extends keyof SequenceChoices = keyof SequenceChoices> {
  readonly key: Key;
  readonly question: string;
  readonly answers: readonly {
    readonly value: SequenceChoices[Key];
    readonly label: string;
    /** Why one would choose it, as a sentence. */
    readonly because: string;
  }[];
}

/** The steps in the order in which they are asked; the title is asked for before them. */
export const choiceSteps: readonly ChoiceStep[] = [
  {
    key: 'vowels',
    question: 'In which order do the short vowels come?',
    answers: [
      {
        value: 'apart',
        label: 'a, o, i, u, e',
        because: 'The short i and the short e, which sound most alike, are far apart.',
      },
      {
        value: 'usual',
        label: 'a, i, o, u, e',
        because: 'The i early, for it, is, in and his; e still comes last.',
      },
      {
        value: 'alphabet',
        label: 'a, e, i, o, u',
        because: 'The order of the alphabet. The e and the i come close together.',
      },
    ],
  },
  {
    key: 'consonants',
    question: 'Which consonants come first?',
    answers: [
      {
        value: 'many-words',
        label: 'Those of many short words',
        because: 't, m, p, s, n, then c, d and g: map, pan, cat, dog.',
      },
      {
        value: 'held-first',
        label: 'Those that can be held',
        because: 'm, s, n, f, r, l: the sounds run into each other without a stop between.',
      },
    ],
  },
  {
    key: 'pace',
    question: 'How much does a lesson teach?',
    answers: [
      {
        value: 'small',
        label: 'A little: about three new spellings',
        because: 'More lessons, each easy to practise in one story.',
      },
      {
        value: 'large',
        label: 'More: about five or six',
        because: 'Half as many lessons; children go over some of it for a second time.',
      },
    ],
  },
  {
    key: 'blends',
    question: 'When do two consonants stand side by side, as in stop and hand?',
    answers: [
      {
        value: 'after',
        label: 'After sh, th, ch and ng',
        because: 'Short words stay short for longer; ship comes before stop.',
      },
      {
        value: 'before',
        label: 'Before sh, th, ch and ng',
        because: 'Known letters first, in longer words; stop comes before ship.',
      },
      {
        value: 'unchecked',
        label: 'From the start, without being taught',
        because: 'Whoever knows s, t, o and p is taken to read stop. Nothing is marked for its blends.',
      },
    ],
  },
  {
    key: 'endings',
    question: 'Are endings and longer words taught in lessons of their own?',
    answers: [
      {
        value: 'taught',
        label: 'Yes, one after another',
        because: 'cats, jumping and rabbit are marked until their lesson opens them.',
      },
      {
        value: 'unchecked',
        label: 'No',
        because: 'Whoever reads jump is taken to read jumped and jumping, and a word may be of any length.',
      },
    ],
  },
  {
    key: 'words',
    question: 'How many words does a lesson teach whole (high-frequency words)?',
    answers: [
      { value: 2, label: 'Two', because: 'Each can come several times in the story of its lesson.' },
      { value: 3, label: 'Three', because: 'Sentences sound natural sooner.' },
      { value: 4, label: 'Four', because: 'Many in little time; stories need more room to repeat them.' },
    ],
  },
  {
    key: 'lessons',
    question: 'How many lessons?',
    answers: [
      {
        value: 99,
        label: 'All',
        because: 'To the end of our list: vowels with r, silent letters, words of three syllables.',
      },
      { value: 24, label: '24', because: 'A lesson a week for most of a year.' },
      { value: 12, label: '12', because: 'A beginning that you go on with yourself.' },
    ],
  },
];

/** The choices by their answers, in the order of `choiceSteps`; an answer that is missing is the first of its step. */
export function choicesFrom(
  title: string,
  answers: readonly SequenceChoices[keyof SequenceChoices][],
): SequenceChoices {
  return Object.fromEntries([
    ['title', title],
    ...choiceSteps.map(({ key, answers: known }, at) => [key, answers[at] ?? known[0]?.value]),
  ]) as unknown as SequenceChoices;
}
