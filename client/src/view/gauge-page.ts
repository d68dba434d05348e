import type { GaugeModel } from '../gauge/model.ts';
import { append, setShown, setText } from './dom.ts';
import { post } from './editor.ts';
import { appendItemList } from './item-list.ts';
import { appendPageChart } from './page-chart.ts';
import type { Places } from './places.ts';
import { appendReadablePart } from './readable-part.ts';
import { appendSentenceChart } from './sentence-chart.ts';

/**
 * The gauge of a story, built once; after that only what changed is touched.
 *
 * @returns a function that brings it to a new model.
 */
export function appendGaugePage(parent: Element, places: Places): (model: GaugeModel) => void {
  const header = append(parent, 'header');
  const title = append(header, 'h1');
  const lesson = append(header, 'button', 'link');
  lesson.type = 'button';
  lesson.title = 'Open the lesson in its sequence';
  lesson.addEventListener('click', () => post({ type: 'lesson' }));
  const sequence = append(header, 'button', 'link');
  sequence.type = 'button';
  sequence.addEventListener('click', () => post({ type: 'sequence-problem' }));
  const updateReadable = appendReadablePart(parent);
  const updateNotTaught = appendItemList(parent, 'not-taught', 'Not taught yet', places);
  const updateSpellings = appendItemList(parent, 'spellings', 'New spellings', places);
  const updateWords = appendItemList(parent, 'words', 'New high-frequency words', places);
  const updateSentences = appendSentenceChart(parent, places);
  const updatePages = appendPageChart(parent, places);
  append(
    parent,
    'p',
    'hint',
    'Enter shows a place in the text and, again, the next one. Arrow keys move within a part. Escape returns to the text.',
  );
  return (model) => {
    places.uri = model.uri;
    setText(title, model.title);
    setText(lesson, model.lesson);
    setText(sequence, model.sequence);
    setShown(sequence, model.sequence !== '');
    updateReadable(model);
    updateNotTaught(model.notTaught);
    updateSpellings(model.spellings);
    updateWords(model.highFrequencyWords);
    updateSentences(model.sentences);
    updatePages(model.pages);
  };
}
