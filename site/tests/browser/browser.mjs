// The browser: opens one page and writes down whatever it complains of or asks from elsewhere.
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import puppeteer from 'puppeteer-core';

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

/**
 * Opens an address. complaints: what the page says on the console or fails to load; elsewhere: requests to any other
 * origin; asked: the paths of all requests, those of workers included; downloads: the folder that files are saved to.
 */
export async function openPage(address) {
  const executablePath = process.env.CHROMIUM;
  if (!executablePath) throw new Error('CHROMIUM must name a browser; run this test with: make browser-test');
  const downloads = await mkdtemp(join(tmpdir(), 'drywright-downloads-'));
  const browser = await puppeteer.launch({
    executablePath,
    headless: true,
    args: flags,
    downloadBehavior: { policy: 'allow', downloadPath: downloads },
  });
  const page = await browser.newPage();
  const view = {
    page,
    downloads,
    complaints: [],
    elsewhere: [],
    asked: new Set(),
    async close() {
      await browser.close();
      await rm(downloads, { recursive: true, force: true });
    },
  };
  watch(page, new URL(address).origin, view);
  await page.setViewport({ width: 1280, height: 900 });
  await page.goto(address, { waitUntil: 'load' });
  return view;
}

/** Writes down what a page complains of and asks for. */
function watch(page, origin, view) {
  page.on('console', (message) => {
    if (['error', 'warn'].includes(message.type())) view.complaints.push(`${message.type()}: ${message.text()}`);
  });
  page.on('pageerror', (error) => view.complaints.push(`script: ${error.message}`));
  page.on('requestfailed', (request) =>
    view.complaints.push(`request: ${request.url()} ${request.failure()?.errorText}`),
  );
  page.on('response', (response) => {
    if (response.status() >= 400) view.complaints.push(`response: ${response.status()} ${response.url()}`);
  });
  page.on('request', (request) => {
    const url = new URL(request.url());
    view.asked.add(url.pathname);
    if (!['data:', 'blob:'].includes(url.protocol) && url.origin !== origin) view.elsewhere.push(request.url());
  });
}
