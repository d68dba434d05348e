import './workshop.css';
import { append } from '../../view/dom.ts';
import { showChain } from './chain.ts';
import { showFit } from './fit.ts';
import { showWords } from './words.ts';

const main = append(document.body, 'main');
const { kind } = document.body.dataset;
if (kind === 'words') showWords(main);
if (kind === 'chain') showChain(main);
if (kind === 'fit') showFit(main);
