// What stands on the page, read as a person or a screen reader finds it: by role, label and heading, not by layout.
//
//   section#answers … article[aria-labelledby="answer-<route>"]   the answer card of a route, .sentence in it
//   #old-answers                                                  says that the answers are not those of the inputs
//   [role=tab]#tab-<route>, #detail-panel table                   the marks of a route: a row each, label and time first
//   #job-message                                                  what became of a job that was opened, and the way back
//   [data-job=undo|redo|list|compare|save|link|store|rival]       what can be done with the job at hand, and what is wrong with it
//   dialog#jobs [data-line=<id>] [data-act=<what>]                a job of the list, and what can be done with it
//   dialog#compare [data-differs=<path>], [data-pair=<route>]     two jobs side by side
//   #in-<path>, #in-<path>-error                                  the control of a field, and what is wrong with it
//   section[aria-labelledby="errors"]                             all that is wrong, in one list
import { readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { patience } from './browser.mjs';

export const routes = ['room', 'static_oven', 'tunnel'];

/** The control of a field, by its path in the job. */
export const control = (path) => `#in-${path.replace(/[^\w]+/g, '-')}`;
export const complaint = (path) => `${control(path)}-error`;
export const summary = 'section[aria-labelledby="errors"]';

const pause = (ms) => new Promise((resolve) => setTimeout(resolve, ms));

export class Screen {
  constructor(page, downloads) {
    this.page = page;
    this.downloads = downloads;
  }

  /** The answers as they stand: for each route the sentence and the printed time of every mark, by its label. */
  async answers() {
    const found = [];
    for (const kind of routes) {
      const tab = await this.page.$(`#tab-${kind}`);
      if (!tab) continue;
      await this.page.evaluate((e) => e.click(), tab);
      found.push(
        await this.page.evaluate((route) => {
          const words = (e) => e?.textContent.trim().replace(/\s+/g, ' ') ?? '';
          const card = document.querySelector(`article[aria-labelledby="answer-${route}"]`);
          const rows = [...document.querySelectorAll('#detail-panel table:first-of-type')][0]?.tBodies[0]?.rows ?? [];
          return {
            kind: route,
            title: words(card?.querySelector('h3')),
            sentence: words(card?.querySelector('.sentence')),
            marks: Object.fromEntries([...rows].map((row) => [words(row.cells[0]), words(row.cells[1])])),
          };
        }, kind),
      );
    }
    return found;
  }

  /** Whether the page calls its answers old. */
  old() {
    return this.visible('#old-answers');
  }

  /** Types into a field in place of what stands there, and leaves it. */
  async type(path, text) {
    await this.page.click(control(path));
    await this.page.$eval(control(path), (e) => e.select()); // three clicks fall apart where the machine is busy
    await this.page.keyboard.press('Backspace');
    await this.page.keyboard.type(text);
    await this.page.keyboard.press('Tab');
  }

  /** Presses a button as soon as it is there and can be pressed: found and pressed at once, since a page may put up another. */
  press(selector) {
    return this.until(async () => {
      const pressed = await this.page.evaluate((s) => {
        const button = document.querySelector(s);
        if (!button || button.disabled) return false;
        button.click();
        return true;
      }, selector);
      if (!pressed) throw new Error(`there is no ${selector} to be pressed`);
    });
  }

  value(path) {
    return this.page.$eval(control(path), (e) => e.value);
  }

  text(selector) {
    return this.page.$eval(selector, (e) => e.textContent.trim().replace(/\s+/g, ' ')).catch(() => '');
  }

  visible(selector) {
    return this.page.$eval(selector, (e) => e.checkVisibility() && e.textContent.trim() !== '').catch(() => false);
  }

  /** Presses the button that saves the job to a file, and reads the file. */
  async saveJob() {
    const button = await this.page.waitForSelector('[data-job=save]');
    await this.page.evaluate((e) => e.click(), button);
    for (let wait = 0; wait < 100; wait++, await pause(100)) {
      const name = (await readdir(this.downloads)).find((n) => n.endsWith('.json'));
      if (!name) continue;
      const file = join(this.downloads, name);
      const words = await readFile(file, 'utf8');
      if (!words.endsWith('}\n')) continue; // still being written
      await rm(file); // or the next one, of the same name, could not be told from it
      return JSON.parse(words);
    }
    throw new Error('the job was not saved');
  }

  /** Opens a job file of this text through the page's own picker. */
  async openJob(text) {
    const file = join(this.downloads, 'opened.txt'); // not .json, which saveJob looks for
    await writeFile(file, text);
    const picker = await this.page.waitForSelector('.bar input[type=file]');
    await picker.uploadFile(file);
  }

  /** Pastes a text onto the page, outside of its fields. */
  paste(text) {
    return this.page.evaluate((words) => {
      const clipboardData = new DataTransfer();
      clipboardData.setData('text/plain', words);
      const event = new ClipboardEvent('paste', { bubbles: true, cancelable: true });
      Object.defineProperty(event, 'clipboardData', { value: clipboardData }); // Firefox takes none in the constructor
      document.body.dispatchEvent(event);
    }, text);
  }

  /** Takes back the last change of the job. */
  async undo() {
    const button = await this.page.waitForSelector('[data-job=undo]:not(:disabled)');
    await this.page.evaluate((e) => e.click(), button);
  }

  /** Turns to the job that was at hand before the last one was opened. */
  async bringBack() {
    const button = await this.page.waitForSelector('#job-message button');
    await this.page.evaluate((e) => e.click(), button);
  }

  /** Waits until a check passes; when the time is up, its last failure is the answer. */
  async until(check, seconds = patience) {
    for (const end = Date.now() + seconds * 1000; ; await pause(100)) {
      try {
        return await check();
      } catch (failure) {
        if (Date.now() > end) throw failure;
      }
    }
  }
}
