import type { Finding } from '../review/review.ts';
import { rules } from '../review/rules/registry.ts';
import { severityOf } from '../review/severity.ts';
import { type LineIndex, lineIndex } from '../text/line-index.ts';
import type { CheckedStory } from './check-story.ts';
import type { Complaint } from './complaint.ts';
import type { SequenceTrouble } from './sequence-finder.ts';

/** What a run of `check` came to, for the report. */
export interface CheckedAll {
  readonly stories: readonly CheckedStory[];
  /** Files that could not be used. */
  readonly complaints: readonly Complaint[];
  readonly sequenceTroubles: readonly SequenceTrouble[];
  /** Markdown files in folders that name no lesson. */
  readonly leftAlone: readonly string[];
  /** The version of the package. */
  readonly version: string;
}

/**
 * The report of `check --format sarif`: the Static Analysis Results Interchange Format 2.1.0 (OASIS, 2020), every result on
 * a line of its own. Columns are UTF-16 units, as `columnKind` says. What could not be used at all is a notification.
 */
export function checkSarif({ stories, complaints, sequenceTroubles, version }: CheckedAll): string {
  const driver = { name: 'Battledore', version, rules: rules.map(describedRule) };
  const results = [
    ...sequenceTroubles.map(({ path, at, message, severity }) =>
      resultOf('sequence-problem', severity, message, {
        physicalLocation: {
          artifactLocation: { uri: uriOf(path) },
          region: { startLine: at.line, startColumn: at.column },
        },
      }),
    ),
    ...stories.flatMap(({ path, review }) => {
      const place = lineIndex(review.story.text);
      return review.findings.map((finding) =>
        resultOf(finding.rule, finding.severity, finding.message, locationOf(path, finding, place)),
      );
    }),
  ];
  const invocation = {
    executionSuccessful: complaints.length === 0,
    toolExecutionNotifications: complaints.map(notification),
  };
  const head = `"tool":${JSON.stringify({ driver })},\n"columnKind":"utf16CodeUnits",\n"invocations":${JSON.stringify([invocation])}`;
  const list =
    results.length === 0 ? '[]' : `[\n${results.map((result) => JSON.stringify(result)).join(',\n')}\n]`;
  return `{"$schema":"${schemaAddress}","version":"2.1.0","runs":[{\n${head},\n"results":${list}}]}\n`;
}

const schemaAddress =
  'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json';

const levels = { error: 'error', warning: 'warning', information: 'note' } as const;

function describedRule({ id, description, documentation }: (typeof rules)[number]): object {
  return {
    id,
    shortDescription: { text: description },
    fullDescription: { text: documentation.triggers },
    help: { text: `${documentation.rationale}\n\n${documentation.options}` },
    defaultConfiguration: { level: levels[severityOf(id)] },
  };
}

function resultOf(
  rule: Finding['rule'],
  severity: Finding['severity'],
  message: string,
  location: object,
): object {
  return {
    ruleId: rule,
    ruleIndex: rules.findIndex(({ id }) => id === rule),
    level: levels[severity],
    message: { text: message },
    locations: [location],
  };
}

function locationOf(path: string, { span }: Finding, place: LineIndex): object {
  const start = place(span.start);
  const end = place(span.end);
  return {
    physicalLocation: {
      artifactLocation: { uri: uriOf(path) },
      region: {
        startLine: start.line,
        startColumn: start.column,
        endLine: end.line,
        endColumn: end.column,
      },
    },
  };
}

function notification({ path, at, message, rule }: Complaint): object {
  return {
    level: 'error',
    message: { text: message },
    locations: [
      {
        physicalLocation: {
          artifactLocation: { uri: uriOf(path) },
          ...(at === undefined ? {} : { region: { startLine: at.line, startColumn: at.column } }),
        },
      },
    ],
    ...(rule === undefined ? {} : { associatedRule: { id: rule } }),
  };
}

/** A path with forward slashes as a relative address, or as a file address when it is absolute. */
function uriOf(path: string): string {
  const escaped = path
    .split('/')
    .map((segment) => encodeURIComponent(segment))
    .join('/');
  if (path.startsWith('/')) return `file://${escaped}`;
  return /^[a-z]:\//i.test(path) ? `file:///${path[0]}:${escaped.slice(escaped.indexOf('/'))}` : escaped;
}
