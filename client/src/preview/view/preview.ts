import './preview.css';
import { append, setShown, setText } from '../../view/dom.ts';
import { appendButton, appendChoice } from '../../workshop/view/form.ts';
import type { PreviewShow, PrintChoice } from '../messages.ts';
import { listen, post, savedState, saveState } from './editor.ts';
import { Pages } from './pages.ts';
import { Pictures } from './pictures.ts';

const bar = append(document.body, 'header', 'bar');
const heading = append(bar, 'h1', 'spoken', 'Printed pages');
const material = appendChoice(bar, 'Document', [
  ['book', 'Child’s book'],
  ['teacher', 'Teacher’s copy'],
  ['practice', 'Practice pages'],
  ['cards', 'Cards'],
]);
const layout = appendChoice(bar, 'Layout', [
  ['page', 'One page a sheet'],
  ['booklet', 'Booklet to fold'],
]);
const paper = appendChoice(bar, 'Paper', [
  ['letter', 'Letter'],
  ['a4', 'A4'],
]);
const fit = appendChoice(bar, 'Size', [
  ['whole', 'Whole page'],
  ['wide', 'Full width'],
]);

const turner = append(document.body, 'nav', 'turner');
turner.setAttribute('aria-label', 'Pages');
const back = appendButton(turner, '', 'Previous');
const where = append(turner, 'span', 'where');
where.setAttribute('role', 'status');
const on = appendButton(turner, '', 'Next');
const printButton = appendButton(turner, 'primary', 'Print…');

const notice = append(document.body, 'section', 'notice');
notice.setAttribute('role', 'status');

const pictures = new Pictures();
const state = savedState();
const pages = new Pages(document.body, pictures, state.page ?? 0, (index, count) => {
  setText(where, count === 0 ? '' : `Page ${index + 1} of ${count}`);
  back.disabled = index === 0;
  on.disabled = index >= count - 1;
  saveState({ page: index });
});
fit.value = state.isWide === true ? 'wide' : 'whole';
pages.fit(state.isWide === true);

const chosen = (): PrintChoice => ({
  material: material.value as PrintChoice['material'],
  layout: layout.value as PrintChoice['layout'],
  paper: paper.value as PrintChoice['paper'],
});

function choose(): void {
  layout.disabled = material.value !== 'book';
  saveState({ choice: chosen() });
  post({ type: 'choose', choice: chosen() });
}

for (const field of [material, layout, paper]) field.addEventListener('change', choose);
fit.addEventListener('change', () => {
  saveState({ isWide: fit.value === 'wide' });
  pages.fit(fit.value === 'wide');
});
printButton.addEventListener('click', () => post({ type: 'print' }));
back.addEventListener('click', () => pages.turn(-1));
on.addEventListener('click', () => pages.turn(1));

const keys: Readonly<Record<string, () => void>> = {
  PageUp: () => pages.turn(-1),
  ArrowLeft: () => pages.turn(-1),
  PageDown: () => pages.turn(1),
  ArrowRight: () => pages.turn(1),
  Home: () => pages.turnTo(0),
  End: () => pages.turnTo(Number.POSITIVE_INFINITY),
  Escape: () => post({ type: 'editor' }),
};
document.addEventListener('keydown', (event) => {
  const act = keys[event.key];
  const isPlain = !event.ctrlKey && !event.altKey && !event.metaKey && !event.shiftKey;
  // In a list of choices these keys choose.
  if (act === undefined || !isPlain || (event.target instanceof HTMLSelectElement && event.key !== 'Escape'))
    return;
  event.preventDefault();
  act();
});

listen((message) => {
  if (message?.type === 'fonts') void loadFonts(message.fonts);
  if (message?.type === 'pages') showPages(message);
  if (message?.type === 'nothing') {
    showChoice(message.choice);
    if (!message.keepsPages) {
      setText(heading, 'Printed pages');
      pages.show({ title: '', sides: [] });
    }
    showNotice([{ message: message.message }]);
    printButton.disabled = true;
  }
});
post({ type: 'ready', ...(state.choice === undefined ? {} : { choice: state.choice }) });

/** The faces that the pages are set in; the letters find them when they are there. */
async function loadFonts(fonts: Readonly<Record<string, Uint8Array>>): Promise<void> {
  for (const [name, bytes] of Object.entries(fonts)) {
    document.fonts.add(await new FontFace(name, bytes.slice()).load());
  }
}

function showPages({ name, choice, answer }: PreviewShow & { type: 'pages' }): void {
  showChoice(choice);
  setText(heading, `${name}: printed pages`);
  pictures.take(answer.pictures);
  pages.show(answer.document);
  showNotice(answer.problems);
  printButton.disabled = answer.problems.length > 0;
  printButton.title = answer.problems.length > 0 ? 'What is named below has to be mended first' : name;
}

function showChoice(choice: PrintChoice): void {
  material.value = choice.material;
  layout.value = choice.layout;
  paper.value = choice.paper;
  layout.disabled = choice.material !== 'book';
  saveState({ choice });
}

let noticed = '[]';

/** What keeps the pages from being printed; a line of the story can be gone to. */
function showNotice(problems: readonly { readonly line?: number; readonly message: string }[]): void {
  const key = JSON.stringify(problems);
  if (key === noticed) return;
  noticed = key;
  notice.replaceChildren();
  setShown(notice, problems.length > 0);
  for (const { line, message } of problems) {
    const row = append(notice, 'p');
    if (line !== undefined) {
      const button = appendButton(row, 'place', `Line ${line}`);
      button.addEventListener('click', () => post({ type: 'reveal', line }));
      append(row, 'span', '', `: ${message}`);
    } else append(row, 'span', '', message);
  }
}
