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
import assert from 'node:assert/strict';
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
  answers() {
    return this.page.evaluate(async (kinds) => {
      const words = (e) => e?.textContent.trim().replace(/\s+/g, ' ') ?? '';
      const found = [];
      for (const kind of kinds) {
        const tab = document.getElementById(`tab-${kind}`);
        if (!tab) continue;
        tab.click();
        await new Promise((resolve) => setTimeout(resolve)); // the panel follows the tab
        const card = document.querySelector(`article[aria-labelledby="answer-${kind}"]`);
        const rows = document.querySelector('#detail-panel table:first-of-type')?.tBodies[0]?.rows ?? [];
        found.push({
          kind,
          title: words(card?.querySelector('h3')),
          sentence: words(card?.querySelector('.sentence')),
          marks: Object.fromEntries([...rows].map((row) => [words(row.cells[0]), words(row.cells[1])])),
        });
      }
      return found;
    }, routes);
  }

  /** Waits until all that stands on the page belongs to the inputs. */
  settled() {
    return this.until(async () => {
      assert.equal(await this.text('.phase'), 'Up to date');
      assert.equal(await this.page.$('main [aria-busy="true"]'), null);
    });
  }

  /** Whether the page calls its answers old. */
  old() {
    return this.visible('#old-answers');
  }

  /** Types into a field in place of what stands there, and leaves it. */
  async type(path, text) {
    await this.fill(control(path), text);
    await this.page.keyboard.press('Tab');
  }

  /** Types into a control in place of what stands there, and stays in it. */
  async fill(selector, text) {
    await this.until(async () => {
      await this.page.click(selector);
      // The page may have moved under the pointer; and three clicks fall apart where the machine is busy.
      const hit = await this.page.$eval(selector, (e) => {
        e.select();
        return document.activeElement === e;
      });
      if (!hit) throw new Error(`${selector} is not hit by a click`);
    });
    await this.page.keyboard.press('Backspace');
    await this.page.keyboard.type(text);
  }

  /** Presses a button as soon as it is there and can be pressed: found and pressed at once, since a page may put up another. */
  press(selector, seconds = patience) {
    return this.until(async () => {
      const pressed = await this.page.evaluate((s) => {
        const button = document.querySelector(s);
        if (!button || button.disabled) return false;
        button.click();
        return true;
      }, selector);
      if (!pressed) throw new Error(`there is no ${selector} to be pressed`);
    }, seconds);
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
    await this.press('[data-job=save]');
    return this.until(async () => {
      const name = (await readdir(this.downloads)).find((n) => n.endsWith('.json'));
      if (!name) throw new Error('the job was not saved');
      const file = join(this.downloads, name);
      const words = await readFile(file, 'utf8');
      if (!words.endsWith('}\n')) throw new Error('still being written');
      await rm(file); // or the next one, of the same name, could not be told from it
      return JSON.parse(words);
    });
  }

  /** Opens a job file of this text through the page's own picker. */
  async openJob(text) {
    const file = join(this.downloads, 'opened.txt'); // not .json, which saveJob looks for
    await writeFile(file, text);
    await (await this.page.waitForSelector('.bar input[type=file]')).uploadFile(file);
  }

  /** Pastes a text onto the page, outside of its fields, once it has what takes it. */
  async paste(text) {
    await this.page.waitForSelector('[data-job=save]');
    return this.page.evaluate((words) => {
      const clipboardData = new DataTransfer();
      clipboardData.setData('text/plain', words);
      const event = new ClipboardEvent('paste', { bubbles: true, cancelable: true });
      Object.defineProperty(event, 'clipboardData', { value: clipboardData }); // Firefox takes none in the constructor
      document.body.dispatchEvent(event);
    }, text);
  }

  /** Takes back the last change of the job. */
  undo() {
    return this.press('[data-job=undo]');
  }

  /** Turns to the job that was at hand before the last one was opened. */
  bringBack() {
    return this.press('#job-message button');
  }

  /** Chooses a language or units in the settings, and waits until the page is put up anew in them. */
  async choose(value) {
    const panel = '#settings-panel';
    await this.press('#settings');
    const choice = await this.page.waitForSelector(`${panel} input[value="${value}"]`);
    if (await choice.evaluate((e) => e.checked)) {
      await this.page.keyboard.press('Escape');
    } else {
      await this.page.$eval('.screen', (e) => (e.dataset.former = ''));
      await this.press(`${panel} input[value="${value}"]`);
      await this.page.waitForSelector('.screen:not([data-former]) [data-job=save]');
    }
    await this.until(async () => assert.equal(await this.page.$(panel), null));
  }

  /**
   * Waits until the page has come to rest: every picture in view is drawn, and nothing has been put up or altered for
   * twenty frames.
   */
  still() {
    return this.page.evaluate(
      (frames, ms) =>
        new Promise((resolve, reject) => {
          let left = frames;
          const end = performance.now() + ms;
          const stir = () => (left = frames);
          const watch = new MutationObserver(stir);
          watch.observe(document, { subtree: true, childList: true, attributes: true, characterData: true });
          const inView = (e) => {
            const { top, bottom, width } = e.getBoundingClientRect();
            return bottom > 0 && top < innerHeight && width >= 120; // no picture is drawn smaller
          };
          const frame = () => {
            if ([...document.querySelectorAll('.screen figure .host')].some((e) => inView(e) && !e.firstChild)) stir();
            if (left-- <= 0) resolve();
            else if (performance.now() > end) reject(new Error('the page does not come to rest'));
            else return void requestAnimationFrame(frame);
            watch.disconnect();
          };
          frame();
        }),
      20,
      patience * 1000,
    );
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
