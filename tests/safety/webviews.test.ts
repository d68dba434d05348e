import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import manifest from '../../package.json' with { type: 'json' };

const root = fileURLToPath(new URL('../..', import.meta.url));

function sources(folder: string): readonly (readonly [name: string, text: string])[] {
  return readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => [`${folder}/${name}`, readFileSync(join(root, folder, name), 'utf8')]);
}

/** Places of the sources that a test looks for, by file. */
function found(folder: string, looked: RegExp): readonly string[] {
  return sources(folder).flatMap(([name, text]) =>
    Array.from(text.matchAll(looked), ([hit]) => `${name}: ${hit}`),
  );
}

describe('the pages in the editor', () => {
  test('are never written as HTML', () => {
    const ways =
      /\b(?:innerHTML|outerHTML|insertAdjacentHTML|document\.write|createContextualFragment|DOMParser|eval)\b|new Function\b/g;
    expect(found('client/src', ways)).toEqual([]);
  });

  test('have one frame, which loads nothing from elsewhere', () => {
    expect(found('client/src', /\.html = (?!webviewFrame\()[^;]*/g)).toEqual([]);
    const frame = readFileSync(join(root, 'client/src/webview-frame.ts'), 'utf8');
    expect(frame).toContain("default-src 'none'");
    expect(frame).toMatch(/script-src 'nonce-\$\{nonce\}'/);
    expect(frame).not.toMatch(/unsafe-|https?:|\*;|data:/);
    expect(frame.match(/<script/g)).toHaveLength(1);
  });

  test('may load from the extension alone', () => {
    const roots = found('client/src', /localResourceRoots: \[[^\]]*\]/g);
    expect(roots.length).toBeGreaterThan(0);
    for (const each of roots)
      expect(each).toMatch(/localResourceRoots: \[webviewFolder\((?:this\.)?#?extensionUri\)\]$/);
    expect(found('client/src', /enableCommandUris|portMapping/g)).toEqual([]);
  });
});

describe('texts in the editor', () => {
  test('are never trusted with commands or HTML', () => {
    expect(found('client/src', /(?:isTrusted|supportHtml)\s*[:=]\s*(?:true|\{)/g)).toEqual([]);
  });
});

describe('a workspace that is not trusted', () => {
  test('is worked in, since nothing of it is run', () => {
    expect(manifest.capabilities.untrustedWorkspaces).toEqual({ supported: true });
    const ways = /\b(?:child_process|execSync|execFile|spawn|createTerminal|executeTask|new Worker)\b/g;
    expect(found('server/src', ways)).toEqual([]);
    // The worker of the server itself.
    expect(found('client/src', ways)).toEqual(['client/src/server-worker.ts: new Worker']);
  });

  test('can set nothing that names a program or a file', () => {
    const settings = Object.values(manifest.contributes.configuration.properties);
    expect(settings.every(({ type, ...rest }) => type === 'number' || 'enum' in rest)).toBe(true);
  });
});
