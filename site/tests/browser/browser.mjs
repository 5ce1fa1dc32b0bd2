// The browser: opens one page and writes down whatever it complains of or asks from elsewhere.
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

/** Opens an address. complaints: errors on the console or in scripts; elsewhere: requests to any other origin. */
export async function openPage(address) {
  const executablePath = process.env.CHROMIUM;
  if (!executablePath) throw new Error('CHROMIUM must name a browser; run this test with: make browser-test');
  const browser = await puppeteer.launch({ executablePath, headless: true, args: flags });
  const page = await browser.newPage();
  const complaints = [];
  const elsewhere = [];
  const origin = new URL(address).origin;
  page.on('console', (message) => {
    if (['error', 'warn'].includes(message.type())) complaints.push(`${message.type()}: ${message.text()}`);
  });
  page.on('pageerror', (error) => complaints.push(`script: ${error.message}`));
  page.on('requestfailed', (request) => complaints.push(`request: ${request.url()} ${request.failure()?.errorText}`));
  page.on('response', (response) => {
    if (response.status() >= 400) complaints.push(`response: ${response.status()} ${response.url()}`);
  });
  page.on('request', (request) => {
    const url = new URL(request.url());
    if (!['data:', 'blob:'].includes(url.protocol) && url.origin !== origin) elsewhere.push(request.url());
  });
  await page.setViewport({ width: 1280, height: 900 });
  await page.goto(address, { waitUntil: 'load' });
  return { page, complaints, elsewhere, close: () => browser.close() };
}
