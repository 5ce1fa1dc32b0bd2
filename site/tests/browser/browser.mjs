// The browser: opens one page and writes down whatever it complains of or asks from elsewhere.
//
// BROWSER names which one, chromium (the default) or firefox; CHROMIUM and FIREFOX say where they are. Firefox is driven
// over WebDriver BiDi, which cannot do everything: `only` names what is left out there, and why.
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import puppeteer from 'puppeteer-core';

export const engine = process.env.BROWSER ?? 'chromium';
const executablePath = { chromium: process.env.CHROMIUM, firefox: process.env.FIREFOX }[engine];
if (!executablePath)
  throw new Error(`BROWSER=${engine}: CHROMIUM or FIREFOX must name that browser; run this test with: make browser-test`);

/**
 * How long anything is waited for [s]: far more than it takes on a machine at rest, since a test that ends too early says
 * nothing of the page. What is there is found at once, so that a long wait costs only where something is wrong.
 */
export const patience = 120;
/** The same for a search or a fit [s], which computes for half a minute on a machine at rest. */
export const longest = 5 * patience;

/** Options of a test that is for one browser: skipped in the other, with the reason. */
export const only = (wanted, reason) => ({ skip: engine === wanted ? false : `${wanted} only: ${reason}` });
/** What WebDriver BiDi cannot do. */
export const media = 'WebDriver BiDi cannot show a page as on paper';
/** What need not be waited for twice. */
export const long = 'a long search is the same core on the same workers';

// A browser that keeps to itself: no updates, no background traffic, no sandbox (tests may run as root).
const flags = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-background-networking',
  '--no-first-run',
  '--disable-component-update',
  '--disable-sync',
  '--disable-quic',
  '--disable-dev-shm-usage', // a container's shared memory may be small
];

/** The same for Firefox, and where files are saved without asking. */
const preferences = (downloads) => ({
  'app.update.enabled': false,
  'app.normandy.enabled': false,
  'datareporting.policy.dataSubmissionEnabled': false,
  'toolkit.telemetry.enabled': false,
  'network.captive-portal-service.enabled': false,
  'network.connectivity-service.enabled': false,
  'browser.safebrowsing.downloads.remote.enabled': false,
  'browser.download.folderList': 2,
  'browser.download.dir': downloads,
  'browser.download.useDownloadDir': true,
  'browser.download.alwaysOpenPanel': false, // it would take the next Enter for itself
  'browser.download.always_ask_before_handling_new_types': false,
  'browser.helperApps.neverAsk.saveToDisk': 'application/json,text/csv,image/svg+xml,image/png',
});

/** What a person has asked the system for, as preferences of Firefox that hold from the start. */
const wishes = {
  dark: { 'layout.css.prefers-color-scheme.content-override': 0 },
  light: { 'layout.css.prefers-color-scheme.content-override': 1 },
  still: { 'ui.prefersReducedMotion': 1 },
  forced: { 'browser.display.document_color_use': 2, 'browser.display.use_system_colors': true },
};

/** The same as media features of Chromium, which can be changed at any time. */
const features = {
  dark: { name: 'prefers-color-scheme', value: 'dark' },
  light: { name: 'prefers-color-scheme', value: 'light' },
  still: { name: 'prefers-reduced-motion', value: 'reduce' },
  forced: { name: 'forced-colors', value: 'active' },
};

/**
 * Opens an address. complaints: what the page says on the console or fails to load; elsewhere: requests to any other
 * origin; asked: the paths of all requests for files, those of workers included; downloads: the folder that files are saved to.
 *
 * wish: dark, light, still or forced; width and height of the window; prepare(page): before the address is opened.
 */
export async function openPage(address, { wish, width = 1280, height = 900, prepare } = {}) {
  const downloads = await mkdtemp(join(tmpdir(), 'drywright-downloads-'));
  const browser = await puppeteer.launch({
    browser: engine === 'firefox' ? 'firefox' : 'chrome',
    executablePath,
    headless: true,
    timeout: patience * 1000, // to start
    protocolTimeout: longest * 1000,
    ...(engine === 'firefox'
      ? { extraPrefsFirefox: { ...preferences(downloads), ...wishes[wish] } }
      : { args: flags, downloadBehavior: { policy: 'allow', downloadPath: downloads } }),
  });
  const page = await browser.newPage();
  const view = {
    page,
    browser,
    downloads,
    complaints: [],
    elsewhere: [],
    asked: new Set(),
    async close() {
      await browser.close();
      await rm(downloads, { recursive: true, force: true });
    },
    /** Light or dark: asked of the system where the browser can be told, else chosen as the page's own switch does. */
    scheme(theme) {
      return engine === 'firefox'
        ? page.evaluate((t) => void (document.documentElement.dataset.theme = t), theme)
        : page.emulateMediaFeatures([features[theme]]);
    },
    /** Another window on an address, watched like the first. */
    async another(other = address) {
      const next = await browser.newPage();
      watch(next, new URL(other).origin, view);
      await next.goto(other, { waitUntil: 'load' });
      return next;
    },
  };
  try {
    watch(page, new URL(address).origin, view);
    await page.setViewport({ width, height });
    if (wish && engine === 'chromium') await emulate(page, wish);
    await prepare?.(page);
    await page.goto(address, { waitUntil: 'load' });
  } catch (failure) {
    await view.close();
    throw failure;
  }
  return view;
}

/** The driver knows colour scheme and motion only, the browser all of them. */
async function emulate(page, wish) {
  const session = await page.createCDPSession();
  await session.send('Emulation.setEmulatedMedia', { features: [features[wish]] });
}

/** A telephone's window. BiDi knows no touch screen. */
export const telephone = (width, height = 844) =>
  engine === 'firefox' ? { width, height } : { width, height, isMobile: true, hasTouch: true };

/** Writes down what a page complains of and asks for. */
function watch(page, origin, view) {
  page.setDefaultTimeout(patience * 1000);
  page.on('console', (message) => {
    if (!['error', 'warn'].includes(message.type())) return;
    const from = (message.stackTrace() ?? []).map((at) => `${at.url?.split('/').at(-1)}:${at.lineNumber}:${at.columnNumber}`);
    view.complaints.push(`${message.type()}: ${message.text()} ${from.join(' ')}`.trim());
  });
  page.on('pageerror', (error) => view.complaints.push(`script: ${error.message}`));
  page.on('requestfailed', (request) => {
    const reason = request.failure()?.errorText;
    // Firefox tells, too, when whoever asked is gone: a page that is left, a worker that is let go.
    if (reason !== 'NS_BINDING_ABORTED') view.complaints.push(`request: ${request.url()} ${reason}`);
  });
  page.on('response', (response) => {
    if (response.status() >= 400) view.complaints.push(`response: ${response.status()} ${response.url()}`);
  });
  page.on('request', (request) => {
    const url = new URL(request.url());
    if (['data:', 'blob:'].includes(url.protocol)) return; // the page's own bytes, or the browser's
    view.asked.add(url.pathname);
    if (url.origin !== origin) view.elsewhere.push(request.url());
  });
}
