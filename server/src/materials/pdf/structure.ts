/** The kinds of structure that the materials use, by their names in the PDF standard. */
export type StructureType =
  | 'Document'
  | 'Part'
  | 'Sect'
  | 'H1'
  | 'H2'
  | 'H3'
  | 'P'
  | 'Figure'
  | 'TOC'
  | 'TOCI'
  | 'Note'
  | 'L'
  | 'LI'
  | 'LBody';

/**
 * A node of the tree that tells readers for the blind what the marks on the pages are and in which order to read them.
 * What belongs to a drawing but to no node is decoration.
 */
export class StructureNode {
  readonly type: StructureType;
  /** What stands in for a figure when it is read aloud. */
  readonly alternative: string | undefined;
  readonly children: StructureNode[] = [];

  constructor(type: StructureType, alternative?: string) {
    this.type = type;
    this.alternative = alternative;
  }

  /** Makes a node that comes after the children there are. */
  add(type: StructureType, alternative?: string): StructureNode {
    const child = new StructureNode(type, alternative);
    this.children.push(child);
    return child;
  }
}
