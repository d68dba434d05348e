/**
 * Text for a hover, as data. Rendered as markdown or as plain text, whichever the client shows; nothing that comes from
 * a story or a sequence is ever read as markdown or HTML.
 */
export type Block =
  | { readonly kind: 'line'; readonly runs: readonly Run[] }
  | {
      readonly kind: 'table';
      readonly head: readonly string[];
      readonly rows: readonly (readonly string[])[];
    };

/** A stretch of a line; `strong` sets it off. */
export type Run = string | { readonly strong: string };

/** A line of text. */
export function line(...runs: Run[]): Block {
  return { kind: 'line', runs };
}

/** Renders blocks as CommonMark with tables, every sign of the texts escaped. */
export function markdown(blocks: readonly Block[]): string {
  return blocks.map(markdownBlock).join('\n\n');
}

/** Renders blocks as plain text, tables with tabs. */
export function plainText(blocks: readonly Block[]): string {
  return blocks
    .map((block) =>
      block.kind === 'line'
        ? block.runs.map((run) => printable(typeof run === 'string' ? run : run.strong)).join('')
        : [block.head, ...block.rows].map((row) => row.map(printable).join('\t')).join('\n'),
    )
    .join('\n');
}

/**
 * A text in which no sign means anything in markdown or HTML, on one line. Stops, colons and at signs are escaped too: in
 * addresses many renderers make links of them.
 */
export function escapedMarkdown(text: string): string {
  return printable(text)
    .replace(/[\\`*_{}[\]()#+\-.!|~:@]/g, '\\$&')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;');
}

function markdownBlock(block: Block): string {
  if (block.kind === 'line') {
    return block.runs
      .map((run) => (typeof run === 'string' ? escapedMarkdown(run) : `**${escapedMarkdown(run.strong)}**`))
      .join('');
  }
  const row = (cells: readonly string[]): string => `| ${cells.map(escapedMarkdown).join(' | ')} |`;
  const rule = `| ${block.head.map(() => '---').join(' | ')} |`;
  return [row(block.head), rule, ...block.rows.map(row)].join('\n');
}

/** White space folded; control signs and those that turn the direction of text left out; long texts cut. */
function printable(text: string): string {
  const folded = text
    .replace(/\s+/g, ' ')
    .replace(/[\p{Cc}\p{Cs}\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu, '');
  return folded.length > longestRun ? `${folded.slice(0, longestRun)}…` : folded;
}

/** UTF-16 code units of one text in a hover. */
const longestRun = 500;
