import { type Checks, expectSame } from './checks.ts';
import { until, type Workbench } from './workbench.ts';
import { finishedStory, joinedSequence, sequenceName, storyName, type WritingDesk } from './writing-desk.ts';

/**
 * The main job in an editor that has the desk's story open: see the marks, write, see the gauge fall and rise, change
 * the sequence, save.
 */
export async function checkWriting(checks: Checks, workbench: Workbench, desk: WritingDesk): Promise<void> {
  await checks.check('the story opens with its figure and one marked word', async () => {
    expectSame(await workbench.readable(), 90, 'nine of ten words are readable');
    await workbench.marks(storyName).first().waitFor();
    const problems = await until('the problems', async () => {
      const rows = await workbench.problems();
      return rows.some((row) => row.includes('night')) ? rows : undefined;
    });
    return problems.find((row) => row.includes('night'));
  });

  await checks.check(
    'the hover explains the word: its sounds, what is missing, which lesson teaches it',
    async () => {
      await workbench.focusText(storyName);
      await workbench.goTo(desk.night.line, desk.night.column + 1);
      const text = await workbench.hover(/igh/);
      if (!/lesson\W+2/i.test(text)) throw new Error(`The hover names no lesson 2: ${text}`);
      await workbench.press('Escape');
    },
  );

  await checks.check('the gauge view shows the same figure', async () => {
    await workbench.command('Battledore: Show Gauge');
    expectSame(await workbench.gaugePercent(() => true), 90, 'the gauge view');
  });

  await checks.check('an unreadable word makes the figures fall', async () => {
    await workbench.focusText(storyName);
    await workbench.press('Control+End');
    await workbench.type('The man might sit.');
    expectSame(await workbench.readable((percent) => percent === 85.7), 85.7, 'the status bar');
    expectSame(await workbench.gaugePercent((percent) => percent === 85.7), 85.7, 'the gauge view');
    await until('two marks', async () =>
      (await workbench.marks(storyName).count()) >= 2 ? true : undefined,
    );
  });

  await checks.check('taking it out makes them rise', async () => {
    await workbench.press('ArrowLeft', ' sit.'.length);
    await workbench.press('Backspace', ' might'.length);
    expectSame(await workbench.readable((percent) => percent === 92.3), 92.3, 'the status bar');
    expectSame(await workbench.gaugePercent((percent) => percent === 92.3), 92.3, 'the gauge view');
    await workbench.press('End');
    await workbench.press('Enter');
  });

  await checks.check('the figure follows a typed word within a second', async () => {
    const times: number[] = [];
    for (let round = 0; round < 5; round++) {
      const before = await workbench.readable();
      await workbench.type('night');
      const start = performance.now();
      await workbench.type('.');
      await workbench.readable((percent) => percent < before);
      times.push(performance.now() - start);
      await workbench.press('Backspace', 'night.'.length);
      await workbench.readable((percent) => percent === before);
    }
    const median = times.sort((left, right) => left - right)[2] ?? Number.POSITIVE_INFINITY;
    if (median > 1000) throw new Error(`It took ${median.toFixed(0)} ms.`);
    return `median ${median.toFixed(0)} ms`;
  });

  await checks.check('the sequence opens from the story', async () => {
    await workbench.focusText(storyName);
    await workbench.command('Battledore: Open Lesson');
    await workbench.editor(sequenceName).waitFor();
  });

  await checks.check(
    'teaching the spelling in the sequence takes the mark away before anything is saved',
    async () => {
      await workbench.focusText(sequenceName);
      await workbench.goTo(desk.secondLessonLine, 1);
      await workbench.press('Control+Shift+K', 3);
      await workbench.showTab(storyName);
      expectSame(await workbench.readable((percent) => percent === 100), 100, 'the status bar');
      await workbench.marks(storyName).first().waitFor({ state: 'detached' });
      expectSame(await workbench.gaugePercent((percent) => percent === 100), 100, 'the gauge view');
    },
  );

  await checks.check('both files are saved as they were written', async () => {
    await workbench.focusText(storyName);
    await workbench.save(storyName);
    await workbench.showTab(sequenceName);
    await workbench.focusText(sequenceName);
    await workbench.save(sequenceName);
    expectSame(desk.read(storyName), finishedStory, 'the story on the disk');
    expectSame(desk.read(sequenceName), joinedSequence, 'the sequence on the disk');
  });

  await checks.check('a change on the disk is seen in the open editor', async () => {
    await workbench.showTab(storyName);
    desk.reset();
    expectSame(await workbench.readable((percent) => percent === 90), 90, 'the status bar');
  });

  await checks.check('a mistake in the closed sequence stands in Problems and in the gauge', async () => {
    const mistakes = async () =>
      (await workbench.problems()).filter((row) => row.includes('does not stand in'));
    await workbench.showTab(sequenceName);
    await workbench.command('View: Close Editor');
    await workbench.editor(sequenceName).waitFor({ state: 'detached' });
    desk.breakSequence();
    await until('the mistake in Problems', async () => ((await mistakes()).length === 1 ? true : undefined));
    await workbench.clickInGauge('The sequence has 1 error; show it');
    await workbench.editor(sequenceName).waitFor();
    desk.reset();
    await until('the mistake to go', async () => ((await mistakes()).length === 0 ? true : undefined));
  });
}

/** The page has said nothing of errors and asked no other server. */
export async function checkQuiet(checks: Checks, workbench: Workbench): Promise<void> {
  await checks.check('no errors in the console and no request that leaves the machine', async () => {
    // What the editor says itself when a server is killed too often for it to start one more.
    const known = /^The Battledore server crashed 5 times in the last 3 minutes\./;
    const troubles = workbench.troubles.filter((trouble) => !known.test(trouble));
    expectSame(troubles, [], 'what the page complained of');
  });
}
