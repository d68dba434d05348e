import { mkdirSync, mkdtempSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { randomNumbers } from '../bench/stories.ts';
import { hostilePieces, sequenceTexts, startTexts } from '../property/hostile-pieces.ts';
import { differenceOf } from './compare-servers.ts';
import { Dice } from './dice.ts';
import { hostileTexts } from './hostile-texts.ts';
import { malformedParams, requestMethods } from './malformed-params.ts';
import { nonsenseName, pause, TrafficClient } from './traffic-client.ts';
import { clockText, clockWord, numberOf } from './traffic-clock.ts';

const server = fileURLToPath(new URL('../../server/dist/node.js', import.meta.url));

/** What one day of traffic came to. */
export interface Day {
  /** Messages sent. */
  readonly messages: number;
  /** Answers that were compared with those of a fresh server. */
  readonly compared: number;
  /** What the server did wrong; empty when it did well. */
  readonly faults: readonly string[];
  /** The request that took longest. */
  readonly slowest: { readonly method: string; readonly milliseconds: number };
}

/** An open document of the client; its text is what the server must have. */
interface Open {
  document: TextDocument;
}

/**
 * A day before one server process, all of it decided by the seed: documents are opened, edited, closed, renamed and asked
 * about, questions are taken back, the sequence goes and comes, nonsense is sent. At its end each open document's
 * diagnostics and gauge must be those of a server that has just started, and the server must end as the protocol says.
 */
export async function passDay(seed: number, steps = 120): Promise<Day> {
  const day = new TrafficDay(seed);
  try {
    return await day.pass(steps);
  } finally {
    day.clear();
  }
}

class TrafficDay {
  readonly #dice: Dice;
  readonly #folder = mkdtempSync(join(tmpdir(), 'battledore-traffic-'));
  readonly #client: TrafficClient;
  readonly #pulls: boolean;
  /** On half of the days the client sends nothing that is wrong; then the server's log must be empty. */
  readonly #hasManners: boolean;
  readonly #open = new Map<string, Open>();
  readonly #questions: Promise<unknown>[] = [];
  readonly #faults: string[] = [];
  #settings: unknown = { largestFile: 1000 };
  #version = 0;
  #names = 0;
  #messages = 0;
  #clock = 0;

  constructor(seed: number) {
    this.#dice = new Dice(randomNumbers(seed));
    this.#pulls = this.#dice.isLuck(0.5);
    this.#hasManners = this.#dice.isLuck(0.5);
    this.#client = new TrafficClient(server, { pulls: this.#pulls, settings: () => this.#settings });
  }

  async pass(steps: number): Promise<Day> {
    mkdirSync(join(this.#folder, 'spring'));
    writeFileSync(join(this.#folder, 'sequence.yaml'), sequenceTexts[0] ?? '');
    await this.#client.request('textDocument/hover', {}); // before its time
    await this.#client.initialize([this.#uri('').replace(/\/$/, '')]);
    this.#start(this.#uri('clock.md'), clockText(this.#clock));
    this.#start(this.#uri('first.md'), startTexts[1] ?? '');
    this.#start(this.#uri('calm-1.md'), startTexts[1] ?? '');
    this.#start(this.#uri('calm-2.md'), startTexts[2] ?? '');
    for (let step = 0; step < steps; step++) {
      await this.#step();
      // Now and then the server gets a moment; else messages come as fast as they can be written.
      if (this.#dice.isLuck(0.2)) await pause(this.#dice.below(8));
    }
    await Promise.all(this.#questions);
    // Most evenings the last change is one of the sequence, which every story rests on.
    if (this.#dice.isLuck(0.7)) this.#changeSequence(this.#dice.pick(soundSequences));
    const compared = await this.#compareWithFresh();
    await this.#end();
    return {
      messages: this.#messages,
      compared,
      faults: [...this.#client.faults, ...(this.#hasManners ? this.#client.log : []), ...this.#faults],
      slowest: this.#client.slowest,
    };
  }

  clear(): void {
    this.#client.kill();
    rmSync(this.#folder, { recursive: true, force: true });
  }

  async #step(): Promise<void> {
    const acts: readonly [weight: number, act: () => void | Promise<void>][] = [
      [30, () => this.#edit()],
      [12, () => this.#tick()],
      [20, () => this.#ask()],
      [3, () => this.#start(this.#newUri(), this.#dice.pick(startTexts))],
      [2, () => this.#start(this.#newUri(), this.#dice.pick(hostileTexts).text())],
      [3, () => this.#close(this.#anyOpen())],
      [2, () => this.#rename()],
      [4, () => this.#changeSequence()],
      [1, () => this.#openSequence()],
      [2, () => this.#changeSettings()],
      [this.#hasManners ? 0 : 10, () => this.#sendNonsense()],
      [2, () => this.#waitForAnswers()],
    ];
    let left = this.#dice.share() * acts.reduce((sum, [weight]) => sum + weight, 0);
    for (const [weight, act] of acts) {
      left -= weight;
      if (left < 0) return act();
    }
  }

  #start(uri: string, text: string): void {
    if (this.#open.has(uri)) return;
    const version = this.#nextVersion();
    const languageId = uri.endsWith('.md') ? 'markdown' : 'yaml';
    this.#open.set(uri, { document: TextDocument.create(uri, languageId, version, text) });
    this.#client.sending(uri, version);
    this.#notify('textDocument/didOpen', { textDocument: { uri, languageId, version, text } });
  }

  #edit(uri = this.#anyOpen()): void {
    const open = uri === undefined ? undefined : this.#open.get(uri);
    if (open === undefined || open.document.uri.endsWith('clock.md')) return;
    const changes = Array.from({ length: 1 + this.#dice.below(3) }, () => {
      const { document } = open;
      const { length } = document.getText();
      const text = this.#dice.isLuck(0.3) ? '' : this.#dice.pick(hostilePieces);
      if (this.#dice.isLuck(0.03) && !document.uri.includes('/calm-'))
        return this.#apply(open, { text: this.#dice.pick(startTexts) });
      // The front matter of the calm stories stays as it is, so that there is something to review to the end.
      const from = document.uri.includes('/calm-') ? document.getText().lastIndexOf('lake\n---\n') + 9 : 0;
      const start = Math.min(length, from + this.#dice.below(length + 1 - from));
      const end = Math.min(length, start + (this.#dice.isLuck(0.5) ? 0 : this.#dice.below(60)));
      return this.#apply(open, {
        range: { start: document.positionAt(start), end: document.positionAt(end) },
        text,
      });
    });
    this.#send(open, changes);
  }

  /** The clock's one word names its version, so that an answer of an earlier one is known by its text. */
  #tick(): void {
    const open = this.#open.get(this.#uri('clock.md'));
    if (open === undefined) return;
    const text = open.document.getText();
    const start = text.lastIndexOf('Night');
    const range = {
      start: open.document.positionAt(start),
      end: open.document.positionAt(text.lastIndexOf('.')),
    };
    this.#send(open, [this.#apply(open, { range, text: clockWord(++this.#clock) })]);
    if (this.#dice.isLuck(0.5)) this.#question(this.#askClock(this.#clock));
  }

  async #askClock(asked: number): Promise<void> {
    const textDocument = { uri: this.#uri('clock.md') };
    const position = this.#open
      .get(textDocument.uri)
      ?.document.positionAt(clockText(0).lastIndexOf('Night') + 2);
    const method = this.#pulls && this.#dice.isLuck(0.5) ? 'textDocument/diagnostic' : 'textDocument/hover';
    const answer = await this.#client.request(method, { textDocument, position });
    const told = 'result' in answer ? JSON.stringify(answer.result) : '';
    for (const [, letters = ''] of told.matchAll(/Night([a-j]+)q/gi)) {
      const tick = numberOf(letters);
      if (tick < asked || tick > this.#clock) {
        this.#faults.push(`${method}, asked at ${asked} and answered at ${this.#clock}, is of ${tick}.`);
      }
    }
  }

  #apply<Change extends { readonly text: string }>(open: Open, change: Change): Change {
    open.document = TextDocument.update(open.document, [change], open.document.version);
    return change;
  }

  #send({ document }: Open, contentChanges: readonly unknown[]): void {
    const { uri } = document;
    const version = this.#nextVersion();
    this.#client.sending(uri, version);
    this.#notify('textDocument/didChange', { textDocument: { uri, version }, contentChanges });
  }

  #ask(): void {
    const uri = this.#dice.isLuck(0.1)
      ? this.#uri('nowhere.md')
      : (this.#anyOpen() ?? this.#uri('nowhere.md'));
    const length = this.#open.get(uri)?.document.getText().length ?? 0;
    const position = this.#open.get(uri)?.document.positionAt(this.#dice.below(length + 1)) ?? {
      line: 0,
      character: 0,
    };
    const method = this.#dice.pick(requestMethods);
    const params = {
      textDocument: { uri },
      position,
      range: { start: position, end: position },
      context: { diagnostics: [] },
      uri,
      sequenceUri: this.#uri('sequence.yaml'),
      length: 5,
      seed: this.#dice.below(100),
      text: 'The map sat. Night!',
      show: this.#dice.isLuck(0.5),
      ...{ material: 'book', layout: 'single', paper: 'a4', parts: [] },
    };
    this.#question(
      this.#client.request(method, params, this.#dice.isLuck(0.4) ? this.#dice.below(4) : undefined),
    );
  }

  #close(uri: string | undefined): void {
    if (uri === undefined || /\/(?:clock|calm-\d)\.md$/.test(uri)) return;
    this.#open.delete(uri);
    this.#client.closing(uri);
    this.#notify('textDocument/didClose', { textDocument: { uri } });
    if (this.#dice.isLuck(0.3)) this.#start(uri, this.#dice.pick(startTexts));
  }

  /** As editors do it: the file moves, the document is closed under one name and opened under another. */
  #rename(): void {
    const uri = this.#anyOpen();
    const open = uri === undefined ? undefined : this.#open.get(uri);
    if (uri === undefined || open === undefined || !/\/story-\d+\.md$/.test(uri)) return;
    const [from, to] = [fileURLToPath(uri), fileURLToPath(this.#newUri())];
    writeFileSync(from, open.document.getText());
    renameSync(from, to);
    this.#close(uri);
    this.#start(pathToFileURL(to).href, open.document.getText());
    this.#tellChanged([
      [uri, 3],
      [pathToFileURL(to).href, 1],
    ]);
  }

  #changeSequence(text?: string): void {
    const below = text === undefined && this.#dice.isLuck(0.2) ? 'spring/' : '';
    const path = join(this.#folder, below, 'sequence.yaml');
    if (text === undefined && this.#dice.isLuck(0.3)) rmSync(path, { force: true });
    else writeFileSync(path, text ?? this.#dice.pick(sequenceTexts));
    this.#tellChanged([[this.#uri(`${below}sequence.yaml`), 2]]);
  }

  #openSequence(): void {
    const uri = this.#uri('sequence.yaml');
    if (this.#open.has(uri)) this.#close(uri);
    else this.#start(uri, this.#dice.pick(sequenceTexts));
  }

  #changeSettings(): void {
    this.#settings = this.#dice.pick<unknown>([
      { largestFile: 1000 },
      { largestFile: 1 },
      { sounds: 'ipa' },
      null,
      { largestFile: 'many', sounds: 7 },
      { largestFile: -1 },
      [],
    ]);
    this.#notify('workspace/didChangeConfiguration', { settings: this.#settings });
  }

  /** Messages that no client should send; none is about a document that is compared in the end. */
  #sendNonsense(): void {
    const params = this.#dice.pick(malformedParams(this.#uri(nonsenseName)));
    if (this.#dice.isLuck(0.5)) {
      const method = this.#dice.pick([...requestMethods, 'nothing/known', '$/nothing', 'initialize', '']);
      // `checkStories` with a wrong `show` would only switch something on or off.
      this.#question(this.#client.request(method, params));
    } else {
      const method = this.#dice.pick(['didOpen', 'didChange', 'didClose', 'didSave']);
      this.#notify(`textDocument/${method}`, params);
      this.#notify(
        this.#dice.pick(['workspace/didChangeWatchedFiles', '$/cancelRequest', '$/setTrace', 'nothing']),
        params,
      );
    }
  }

  async #waitForAnswers(): Promise<void> {
    await Promise.all(this.#questions.splice(0));
  }

  async #compareWithFresh(): Promise<number> {
    const fresh = new TrafficClient(server, { pulls: this.#pulls, settings: () => this.#settings });
    try {
      await fresh.initialize([this.#uri('').replace(/\/$/, '')]);
      // Whatever was said of the nonsense must not stay open; and what is held back while a word is typed must show.
      this.#notify('textDocument/didClose', { textDocument: { uri: this.#uri(nonsenseName) } });
      for (const open of this.#open.values()) {
        if (this.#dice.isLuck(0.7)) this.#send(open, [this.#apply(open, { text: open.document.getText() })]);
      }
      await pause(1100);
      for (const [uri, { document }] of this.#open) {
        const version = document.version + 1;
        fresh.sending(uri, version);
        const textDocument = { uri, languageId: document.languageId, version, text: document.getText() };
        fresh.notify('textDocument/didOpen', { textDocument });
      }
      for (const [uri, { document }] of this.#open) {
        const difference = await differenceOf(uri, this.#client, fresh);
        const name = uri.slice(this.#uri('').length);
        const text = JSON.stringify(document.getText().slice(0, 2000));
        if (difference !== undefined) this.#faults.push(`${name}: ${difference} of ${text}`);
      }
      this.#faults.push(...fresh.faults);
      fresh.over();
      return this.#open.size;
    } finally {
      fresh.kill();
    }
  }

  /** Each way of going that the protocol, or the death of an editor, knows. */
  async #end(): Promise<void> {
    const client = this.#client;
    client.over();
    const way = this.#dice.pick(['shutdown, exit', 'exit', 'hang up', 'shutdown, work, exit']);
    if (way.startsWith('shutdown')) await client.request('shutdown', null);
    if (way.includes('work')) {
      this.#edit();
      const late = await client.request('textDocument/hover', {
        textDocument: { uri: this.#uri('clock.md') },
        position: { line: 0, character: 0 },
      });
      if (!('error' in late)) this.#faults.push('A request after the shutdown was answered.');
    }
    if (way === 'hang up') client.hangUp();
    else client.notify('exit', undefined);
    const end = await Promise.race([client.ended, pause(20_000).then(() => undefined)]);
    const expected = way.startsWith('shutdown') ? 0 : 1;
    if (end?.code !== expected) {
      this.#faults.push(`After “${way}” the server ended with ${JSON.stringify(end)}, not with ${expected}.`);
    }
  }

  #tellChanged(changes: readonly (readonly [uri: string, type: number])[]): void {
    this.#notify('workspace/didChangeWatchedFiles', {
      changes: changes.map(([uri, type]) => ({ uri, type })),
    });
  }

  #notify(method: string, params: unknown): void {
    this.#messages++;
    this.#client.notify(method, params);
  }

  #question(answer: Promise<unknown>): void {
    this.#messages++;
    this.#questions.push(answer);
  }

  /** No two are the same; one in ten is lower than those before. */
  #nextVersion(): number {
    this.#version++;
    return this.#dice.isLuck(0.1) ? -this.#version : this.#version;
  }

  #newUri(): string {
    const folder = this.#dice.isLuck(0.3) ? 'spring/' : '';
    return this.#uri(`${folder}story-${++this.#names}.md`);
  }

  #uri(name: string): string {
    return `${pathToFileURL(this.#folder).href}/${name}`;
  }

  #anyOpen(): string | undefined {
    return this.#dice.pick([...this.#open.keys()]);
  }
}

const soundSequences = sequenceTexts.filter((text) => text.includes('targets:'));
