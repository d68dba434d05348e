import type { WordsAnswer } from '../../../../server/src/editor/workshop/protocol.ts';
import { append } from '../../view/dom.ts';
import { wordsSummary } from '../models.ts';
import { ask, listen, messageOf, post } from './editor.ts';
import { appendButton, appendChoice, appendField, appendStatus } from './form.ts';

/** The word finder. */
export function showWords(main: Element): void {
  const form = append(main, 'form', 'fields');
  const spelling = appendField(form, 'Spelling', 'sh, a_e');
  const sound = appendField(form, 'Sound', 'ā or long a');
  const place = appendChoice(form, 'Place', [
    ['', 'anywhere'],
    ['start', 'start'],
    ['middle', 'middle'],
    ['end', 'end'],
  ]);
  const numbers = (most: number): [string, string][] =>
    Array.from({ length: most }, (_, index) => [String(index + 1), String(index + 1)]);
  const sounds = appendChoice(form, 'Sounds', [['', 'any'], ...numbers(9)]);
  const syllables = appendChoice(form, 'Syllables', [['', 'any'], ...numbers(5)]);
  const kind = appendChoice(form, 'Part of speech', [
    ['', 'any'],
    ...['noun', 'verb', 'adjective', 'adverb'].map((name): [string, string] => [name, name]),
  ]);
  const kinds = appendChoice(form, 'Which', [
    ['', 'all'],
    ['new', 'new in the lesson'],
  ]);
  const used = appendChoice(form, 'In the story', [
    ['', 'used or not'],
    ['true', 'used'],
    ['false', 'not used'],
  ]);
  const status = appendStatus(main);
  const list = append(main, 'ul', 'words');
  let before = '';

  const find = (): void => {
    const numberOf = (choice: HTMLSelectElement) => (choice.value === '' ? undefined : Number(choice.value));
    ask(
      {
        spelling: spelling.value.trim() || undefined,
        sound: sound.value.trim() || undefined,
        place: place.value || undefined,
        sounds: numberOf(sounds),
        syllables: numberOf(syllables),
        partOfSpeech: kind.value || undefined,
        isNew: kinds.value === 'new',
        isUsed: used.value === '' ? undefined : used.value === 'true',
        limit: 120,
      },
      draw,
    );
  };
  const draw = (answer: unknown): void => {
    const message = messageOf(answer);
    const found = message === undefined ? (answer as WordsAnswer) : undefined;
    status.textContent = message ?? (found ? wordsSummary(found) : '');
    // The same words stay where they are, with the focus on one of them.
    const key = JSON.stringify(found?.words ?? []);
    if (key === before) return;
    before = key;
    list.replaceChildren();
    for (const { word, sounds: said, isNew } of found?.words ?? []) {
      const button = appendButton(append(list, 'li'), 'word', word);
      button.title = said === '' ? 'Write it at the caret' : `${said} – write it at the caret`;
      // The space is for screen readers; the style sheet sets the mark apart.
      if (isNew) append(button, 'span', 'new', ' new');
      button.addEventListener('click', () => post({ type: 'insert-word', word }));
    }
  };
  form.addEventListener('input', find);
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    find();
  });
  listen(find);
}
