import './series.css';
import type { SeriesAnswer } from '../../../../server/src/editor/series/protocol.ts';
import { append, setShown, setText } from '../../view/dom.ts';
import { seriesCharts, seriesSummary, storiesVerdict, storyGrid, usesGrid } from '../model.ts';
import { appendCharts } from './charts.ts';
import { listen, post } from './editor.ts';
import { appendGaps } from './gaps.ts';
import { appendGrid, type Open } from './grid.ts';

const noStories =
  'There is no story with a sequence in this workspace. A markdown file is a story when its front matter names a lesson of a sequence.yaml beside it or above it.';

const open: Open = ({ uri, place }) => post({ type: 'open', uri, place });
const main = append(document.body, 'main');
const absence = append(main, 'p', 'absence', 'Reading the stories…');
absence.setAttribute('role', 'status');
const page = append(main, 'div');
setShown(page, false);

const head = append(page, 'header');
const title = append(head, 'h1');
const choice = append(head, 'select');
choice.setAttribute('aria-label', 'Sequence');
choice.addEventListener('change', () => post({ type: 'choose', uri: choice.value }));
const save = append(head, 'button', 'save', 'Save Report…');
save.type = 'button';
save.addEventListener('click', () => post({ type: 'save' }));
const summary = append(page, 'p', 'summary');
const spoken = append(document.body, 'div', 'spoken');
spoken.setAttribute('role', 'status');

const updateCharts = appendCharts(section('The year'), (uri) => open({ uri, place: { kind: 'story' } }));
append(lastSection(), 'p', 'quiet', 'A hollow bar: the story falls short of a target.');
const gapsPart = section('What is missing');
const limits = append(gapsPart, 'p', 'quiet');
const updateGaps = appendGaps(gapsPart, open);
const updateStories = appendGrid(section('Stories'), 'Stories', open);
append(
  lastSection(),
  'p',
  'quiet',
  'Flesch-Kincaid and Spache are grades by formula, made for longer and harder texts. At this level they say little: compare stories with each other, and name no grade by them.',
);
const updateSpellings = appendGrid(section('Spellings by stories'), 'Spellings by stories', open);
append(
  lastSection(),
  'p',
  'quiet',
  'Decodable running words that use each spelling. Framed: the stories of the lesson that teaches it. A dot: taught and not used.',
);
const updateWords = appendGrid(
  section('High-frequency words by stories'),
  'High-frequency words by stories',
  open,
);

let last = '';
listen(({ answer, message }) => {
  const now = JSON.stringify(answer);
  setText(absence, message === '' ? noStories : message);
  // While the server is away, what it said last stays in sight below the reason.
  setShown(absence, answer === null);
  setShown(page, answer !== null || last !== '');
  if (answer === null || now === last) return;
  last = now;
  draw(answer);
});

function draw(answer: SeriesAnswer): void {
  setText(title, answer.title === '' ? 'Series' : answer.title);
  setShown(choice, answer.sequences.length > 1);
  choice.replaceChildren();
  for (const { uri, title: name, stories } of answer.sequences) {
    const option = append(choice, 'option', '', `${name === '' ? 'Series' : name} (${stories})`);
    option.value = uri;
    option.selected = uri === answer.uri;
  }
  setText(summary, seriesSummary(answer));
  // Each key may change some figure; only how many stories pass is worth an interruption.
  setText(spoken, storiesVerdict(answer));
  setText(limits, answer.limits);
  updateCharts(seriesCharts(answer));
  updateGaps(answer.gaps);
  updateStories(storyGrid(answer));
  updateSpellings(usesGrid(answer, answer.spellings, 'spelling'));
  updateWords(usesGrid(answer, answer.highFrequencyWords, 'word'));
}

function section(name: string): HTMLElement {
  const element = append(page, 'section');
  const heading = append(element, 'h2', '', name);
  heading.id = `part-${page.childElementCount}`;
  element.setAttribute('aria-labelledby', heading.id);
  return element;
}

function lastSection(): Element {
  return page.lastElementChild ?? page;
}
