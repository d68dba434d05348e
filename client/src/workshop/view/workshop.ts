import './workshop.css';
import { append } from '../../view/dom.ts';
import { showChain } from './chain.ts';
import { showFit } from './fit.ts';
import { showWords } from './words.ts';

const main = append(document.body, 'main');
const { kind } = document.body.dataset;
// The editor shows the view's name outside of the page.
append(main, 'h1', 'spoken', document.title);
if (kind === 'words') showWords(main);
if (kind === 'chain') showChain(main);
if (kind === 'fit') showFit(main);
