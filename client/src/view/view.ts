import './view.css';
import { absenceModel } from '../gauge/absence.ts';
import type { GaugeState, ShowMessage } from '../gauge/messages.ts';
import { gaugeModel, type ReadableModel } from '../gauge/model.ts';
import { appendAbsencePage } from './absence-page.ts';
import { append, setShown } from './dom.ts';
import { post, savedScroll, saveScroll } from './editor.ts';
import { appendGaugePage } from './gauge-page.ts';
import { Places } from './places.ts';

const main = append(document.body, 'main');
const gaugePart = append(main, 'div', 'gauge');
const absencePart = append(main, 'div', 'absence');
const spoken = append(document.body, 'div', 'spoken');
spoken.setAttribute('role', 'status');

const updateGauge = appendGaugePage(gaugePart, new Places(say));
const updateAbsence = appendAbsencePage(absencePart);
setShown(gaugePart, false);
setShown(absencePart, false);

let waiting: GaugeState | undefined;
let lastVerdict: { uri: string; state: ReadableModel['state'] } | undefined;
let isFirst = true;
let silence: ReturnType<typeof setTimeout> | undefined;

window.addEventListener('message', ({ data }: MessageEvent<ShowMessage>) => {
  if (data?.type !== 'show') return;
  // Several states may come within one frame; only the last is drawn.
  if (waiting === undefined) requestAnimationFrame(draw);
  waiting = data.state;
});
document.addEventListener('keydown', (event) => {
  if (event.key === 'Escape') post({ type: 'editor' });
});
document.addEventListener('scroll', () => saveScroll(window.scrollY), { passive: true });
post({ type: 'ready' });

function draw(): void {
  const state = waiting;
  waiting = undefined;
  if (state === undefined) return;
  if (state.kind === 'gauge') drawGauge(state);
  const absence = absenceModel(state);
  if (absence !== undefined) updateAbsence(absence);
  setShown(gaugePart, absence === undefined);
  setShown(absencePart, absence !== undefined);
  if (isFirst && state.kind === 'gauge') {
    isFirst = false;
    window.scrollTo(0, savedScroll());
  }
}

function drawGauge({ gauge }: GaugeState & { kind: 'gauge' }): void {
  const model = gaugeModel(gauge);
  updateGauge(model);
  const { state, verdict, figure } = model.readable;
  // Each key may change the figure; only reaching or leaving the target is worth an interruption.
  if (lastVerdict?.uri === gauge.uri && lastVerdict.state !== state) say(`${figure} readable. ${verdict}`);
  lastVerdict = { uri: gauge.uri, state };
}

function say(text: string): void {
  // The same words twice would not be spoken again.
  spoken.textContent = spoken.textContent === text ? `${text}.` : text;
  // What was said is over: who reads through the page later must not meet an old figure.
  clearTimeout(silence);
  silence = setTimeout(() => {
    spoken.textContent = '';
  }, 4000);
}
