// Draws the icons that the manifest names from favicon.svg, into public/. Run by hand after a change of it:
//
//   CHROMIUM="$(site/tests/browser/find.sh chromium)" node site/scripts/icons.mjs
import { readFile } from 'node:fs/promises';
import puppeteer from 'puppeteer-core';

const folder = new URL('../public/', import.meta.url);
const mark = await readFile(new URL('favicon.svg', folder), 'utf8');
// Systems cut a maskable icon to a shape of theirs and leave a circle of four fifths: its ground fills the square, and the
// mark keeps to the middle.
const icons = [
  ['icon-192.png', 192, 1],
  ['icon-512.png', 512, 1],
  ['icon-mask.png', 512, 0.74],
];

const browser = await puppeteer.launch({
  executablePath: process.env.CHROMIUM,
  args: ['--no-sandbox', '--disable-gpu'],
});
try {
  const page = await browser.newPage();
  for (const [name, side, share] of icons) {
    await page.setViewport({ width: side, height: side });
    const ground = share < 1 ? '#0d4f57' : 'transparent';
    await page.setContent(`<body style="margin:0;height:100vh;display:grid;place-items:center;background:${ground}">
      ${mark.replace('<svg', `<svg width="${side * share}"`)}`);
    await page.screenshot({ path: new URL(name, folder).pathname, omitBackground: true });
  }
} finally {
  await browser.close();
}
