import type { Picture } from '../pictures/picture.ts';
import { sideContent } from './content.ts';
import type { DrawnDocument } from './drawing.ts';
import { embedFont, type UsedFont } from './embed-font.ts';
import type { FontFile } from './font-file.ts';
import { PdfFile } from './pdf-file.ts';
import { bytesOf, pdfNumbers, pdfText } from './serialize.ts';
import type { StructureNode } from './structure.ts';

/** A rectangle on a sheet, in points from its lower left corner. */
export type Extent = readonly [left: number, bottom: number, right: number, top: number];

/** What a side's content calls by name, and where each node of the structure has its content. */
export interface Resources {
  /** The name of a font, which notes the glyphs it is used for. */
  fontFor(font: FontFile): UsedFont;
  /** The name of a picture; the same picture is stored once. */
  pictureFor(picture: Picture): string;
  /** Notes that a node has a stretch of content on a side; gives the stretch's number on that side. */
  contentOf(node: StructureNode, side: number): number;
  /** Notes what a figure fills. */
  enclose(node: StructureNode, extent: Extent): void;
}

/** Writes a document as a tagged PDF in American English. The same document gives the same bytes. */
export function writeDocument(document: DrawnDocument): Uint8Array {
  const file = new PdfFile();
  const catalog = file.reserve();
  const pageTree = file.reserve();
  const sideObjects = document.sides.map(() => file.reserve());
  const fonts = new Map<FontFile, UsedFont>();
  const pictures = new Map<Picture, { readonly name: string; readonly object: number }>();
  const stretches = new Map<StructureNode, { side: number; number: number }[]>();
  const extents = new Map<StructureNode, Extent>();
  const owners: StructureNode[][] = document.sides.map(() => []);

  const resources: Resources = {
    fontFor: (font) => {
      const used = fonts.get(font) ?? {
        name: `F${fonts.size}`,
        object: file.reserve(),
        characters: new Map(),
      };
      fonts.set(font, used);
      return used;
    },
    pictureFor: (picture) => {
      const known = pictures.get(picture) ?? { name: `P${pictures.size}`, object: addPicture(picture, file) };
      pictures.set(picture, known);
      return known.name;
    },
    contentOf: (node, side) => {
      const number = owners[side]?.push(node) ?? 1;
      stretches.set(node, [...(stretches.get(node) ?? []), { side, number: number - 1 }]);
      return number - 1;
    },
    enclose: (node, [left, bottom, right, top]) => {
      const known = extents.get(node) ?? [left, bottom, right, top];
      extents.set(node, [
        Math.min(left, known[0]),
        Math.min(bottom, known[1]),
        Math.max(right, known[2]),
        Math.max(top, known[3]),
      ]);
    },
  };

  const contents = document.sides.map((side, index) =>
    file.addStream('', bytesOf(sideContent(side, index, resources))),
  );
  for (const [font, used] of fonts) embedFont(font, used, file);
  const shared = file.add(
    `<< /Font << ${[...fonts.values()].map(({ name, object }) => `/${name} ${object} 0 R`).join(' ')} >> /XObject << ${[...pictures.values()].map(({ name, object }) => `/${name} ${object} 0 R`).join(' ')} >> >>`,
  );
  for (const [index, { width, height }] of document.sides.entries()) {
    file.add(
      `<< /Type /Page /Parent ${pageTree} 0 R /MediaBox [0 0 ${pdfNumbers(width, height)}] /Contents ${contents[index]} 0 R /Resources ${shared} 0 R /StructParents ${index} /Tabs /S >>`,
      sideObjects[index],
    );
  }
  file.add(
    `<< /Type /Pages /Count ${sideObjects.length} /Kids [${sideObjects.map((object) => `${object} 0 R`).join(' ')}] >>`,
    pageTree,
  );
  const structure = addStructure(document.root, { stretches, extents, owners, sideObjects }, file);
  const outlines = addBookmarks(document, sideObjects, file);
  const duplex = document.turnsOverShortEdge ? ' /Duplex /DuplexFlipShortEdge' : '';
  file.add(
    `<< /Type /Catalog /Pages ${pageTree} 0 R /Lang (en-US) /MarkInfo << /Marked true >> /StructTreeRoot ${structure} 0 R /ViewerPreferences << /DisplayDocTitle true /PrintScaling /None${duplex} >>${outlines} >>`,
    catalog,
  );
  return file.bytes(catalog, file.add(`<< /Title ${pdfText(document.title)} /Producer (Battledore) >>`));
}

function addPicture(picture: Picture, file: PdfFile): number {
  if (picture.kind === 'vector') {
    const states = picture.opacities.map(
      (percent) => `/A${percent} << /ca ${percent / 100} /CA ${percent / 100} >>`,
    );
    return file.addStream(
      `/Type /XObject /Subtype /Form /BBox [0 0 ${pdfNumbers(picture.width, picture.height)}] /Resources << /ExtGState << ${states.join(' ')} >> >>`,
      bytesOf(picture.operators),
    );
  }
  const size = /\/Width \d+ \/Height \d+/.exec(picture.entries)?.[0] ?? '';
  const mask =
    picture.mask === undefined
      ? ''
      : ` /SMask ${file.addStream(
          `/Type /XObject /Subtype /Image ${size} /ColorSpace /DeviceGray /BitsPerComponent 8 /Filter /FlateDecode`,
          picture.mask,
        )} 0 R`;
  return file.addStream(`/Type /XObject /Subtype /Image${mask} ${picture.entries}`, picture.data);
}

interface Marked {
  readonly stretches: ReadonlyMap<
    StructureNode,
    readonly { readonly side: number; readonly number: number }[]
  >;
  readonly extents: ReadonlyMap<StructureNode, Extent>;
  readonly owners: readonly (readonly StructureNode[])[];
  readonly sideObjects: readonly number[];
}

/** The structure tree and the way back from the content of each side to it. */
function addStructure(
  root: StructureNode,
  { stretches, extents, owners, sideObjects }: Marked,
  file: PdfFile,
): number {
  const treeRoot = file.reserve();
  const objects = new Map<StructureNode, number>();
  const add = (node: StructureNode, parent: number): number => {
    const object = file.reserve();
    objects.set(node, object);
    const content = (stretches.get(node) ?? []).map(
      ({ side, number }) => `<< /Type /MCR /Pg ${sideObjects[side]} 0 R /MCID ${number} >>`,
    );
    const children = node.children.map((child) => `${add(child, object)} 0 R`);
    const alternative = node.alternative === undefined ? '' : ` /Alt ${pdfText(node.alternative)}`;
    const extent = extents.get(node);
    const layout =
      extent === undefined ? '' : ` /A << /O /Layout /Placement /Block /BBox [${pdfNumbers(...extent)}] >>`;
    file.add(
      `<< /Type /StructElem /S /${node.type} /P ${parent} 0 R${alternative}${layout} /K [${[...content, ...children].join(' ')}] >>`,
      object,
    );
    return object;
  };
  const top = add(root, treeRoot);
  const rows = owners.map(
    (nodes, side) => `${side} [${nodes.map((node) => `${objects.get(node)} 0 R`).join(' ')}]`,
  );
  const parentTree = file.add(`<< /Nums [${rows.join(' ')}] >>`);
  return file.add(
    `<< /Type /StructTreeRoot /K [${top} 0 R] /ParentTree ${parentTree} 0 R /ParentTreeNextKey ${owners.length} >>`,
    treeRoot,
  );
}

/** The reader's list of contents; its entry in the catalogue, empty when there is none. */
function addBookmarks({ bookmarks }: DrawnDocument, sideObjects: readonly number[], file: PdfFile): string {
  if (bookmarks.length === 0) return '';
  const top = file.reserve();
  const entries = bookmarks.map(() => file.reserve());
  for (const [index, { title, side }] of bookmarks.entries()) {
    const before = index === 0 ? '' : ` /Prev ${entries[index - 1]} 0 R`;
    const after = index === entries.length - 1 ? '' : ` /Next ${entries[index + 1]} 0 R`;
    file.add(
      `<< /Title ${pdfText(title)} /Parent ${top} 0 R${before}${after} /Dest [${sideObjects[side]} 0 R /Fit] >>`,
      entries[index],
    );
  }
  file.add(
    `<< /Type /Outlines /First ${entries[0]} 0 R /Last ${entries.at(-1)} 0 R /Count ${entries.length} >>`,
    top,
  );
  return ` /Outlines ${top} 0 R`;
}
