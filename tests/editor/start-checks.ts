import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { readSequence } from '../../server/src/sequence/read-sequence.ts';
import { beginSequence } from '../../server/src/start/begin-sequence.ts';
import { choiceSteps, choicesFrom } from '../../server/src/start/sequence-choices.ts';
import { sequenceText } from '../../server/src/start/write-sequence.ts';
import { type Checks, expectSame } from './checks.ts';
import { repository } from './package.ts';
import { until, type Workbench } from './workbench.ts';
import { sequenceName, storyName, type WritingDesk } from './writing-desk.ts';

/** The commands that begin a sequence or a story, and take a sequence to a spreadsheet and back; pictures are named by `part`. */
export async function checkStart(
  checks: Checks,
  workbench: Workbench,
  desk: WritingDesk,
  part: string,
): Promise<void> {
  await workbench.editor(storyName).waitFor({ timeout: 60_000 });
  await workbench.readable();
  const before = desk.read(sequenceName);
  const input = workbench.page.locator('.quick-input-widget input[type="text"]');
  const rows = workbench.page.locator('.quick-input-list .monaco-list-row');
  const title = workbench.page.locator('.quick-input-title');
  const picture = (name: string) =>
    workbench.page.screenshot({ path: join(repository, 'artefacts', `${part}-${name}.png`) });
  /** Waits for a box with a title, so that no key goes to the one before. */
  const box = (text: string | RegExp) => title.filter({ hasText: text }).waitFor();
  const onDisk = (name: string) =>
    until(`${name} on the disk`, async () => {
      const path = join(desk.folder, name);
      const text = existsSync(path) ? readFileSync(path, 'utf8') : '';
      return text === '' ? undefined : text;
    });

  /** Chooses a table in the editor's own dialog, where a click may only write the way to the file into the box. */
  const openTable = async (name: string) => {
    const dialog = title.filter({ hasText: 'A spreadsheet saved as CSV' });
    await dialog.waitFor();
    await rows.filter({ hasText: name }).first().click();
    const columns = title.filter({ hasText: `Import ${name}` });
    await columns.waitFor({ timeout: 3_000 }).catch(async () => {
      if (await dialog.isVisible()) await workbench.press('Enter');
    });
    await columns.waitFor();
  };

  await checks.check('the first steps open with their pictures', async () => {
    await workbench.command('Welcome: Open Walkthrough');
    await rows.filter({ hasText: 'First Steps with Battledore' }).first().click();
    const steps = workbench.page.locator('.gettingStartedContainer');
    await steps.getByText('Open the sample stories').first().waitFor();
    await steps.locator('.getting-started-media').first().waitFor();
    await steps.getByText('Find a word that fits').first().click();
    await steps.getByText('Open the Word Finder').waitFor();
    await picture('first-steps');
  });

  await checks.check('the sample stories are laid in the folder, and their draft opens', async () => {
    await workbench.command('Battledore: Open the Sample Stories');
    await box('Where the sample stories go');
    await rows.filter({ hasText: 'In ' }).first().click();
    await workbench.editor('14-draft-the-long-pink-sock.md').waitFor();
    await workbench.readable((percent) => percent === 80);
    for (const name of ['sequence.yaml', 'art/04-tap.svg', '36-the-gigantic-tomato.md']) {
      const laid = readFileSync(join(desk.folder, 'battledore-samples', name), 'utf8');
      expectSame(laid, readFileSync(join(repository, 'samples', name), 'utf8'), name);
    }
  });

  await checks.check('a report of a problem has versions, and no text or name', async () => {
    await workbench.command('Battledore: Report a Problem');
    const page = workbench.page.locator('.editor-instance[aria-label*="Untitled"], .editor-instance').last();
    const text = await until('the report', async () => {
      const shown = ((await page.locator('.view-lines').textContent()) ?? '').replaceAll('\u00a0', ' ');
      return shown.includes('Versions and counts') ? shown : undefined;
    });
    for (const secret of ['Opal', 'pink', 'sock', desk.folder, 'battledore-desk', 'story.md'])
      if (text.includes(secret)) throw new Error(`It says “${secret}”: ${text}`);
    if (!/Server: running/.test(text)) throw new Error(text);
    await workbench.showTab('14-draft-the-long-pink-sock.md');
  });

  await checks.check(
    'samples that are there already are kept, and what is missing is laid beside',
    async () => {
      const draft = join(desk.folder, 'battledore-samples', '14-draft-the-long-pink-sock.md');
      const missing = join(desk.folder, 'battledore-samples', '36-the-gigantic-tomato.md');
      rmSync(missing);
      writeFileSync(
        draft,
        readFileSync(draft, 'utf8').replace('Opal has pink yarn.', 'Opal has a pink pen.'),
      );
      await workbench.command('Battledore: Open the Sample Stories');
      await box('Where the sample stories go');
      await rows.filter({ hasText: 'In ' }).first().click();
      await workbench.page.getByText('The samples are there already').first().waitFor();
      expectSame(readFileSync(draft, 'utf8').includes('Opal has a pink pen.'), true, 'the change is kept');
      expectSame(existsSync(missing), true, 'the missing sample is there again');
      await workbench.showTab(storyName);
    },
  );

  await checks.check('a new sequence by the first answers stands beside the old one', async () => {
    await workbench.command('Battledore: New Sequence');
    await box('New sequence');
    await input.fill('Fern Hill, grade 1');
    await workbench.press('Enter');
    for (const [index, { question, answers }] of choiceSteps.entries()) {
      await until(question, async () =>
        (await input.getAttribute('placeholder')) === question ? true : undefined,
      );
      await rows
        .filter({ hasText: answers[0]?.because ?? '' })
        .first()
        .waitFor();
      if (index === 3) await picture('choice');
      await workbench.press('Enter');
    }
    await until('the name offered', async () =>
      (await input.inputValue()) === 'sequence-2.yaml' ? true : undefined,
    );
    await workbench.press('Enter');
    expectSame(
      await onDisk('sequence-2.yaml'),
      sequenceText(beginSequence(choicesFrom('Fern Hill, grade 1', []))),
      'the new sequence',
    );
    expectSame(desk.read(sequenceName), before, 'the old sequence');
    await workbench.editor('sequence-2.yaml').waitFor();
    await picture('sequence');
    const marks = await workbench.marks('sequence-2.yaml').count();
    if (marks > 0) throw new Error(`There are ${marks} marks.`);
    return `${choiceSteps.length} questions`;
  });

  await checks.check('going back changes an answer', async () => {
    await workbench.command('Battledore: New Sequence');
    await box('New sequence');
    await input.fill('Fern Hill');
    await workbench.press('Enter');
    const at = (place: number) =>
      until(`question ${place}`, async () =>
        (await input.getAttribute('placeholder')) === choiceSteps[place]?.question ? true : undefined,
      );
    await at(0);
    await workbench.press('Enter');
    await at(1);
    await workbench.page.locator('.quick-input-widget .codicon-quick-input-back').click();
    await at(0);
    await workbench.press('Escape');
    await input.waitFor({ state: 'hidden' });
  });

  await checks.check('the sequence is exported for a spreadsheet', async () => {
    await workbench.showTab(storyName);
    await workbench.command('Battledore: Export Sequence to CSV');
    await until('the place to save', async () =>
      (await input.inputValue()).endsWith('sequence.csv') ? true : undefined,
    );
    await workbench.press('Enter');
    const [headings = '', ...lines] = (await onDisk('sequence.csv')).trimEnd().split('\r\n');
    if (!headings.startsWith('\ufefflesson,title,spellings')) throw new Error(headings);
    return `${lines.length} rows`;
  });

  await checks.check('imported again, it is the same sequence, beside the old one', async () => {
    await workbench.command('Battledore: Import Sequence from CSV');
    await openTable('sequence.csv');
    await rows.filter({ hasText: 'name of the lesson' }).first().waitFor();
    await picture('columns');
    await rows.filter({ hasText: 'Import 2 lessons' }).click();
    await until('the name offered', async () =>
      (await input.inputValue()) === 'sequence-3.yaml' ? true : undefined,
    );
    await workbench.press('Enter');
    const told = (text: string) =>
      readSequence(text).lessons.map(({ name, title: named, spellings }) => [
        name,
        named,
        spellings.map(({ value }) => value),
      ]);
    expectSame(told(await onDisk('sequence-3.yaml')), told(before), 'the sequence again');
    expectSame(desk.read(sequenceName), before, 'the old sequence');
  });

  await checks.check('a column is taken for something else, and what is unclear is listed', async () => {
    writeFileSync(
      join(desk.folder, 'plan.csv'),
      'Week;Graphemes;Focus words\r\n1;sh, the long a;ship\r\n2;ch (chin);chop\r\n',
    );
    await workbench.command('Battledore: Import Sequence from CSV');
    await openTable('plan.csv');
    await rows.filter({ hasText: 'Focus words' }).click();
    await box('What is the column “Focus words”?');
    await rows.filter({ hasText: 'note, kept as a comment' }).click();
    await box('Import plan.csv');
    await rows.filter({ hasText: 'Import 2 lessons' }).click();
    await until('the name offered', async () =>
      (await input.inputValue()) === 'sequence-4.yaml' ? true : undefined,
    );
    await workbench.press('Enter');
    const text = await onDisk('sequence-4.yaml');
    for (const kept of [
      '# Focus words: ship',
      'not understood: the long a',
      'sh as in ship',
      'ch as in chin',
    ])
      if (!text.includes(kept)) throw new Error(`“${kept}” is not in the file.`);
    const problems = await until('the problems', async () => {
      const all = await workbench.page.locator('.markers-panel .monaco-list-row').allInnerTexts();
      return all.some((row) => row.includes('Row 2')) ? all : undefined;
    });
    await picture('problems');
    return problems.filter((row) => row.includes('Row ')).length.toString();
  });

  await checks.check('a new story of a lesson has no marks', async () => {
    await workbench.showTab(storyName);
    await workbench.command('Battledore: New Story');
    await box('New story: the lesson');
    await rows.filter({ hasText: 'One long i' }).click();
    await box('New story: the title');
    await input.fill('The Night');
    await workbench.press('Enter');
    await box('New story: how many pages');
    await input.fill('3');
    await workbench.press('Enter');
    const name = '02-the-night.md';
    await workbench.editor(name).waitFor();
    const percent = await workbench.readable((each) => each === 100);
    await picture('story');
    const marks = await workbench.marks(name).count();
    if (marks > 0) throw new Error(`There are ${marks} marks.`);
    const pages = (await onDisk(name)).split('\n---\n\n').length;
    if (pages !== 3) throw new Error(`It has ${pages} pages.`);
    return `${percent} %`;
  });
}
