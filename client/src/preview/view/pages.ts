import type { ShownDocument, ShownSide } from '../../../../server/src/materials/preview/shown-document.ts';
import { append } from '../../view/dom.ts';
import { labelOf, svgElements } from '../svg-page.ts';
import type { Pictures } from './pictures.ts';

const svgNames = 'http://www.w3.org/2000/svg';

/** The pages below each other. What has not changed is left alone, and the page that is looked at stays in sight. */
export class Pages {
  readonly #frame: HTMLElement;
  readonly #pictures: Pictures;
  readonly #turned: (index: number, count: number) => void;
  #drawn: readonly string[] = [];
  #index = 0;

  /** @param turned called when another page is looked at, or there are more or fewer pages. */
  constructor(
    parent: Element,
    pictures: Pictures,
    startIndex: number,
    turned: (index: number, count: number) => void,
  ) {
    this.#frame = append(parent, 'main', 'pages');
    this.#frame.tabIndex = 0;
    this.#frame.setAttribute('aria-label', 'Printed pages');
    this.#pictures = pictures;
    this.#index = startIndex;
    this.#turned = turned;
    this.#frame.addEventListener('scroll', () => this.#look(), { passive: true });
    new ResizeObserver(() => this.turnTo(this.#index)).observe(this.#frame);
  }

  /** Draws a document. */
  show({ sides }: ShownDocument): void {
    const index = this.#index;
    const keys = sides.map((side) => this.#keyOf(side, sides.length));
    for (const [at, side] of sides.entries()) {
      if (keys[at] === this.#drawn[at]) continue;
      const drawn = this.#draw(side, at, sides.length);
      const before = this.#frame.children[at];
      if (before === undefined) this.#frame.append(drawn);
      else before.replaceWith(drawn);
    }
    while (this.#frame.children.length > sides.length) this.#frame.lastElementChild?.remove();
    const isFirst = this.#drawn.length === 0;
    this.#drawn = keys;
    if (isFirst) this.turnTo(index);
    this.#look();
  }

  /** Goes to a page, counted from 0; to the last one at most. */
  turnTo(index: number): void {
    const pages = [...this.#frame.children];
    const page = pages[Math.max(0, Math.min(index, pages.length - 1))];
    if (page instanceof SVGElement) {
      const top = page.getBoundingClientRect().top - this.#frame.getBoundingClientRect().top;
      this.#frame.scrollTop += top - gap;
    }
    this.#look();
  }

  /** Goes on or back by so many pages. */
  turn(by: number): void {
    this.turnTo(this.#index + by);
  }

  /** Shows pages whole, or as wide as the view. */
  fit(isWide: boolean): void {
    const index = this.#index;
    this.#frame.classList.toggle('wide', isWide);
    this.turnTo(index);
  }

  /** The page whose middle is nearest to that of the view is the one that is looked at. */
  #look(): void {
    const pages = [...this.#frame.children];
    if (pages.length === 0) this.#turned(0, 0);
    if (pages.length === 0 || this.#frame.clientHeight === 0) return;
    const { top } = this.#frame.getBoundingClientRect();
    const eye = top + this.#frame.clientHeight * 0.4;
    const distances = pages.map((page) => {
      const box = page.getBoundingClientRect();
      return Math.max(box.top - eye, eye - box.bottom, 0);
    });
    this.#index = distances.indexOf(Math.min(...distances));
    this.#turned(this.#index, pages.length);
  }

  #keyOf(side: ShownSide, count: number): string {
    const pictures = side.marks.map((mark) =>
      mark.kind === 'picture' ? this.#pictures.urlOf(mark.address) : '',
    );
    return JSON.stringify([side, count, pictures]);
  }

  #draw(side: ShownSide, index: number, count: number): SVGElement {
    const svg = document.createElementNS(svgNames, 'svg');
    svg.setAttribute('viewBox', `0 0 ${side.width} ${side.height}`);
    // Larger than any view, so that the style sheet makes it fit.
    svg.setAttribute('width', String(side.width * 4));
    svg.setAttribute('height', String(side.height * 4));
    svg.setAttribute('role', 'img');
    svg.setAttribute('lang', 'en-US');
    svg.setAttribute('aria-label', labelOf(side, index, count));
    for (const { tag, attributes, text, address } of svgElements(side)) {
      const element = document.createElementNS(svgNames, tag);
      for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
      if (text !== undefined) element.textContent = text;
      if (address !== undefined) element.setAttribute('href', this.#pictures.urlOf(address));
      svg.append(element);
    }
    return svg;
  }
}

/** Above a page, in CSS pixels; as in the style sheet. */
const gap = 12;
